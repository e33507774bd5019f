import { type DocumentFile, type Outline, outlineOf } from "@plumbmark/core";
import { deal, sharesOf, threadsFor } from "./deal.js";
import { sending } from "./sending.js";

/** Words cut out of a text keep the whole of it in memory; copied, they do not. */
const apart = (outline: Outline): Outline => JSON.parse(JSON.stringify(outline)) as Outline;

const here = (documents: readonly DocumentFile[]): readonly Outline[] =>
  documents.map((file) => apart(outlineOf(file)));

/** What others have to know of documents, in their order. Whoever inspects them next finds the threads ready. */
export async function outlined(
  documents: readonly DocumentFile[],
  threads = threadsFor(documents.length),
): Promise<readonly Outline[]> {
  if (threads === 0) return here(documents);
  const { dismiss, hire, leave } = await import("./crew.js");
  const crew = hire(threads, documents.length);
  const asks = sending(crew, { work: "outlines" });
  try {
    const found = await deal(sharesOf(documents, threads), asks, () => here);
    leave(crew);
    return found.flat();
  } catch (error) {
    await dismiss(crew);
    throw error;
  }
}
