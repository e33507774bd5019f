import { Worker } from "node:worker_threads";
import { ownFile } from "../own-file.js";
import type { Answer, Frame, Share } from "./messages.js";

/** A thread that is sent shares of documents and answers one after another. */
export interface Hand {
  /** Undefined when the thread could not be had, or died over it. */
  readonly ask: (share: Share) => Promise<Answer | undefined>;
  readonly end: () => void;
}

/**
 * Megabytes for what lives shortly. The trees of a document fill the usual 48 several times, and are copied each time: with
 * more, a document takes a tenth less time. It can be said of threads only, not of the one a program starts with.
 */
const YOUNG = 96;

const NO_HAND: Hand = { ask: async () => undefined, end: () => undefined };

/** Starts a thread; it gets ready while the first shares wait for it. */
export function hand(frame: Frame): Hand {
  try {
    return over(
      new Worker(ownFile("dist/thread.js"), { execArgv: [], resourceLimits: { maxYoungGenerationSizeMb: YOUNG } }),
      frame,
    );
  } catch {
    return NO_HAND;
  }
}

function over(thread: Worker, frame: Frame): Hand {
  const waiting: ((answer?: Answer) => void)[] = [];
  let ended = false;
  const end = (): void => {
    ended = true;
    for (const answered of waiting.splice(0)) answered();
    void thread.terminate();
  };
  thread.on("message", (answer: Answer) => waiting.shift()?.(answer));
  for (const event of ["messageerror", "error", "exit"]) thread.once(event, end);
  thread.postMessage(frame);
  const ask = (share: Share): Promise<Answer | undefined> =>
    new Promise((resolve) => {
      if (ended) return resolve(undefined);
      waiting.push(resolve);
      thread.postMessage(share);
    });
  return { ask, end };
}
