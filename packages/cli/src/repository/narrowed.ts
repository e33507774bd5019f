import { type DocumentFile, knownOutline, type OtherDocument, type RepositoryFiles } from "@plumbmark/core";

/** What stays behind of a document; its text is read, and sent nowhere, where somebody asks what it uses. */
const leftBehind = (file: DocumentFile & { readonly id?: string }): OtherDocument =>
  Object.defineProperties({ ...knownOutline(file) }, { text: { get: () => file.text }, id: { value: file.id } });

/** Only these documents; of the others what each has to know of another. */
export const narrowed = (files: RepositoryFiles, chosen: (path: string) => boolean): RepositoryFiles => ({
  ...files,
  documents: files.documents.filter(({ path }) => chosen(path)),
  others: [...(files.others ?? []), ...files.documents.filter(({ path }) => !chosen(path)).map(leftBehind)],
});
