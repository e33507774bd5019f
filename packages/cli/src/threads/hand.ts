import { Worker } from "node:worker_threads";
import { ownFile } from "../own-file.js";

/** A thread that is sent shares of documents and answers one after another. */
export interface Hand<Share, Answer> {
  /** Undefined when the thread could not be had, or died over it. */
  readonly ask: (share: Share) => Promise<Answer | undefined>;
  /** Ends it; it does nothing more when that is done. */
  readonly end: () => Promise<unknown>;
}

/**
 * Megabytes for what lives shortly. The trees of a document fill the usual 48 several times, and are copied each time: with
 * more, a document takes a tenth less time. It can be said of threads only, not of the one a program starts with.
 */
const YOUNG = 96;

/**
 * Starts a thread; it gets ready while the first shares wait for it.
 * @param script of the thread, in `dist`
 * @param frame what it is told first, plain data
 */
export function hand<Share, Answer>(script: string, frame: unknown): Hand<Share, Answer> {
  try {
    const limits = { maxYoungGenerationSizeMb: YOUNG };
    return over(new Worker(ownFile(`dist/${script}`), { execArgv: [], resourceLimits: limits }), frame);
  } catch {
    return { ask: async () => undefined, end: async () => undefined };
  }
}

function over<Share, Answer>(thread: Worker, frame: unknown): Hand<Share, Answer> {
  const waiting: ((answer?: Answer) => void)[] = [];
  let ended: Promise<unknown> | undefined;
  const end = (): Promise<unknown> => {
    for (const answered of waiting.splice(0)) answered();
    ended ??= thread.terminate();
    return ended;
  };
  // What cannot be sent ends the thread: one that waits for ever would keep the whole program waiting.
  const send = (message: unknown): void => {
    try {
      thread.postMessage(message);
    } catch {
      end();
    }
  };
  thread.on("message", (answer: Answer) => waiting.shift()?.(answer));
  for (const event of ["messageerror", "error", "exit"]) thread.once(event, end);
  send(frame);
  const ask = (share: Share): Promise<Answer | undefined> =>
    new Promise((resolve) => {
      if (ended) return resolve(undefined);
      waiting.push(resolve);
      send(share);
    });
  return { ask, end };
}
