import type { DocumentFile, Outline, RepositoryFiles } from "@plumbmark/core";
import { outlined } from "../threads/outlined.js";
import type { Kept } from "./kept.js";

/** An outline that is not of any one place. */
export type Bare = Omit<Outline, "path">;

/** Without the path: the same content at another place promises the same. */
const bare = ({ path: _, promises, ...rest }: Outline): Bare => ({
  ...rest,
  promises: promises.map((each) => ({ ...each, file: "" })),
});

export const placed = ({ promises, ...rest }: Bare, path: string): Outline => ({
  ...rest,
  path,
  promises: promises.map((each) => ({ ...each, file: path })),
});

/** A document whose content has a name of git's, so that what it came to can be looked up. */
export interface NamedFile extends DocumentFile {
  readonly id?: string;
}

/** A spread would read a text that is only read when it is looked at. */
const withOutline = (file: NamedFile, outline: Outline): NamedFile =>
  Object.defineProperties(
    {},
    { ...Object.getOwnPropertyDescriptors(file), outline: { value: outline, enumerable: true } },
  ) as NamedFile;

/** The documents with their outlines: those that are kept, and those that have to be read. */
export async function withOutlines(files: RepositoryFiles, kept: Kept | undefined): Promise<readonly NamedFile[]> {
  const documents = (files.documents as readonly NamedFile[]).map((file) => {
    if (file.outline !== undefined) return file;
    const known = kept && file.id !== undefined ? kept.outlines.get(file.id) : undefined;
    return known ? withOutline(file, placed(known as Bare, file.path)) : file;
  });
  const fresh = await outlined(documents.filter(({ outline }) => outline === undefined));
  const read = new Map(fresh.map((outline) => [outline.path, outline]));
  return documents.map((file) => {
    const outline = read.get(file.path);
    if (!outline) return file;
    if (kept && file.id !== undefined) kept.outlines.set(file.id, bare(outline));
    return withOutline(file, outline);
  });
}
