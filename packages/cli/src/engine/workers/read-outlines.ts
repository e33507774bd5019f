import { type DocumentFile, type Outline, outlineOf } from "@plumbmark/core";
import { workersFor } from "./schedule.js";

/** Words cut out of a text keep the whole of it in memory; copied, they do not. */
const copied = (outline: Outline): Outline => JSON.parse(JSON.stringify(outline)) as Outline;

/** What others have to know of documents, in their order. Whoever inspects them next finds the workers ready. */
export async function readOutlines(
  documents: readonly DocumentFile[],
  count = workersFor(documents.length),
): Promise<readonly Outline[]> {
  const here = (batch: readonly DocumentFile[]) => batch.map((file) => copied(outlineOf(file)));
  if (count === 0) return here(documents);
  const { runInPool } = await import("./pool.js");
  return (await runInPool(documents, count, { task: { work: "outlines" }, here: () => here, leaves: true })).flat();
}
