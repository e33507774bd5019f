/**
 * What a sheet rests on besides its document, the names and lots it shares, and what all documents rest on: what was
 * looked for while it was made, and what was found. Plain data.
 */
export interface SheetDependencies {
  /** Paths its links were looked for at, and whether a file or a folder is there. */
  readonly paths: Readonly<Record<string, boolean>>;
  /** Whether a rule looked at the other builds; the sheet may then rest on anything in them. */
  readonly otherBuilds: boolean;
  /** Pages of the sheets it links to, by path of their documents; null where there is none. */
  readonly pages: readonly (readonly [path: string, page: string | null])[];
  /** What is in the pictures it asked for, by their path; null where there is none to be read. */
  readonly pictures: readonly (readonly [path: string, hash: string | null])[];
}

/** Whether everything that was looked for would still be found as it was. */
export function dependenciesHold(
  { paths, otherBuilds, pages, pictures }: SheetDependencies,
  isThere: (path: string) => boolean,
  pageOf: (path: string) => string | undefined,
  pictureHash: (path: string) => string | undefined,
): boolean {
  return (
    !otherBuilds &&
    Object.entries(paths).every(([path, there]) => isThere(path) === there) &&
    pages.every(([path, page]) => (pageOf(path) ?? null) === page) &&
    pictures.every(([path, hash]) => (pictureHash(path) ?? null) === hash)
  );
}
