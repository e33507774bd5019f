import { knownOutline, type RepositoryFiles } from "@plumbmark/core";

/** Only these documents; of the others what each has to know of another. */
export const narrowed = (files: RepositoryFiles, chosen: (path: string) => boolean): RepositoryFiles => ({
  ...files,
  documents: files.documents.filter(({ path }) => chosen(path)),
  others: [...(files.others ?? []), ...files.documents.filter(({ path }) => !chosen(path)).map(knownOutline)],
});
