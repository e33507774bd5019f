import { availableParallelism } from "node:os";

/** A worker takes as long to start as this many documents to inspect. */
const WORTH_A_WORKER = 20;
const MOST_WORKERS = 8;
/** Documents in a batch: few, so that at the end nobody waits long for another. */
const MOST_IN_A_BATCH = 8;
/** With one processor a worker is worth having for so many: it can be given memory that the program itself cannot. */
const WORTH_THE_MEMORY = 100;

/** How many workers are worth having besides this thread, which then only hands out; 0 is none. */
export function workersFor(documents: number, processors = availableParallelism()): number {
  const workers = Math.min(processors, MOST_WORKERS, Math.floor(documents / WORTH_A_WORKER));
  return workers > 1 || documents >= WORTH_THE_MEMORY ? workers : 0;
}

export function batchesOf<T>(documents: readonly T[], workers: number): readonly (readonly T[])[] {
  const size = Math.max(1, Math.min(MOST_IN_A_BATCH, Math.floor(documents.length / (4 * workers))));
  return Array.from({ length: Math.ceil(documents.length / size) }, (_, index) =>
    documents.slice(index * size, (index + 1) * size),
  );
}

/**
 * Hands batches out to whoever is free; gives the results in the order of the batches. What workers that cannot be had,
 * or die, leave undone is done here.
 */
export async function scheduleBatches<B, Result>(
  batches: readonly B[],
  workers: readonly ((batch: B) => Promise<Result | undefined>)[],
  here: () => (batch: B) => Result,
): Promise<readonly Result[]> {
  const found = new Array<Result>(batches.length);
  const left = [...batches.keys()];
  const keepBusy = async (run: (batch: B) => Promise<Result | undefined>): Promise<void> => {
    for (let index = left.shift(); index !== undefined; index = left.shift()) {
      const result = await run(batches[index] as B);
      if (!result) return void left.unshift(index);
      found[index] = result;
    }
  };
  // Each has a second batch waiting, so that none is idle while its result is on the way.
  await Promise.all(workers.flatMap((each) => [keepBusy(each), keepBusy(each)]));
  if (left.length > 0) {
    const run = here();
    for (const index of left) found[index] = run(batches[index] as B);
  }
  return found;
}
