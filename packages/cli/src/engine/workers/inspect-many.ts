import {
  type DocumentFile,
  type InspectOptions,
  inspectEach,
  inspector,
  type Judged,
  type RepositoryFiles,
  type Rule,
} from "@plumbmark/core";
import { isTransferable, pluginResultsOf } from "./plugin-results.js";
import { batchesOf, scheduleBatches, workersFor } from "./schedule.js";
import { shareSources } from "./share-sources.js";

/** Everything but the documents; what they share goes with it. */
export const withoutDocuments = (files: RepositoryFiles): RepositoryFiles => ({
  ...files,
  documents: [],
  others: [...(files.others ?? []), ...files.documents.flatMap(({ outline }) => (outline ? [outline] : []))],
});

/**
 * The results of documents, in their order, each with its outline known. Many are handed out in small batches to workers;
 * what workers that cannot be had, or die, leave undone is inspected here.
 */
export async function inspectMany(
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
  count = workersFor(files.documents.length),
): Promise<readonly Judged[]> {
  if (count === 0 || !isTransferable(rules) || files.documents.some(({ outline }) => !outline))
    return inspectEach(files, rules, options);
  const rest = withoutDocuments(files);
  // A house standard that cannot be used is told before anything is begun.
  const inspectOne = inspector(rest, rules, options);
  const here = () => (batch: readonly DocumentFile[]) => batch.map((file): Judged => inspectOne(file));
  // A commit of a few documents is judged without workers, and without loading what makes them.
  const { acquire, assigned, terminate } = await import("./pool.js");
  const workers = acquire(count, files.documents.length);
  const context = { files: rest, options, plugins: pluginResultsOf(rules) };
  try {
    const share = shareSources();
    const runs = assigned(workers, { work: "documents", context }, rules).map(
      (run) => async (batch: readonly DocumentFile[]) => (await run(batch))?.map(share),
    );
    return (await scheduleBatches(batchesOf(files.documents, count), runs, here)).flat();
  } finally {
    await terminate(workers);
  }
}
