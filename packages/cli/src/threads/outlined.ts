import { type DocumentFile, type Outline, outlineOf } from "@plumbmark/core";

/** Words cut out of a text keep the whole of it in memory; copied, they do not. */
const apart = (outline: Outline): Outline => JSON.parse(JSON.stringify(outline)) as Outline;

/** What others have to know of documents. */
export const outlined = async (documents: readonly DocumentFile[]): Promise<readonly Outline[]> =>
  documents.map((file) => apart(outlineOf(file)));
