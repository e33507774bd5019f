import { type ResourceLimits, Worker } from "node:worker_threads";
import type { DocumentFile, Rule } from "@plumbmark/core";
import { ownFile } from "../../own-file.js";
import { resultsOn } from "./plugin-results.js";
import type { Batch, BatchResults, WorkerTask } from "./protocol.js";
import { batchesOf, scheduleBatches } from "./schedule.js";

/** A thread that is given a task, is sent batches of documents, and answers one after another. */
interface PoolWorker {
  /** What is to be done with the batches that follow. */
  readonly assign: (task: WorkerTask) => void;
  /** Undefined when the worker could not be had, or died over it. */
  readonly run: (batch: Batch) => Promise<unknown>;
  /** Ends it; it does nothing more when that is done. */
  readonly terminate: () => Promise<unknown>;
  readonly isAlive: () => boolean;
  /** Whether the program waits for it, even when it has nothing to do. */
  readonly hold: (isHeld: boolean) => void;
}

/**
 * Megabytes for young objects. The trees of a document fill the usual 48 several times, and are copied each time: with
 * more, a document takes a tenth less time. With thousands of documents everything else takes more memory, and workers
 * have to do with the usual.
 */
const YOUNG = 96;
const YOUNG_OF_MANY = 48;
const MANY = 2000;

/**
 * Megabytes for old objects, of which a worker has some 25 in use. Unless it is told how many there are, V8 lets four
 * times as much pile up before it collects. A document too large for it is inspected by whoever sent it.
 */
const OLD_OF_MANY = 256;

const limitsFor = (documents: number): ResourceLimits =>
  documents > MANY
    ? { maxYoungGenerationSizeMb: YOUNG_OF_MANY, maxOldGenerationSizeMb: OLD_OF_MANY }
    : { maxYoungGenerationSizeMb: YOUNG };

const NONE: PoolWorker = {
  assign: () => undefined,
  run: async () => undefined,
  terminate: async () => undefined,
  isAlive: () => false,
  hold: () => undefined,
};

/** Starts a worker; it gets ready while the first batches wait for it. @param documents how many there are in all */
function startWorker(documents: number): PoolWorker {
  try {
    return poolWorker(new Worker(ownFile("dist/thread.js"), { execArgv: [], resourceLimits: limitsFor(documents) }));
  } catch {
    return NONE;
  }
}

function poolWorker(thread: Worker): PoolWorker {
  const waiting: ((result?: unknown) => void)[] = [];
  let ended: Promise<unknown> | undefined;
  const terminate = (): Promise<unknown> => {
    for (const answered of waiting.splice(0)) answered();
    ended ??= thread.terminate();
    return ended;
  };
  // What cannot be sent ends the worker: one that waits for ever would keep the whole program waiting.
  const send = (message: unknown): void => {
    try {
      thread.postMessage(message);
    } catch {
      terminate();
    }
  };
  thread.on("message", (result: unknown) => waiting.shift()?.(result));
  for (const event of ["messageerror", "error", "exit"]) thread.once(event, terminate);
  const run = (batch: Batch): Promise<unknown> =>
    new Promise((resolve) => {
      if (ended) return resolve(undefined);
      waiting.push(resolve);
      send(batch);
    });
  const hold = (isHeld: boolean): void => void (isHeld ? thread.ref() : thread.unref());
  return { assign: send, run, terminate, isAlive: () => ended === undefined, hold };
}

/** Workers with nothing to do just now. The program does not wait for them. */
const idle: PoolWorker[] = [];

/**
 * So many workers: those that are idle, and new ones. To start a worker and have it load its script takes as long as to
 * inspect a few documents, so what reads the outlines of a docs repository leaves its workers to what comes after.
 */
function acquire(workers: number, documents: number): readonly PoolWorker[] {
  const acquired = Array.from({ length: workers }, () => idle.pop() ?? startWorker(documents));
  for (const each of acquired) each.hold(true);
  return acquired;
}

/** Leaves workers that have answered everything to whoever comes next. */
function release(workers: readonly PoolWorker[]): void {
  const alive = workers.filter(({ isAlive }) => isAlive());
  for (const each of alive) each.hold(false);
  idle.push(...alive);
}

/** What is to be done with documents. */
export interface PoolRun<W extends WorkerTask["work"]> {
  readonly task: WorkerTask & { readonly work: W };
  /** Those of plugins among them, whose results are sent with each document. */
  readonly rules?: readonly Rule[];
  /** What workers that cannot be had, or die, leave undone is done by this. */
  readonly here: () => (documents: readonly DocumentFile[]) => BatchResults[W];
  /** What is made of the results of a worker as they come. */
  readonly received?: (results: BatchResults[W]) => BatchResults[W];
  /** Whether whoever comes next finds the workers ready. */
  readonly leaves?: boolean;
}

/** Has workers do something with documents in small batches; gives the results of the batches, in their order. */
export async function runInPool<W extends WorkerTask["work"]>(
  documents: readonly DocumentFile[],
  count: number,
  { task, rules = [], here, received = (results) => results, leaves = false }: PoolRun<W>,
): Promise<readonly BatchResults[W][]> {
  const workers = acquire(count, documents.length);
  let isLeft = false;
  // Text and path are named: a text may be one that is read only when it is looked at.
  const sent = ({ path, text }: DocumentFile) => ({ path, text, results: resultsOn(rules, path) });
  const runs = workers.map(({ assign, run }) => {
    assign(task);
    return async (batch: readonly DocumentFile[]) => {
      const found = (await run(batch.map(sent))) as BatchResults[W] | undefined;
      return found && received(found);
    };
  });
  try {
    const found = await scheduleBatches(batchesOf(documents, count), runs, here);
    if (leaves) release(workers);
    isLeft = leaves;
    return found;
  } finally {
    // One that still writes would write into what is being taken away.
    if (!isLeft) await Promise.all(workers.map(({ terminate }) => terminate()));
  }
}
