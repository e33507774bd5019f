import {
  type DocumentFile,
  type InspectOptions,
  openRepository,
  type RepositoryFiles,
  type SharedUse,
} from "@plumbmark/core";
import { workersFor } from "./schedule.js";

/** Tells what a document uses that others may use, too. @throws StandardError when the house standards cannot be used */
export function usesReader(
  files: RepositoryFiles,
  options: InspectOptions,
): (file: DocumentFile) => readonly SharedUse[] {
  const repository = openRepository(files, [], { ...options, keep: "nothing" });
  return ({ path, text }) => repository.uses({ path, text });
}

/** What documents use, in their order; with several workers when there are many. */
export async function readUses(
  files: RepositoryFiles,
  documents: readonly DocumentFile[],
  options: InspectOptions,
  count = workersFor(documents.length),
): Promise<readonly (readonly SharedUse[])[]> {
  const rest = { ...files, documents: [], others: [] };
  const here = () => {
    const usesOf = usesReader(rest, options);
    return (batch: readonly DocumentFile[]) => batch.map(usesOf);
  };
  if (count === 0) return documents.length === 0 ? [] : here()(documents);
  const { runInPool } = await import("./pool.js");
  const task = { work: "uses", context: { files: rest, options } } as const;
  return (await runInPool(documents, count, { task, here, leaves: true })).flat();
}
