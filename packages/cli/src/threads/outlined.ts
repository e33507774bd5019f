import { type DocumentFile, type Outline, outlineOf } from "@plumbmark/core";

/** What others have to know of documents. */
export const outlined = async (documents: readonly DocumentFile[]): Promise<readonly Outline[]> =>
  documents.map(outlineOf);
