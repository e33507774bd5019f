import { type DocumentFile, type Outline, outlineOf } from "@plumbmark/core";
import { batchesOf, scheduleBatches, workersFor } from "./schedule.js";

/** Words cut out of a text keep the whole of it in memory; copied, they do not. */
const copied = (outline: Outline): Outline => JSON.parse(JSON.stringify(outline)) as Outline;

const here = (documents: readonly DocumentFile[]): readonly Outline[] =>
  documents.map((file) => copied(outlineOf(file)));

/** What others have to know of documents, in their order. Whoever inspects them next finds the workers ready. */
export async function readOutlines(
  documents: readonly DocumentFile[],
  count = workersFor(documents.length),
): Promise<readonly Outline[]> {
  if (count === 0) return here(documents);
  const { acquire, assigned, release, terminate } = await import("./pool.js");
  const workers = acquire(count, documents.length);
  try {
    const found = await scheduleBatches(
      batchesOf(documents, count),
      assigned(workers, { work: "outlines" }),
      () => here,
    );
    release(workers);
    return found.flat();
  } catch (error) {
    await terminate(workers);
    throw error;
  }
}
