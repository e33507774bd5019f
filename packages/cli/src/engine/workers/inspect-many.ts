import {
  type Dependencies,
  type DocumentEntry,
  type DocumentFile,
  type InspectedDocument,
  type InspectOptions,
  openRepository,
  type RepositoryFiles,
  type Rule,
} from "@plumbmark/core";
import { isTransferable, pluginResultsOf } from "./plugin-results.js";
import { workersFor } from "./schedule.js";
import { shareSources } from "./share-sources.js";

/** Everything but the documents; what they share goes with it. */
export const withoutDocuments = (files: RepositoryFiles): RepositoryFiles => ({
  ...files,
  documents: [],
  others: [...(files.others ?? []), ...files.documents.flatMap(({ outline }) => (outline ? [outline] : []))],
});

/** Result of one document, and what it depends on besides the document, the parts, the stock and the house standards. */
export interface Judged extends Pick<Dependencies, "paths" | "otherBuilds"> {
  readonly entry: DocumentEntry;
}

/** As plain data, which can be sent and stored. */
export const plainResult = ({ entry, dependencies: { paths, otherBuilds } }: InspectedDocument): Judged => ({
  entry,
  paths,
  otherBuilds,
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
  const repository = openRepository(files, rules, { ...options, keep: "nothing" });
  // A house standard that cannot be used is told before anything is begun.
  void repository.rules;
  if (count === 0 || !isTransferable(rules) || files.documents.some(({ outline }) => !outline))
    return files.documents.map((file) => plainResult(repository.one(file)));
  const here = () => (batch: readonly DocumentFile[]) => batch.map((file) => plainResult(repository.one(file)));
  // A commit of a few documents is judged without workers, and without loading what makes them.
  const { runInPool } = await import("./pool.js");
  const context = { files: withoutDocuments(files), options, plugins: pluginResultsOf(rules) };
  const share = shareSources();
  const received = (results: readonly Judged[]) => results.map(share);
  const task = { work: "documents", context } as const;
  return (await runInPool(files.documents, count, { task, rules, here, received })).flat();
}
