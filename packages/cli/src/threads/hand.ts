import { type ResourceLimits, Worker } from "node:worker_threads";
import { ownFile } from "../own-file.js";
import type { Order, Share } from "./messages.js";

/** A thread that is told what to do, is sent shares of documents, and answers one after another. */
export interface Hand {
  /** What is to be done with the shares that follow. */
  readonly tell: (order: Order) => void;
  /** Undefined when the thread could not be had, or died over it. */
  readonly ask: (share: Share) => Promise<unknown>;
  /** Ends it; it does nothing more when that is done. */
  readonly end: () => Promise<unknown>;
  readonly isThere: () => boolean;
  /** Whether the program waits for it, even when it has nothing to do. */
  readonly hold: (held: boolean) => void;
}

/**
 * Megabytes for what lives shortly. The trees of a document fill the usual 48 several times, and are copied each time: with
 * more, a document takes a tenth less time. It can be said of threads only, not of the one a program starts with.
 */
const YOUNG = 96;

/** With thousands of documents everything else takes more memory: threads then have to do with less, in up to a fifth more time. */
const MANY = 2000;
const YOUNG_OF_MANY = 48;

/**
 * Megabytes for what lives longer, of which a thread has some 25 in use. Unless it is told how many there are, V8 lets
 * four times as much pile up before it tidies up. A document too large for it is inspected by whoever sent it.
 */
const OLD_OF_MANY = 256;

const limitsFor = (documents: number): ResourceLimits =>
  documents > MANY
    ? { maxYoungGenerationSizeMb: YOUNG_OF_MANY, maxOldGenerationSizeMb: OLD_OF_MANY }
    : { maxYoungGenerationSizeMb: YOUNG };

const NONE: Hand = {
  tell: () => undefined,
  ask: async () => undefined,
  end: async () => undefined,
  isThere: () => false,
  hold: () => undefined,
};

/**
 * Starts a thread; it gets ready while the first shares wait for it.
 * @param documents how many there are to be dealt out
 */
export function hand(documents: number): Hand {
  try {
    return over(new Worker(ownFile("dist/thread.js"), { execArgv: [], resourceLimits: limitsFor(documents) }));
  } catch {
    return NONE;
  }
}

function over(thread: Worker): Hand {
  const waiting: ((answer?: unknown) => void)[] = [];
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
  thread.on("message", (answer: unknown) => waiting.shift()?.(answer));
  for (const event of ["messageerror", "error", "exit"]) thread.once(event, end);
  const ask = (share: Share): Promise<unknown> =>
    new Promise((resolve) => {
      if (ended) return resolve(undefined);
      waiting.push(resolve);
      send(share);
    });
  const hold = (held: boolean): void => void (held ? thread.ref() : thread.unref());
  return { tell: send, ask, end, isThere: () => ended === undefined, hold };
}
