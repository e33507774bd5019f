import type { Dependencies, Trace } from "@plumbmark/core";

/**
 * What a sheet rests on besides its document, the names and lots it shares, and what all documents rest on: what was
 * looked for while it was made, and what was found. Plain data.
 */
export interface SheetDependencies extends Pick<Dependencies, "paths" | "otherBuilds"> {
  /** Pages of the sheets it links to, by path of their documents, and what is in the pictures it asked for. */
  readonly answers: ReturnType<Trace["answers"]>;
}

/** Gives what is there now where a sheet found something: a page by path of its document, the digest of a picture. */
export type AnswerNow = Readonly<Record<"pages" | "pictures", (path: string) => string | undefined>>;

/** Whether everything that was looked for would still be found as it was. */
export const dependenciesHold = (
  { paths, otherBuilds, answers }: SheetDependencies,
  isThere: (path: string) => boolean,
  now: AnswerNow,
): boolean =>
  !otherBuilds &&
  Object.entries(paths).every(([path, there]) => isThere(path) === there) &&
  Object.entries(answers).every(([kind, all]) =>
    all.every(([path, told]) => (now[kind as keyof AnswerNow]?.(path) ?? null) === told),
  );
