import { isNoting, noteInner, noting, Reads } from "./reads.js";

const KEPT = Symbol("kept");
/** What the next model of the same document is given. */
const ACROSS = Symbol("across");

/** A value that was worked out, and what it rests on where somebody noted that. */
interface Kept {
  readonly value: unknown;
  readonly reads: Reads | undefined;
}

type Keeping = object & { readonly [KEPT]?: Map<string, Kept>; readonly [ACROSS]?: Map<string, Kept> };

/** Of owners that take no more properties. */
const apart = new WeakMap<object, Map<string, Kept>>();

/** On the owner itself where that can be: the garbage collector goes through a large WeakMap over and over. */
function keptBy(owner: Keeping): Map<string, Kept> {
  const known = owner[KEPT] ?? apart.get(owner);
  if (known) return known;
  const own = new Map<string, Kept>();
  if (Object.isExtensible(owner)) Object.defineProperty(owner, KEPT, { value: own });
  else apart.set(owner, own);
  return own;
}

function made(make: () => unknown): Kept {
  if (!isNoting()) return { value: make(), reads: undefined };
  const reads = new Reads();
  return { value: noting(reads, make), reads };
}

/**
 * What a thing of the model works out once: a model does not change after it is read, and every rule asks anew.
 * Without this the cost of a large face grows with the square of its runs. Whoever asks rests on what it rests on.
 */
export function once<T>(owner: object, key: string, make: () => T): T {
  const own = keptBy(owner);
  const known = own.get(key);
  const kept = known ?? made(make);
  if (!known) own.set(key, kept);
  noteInner(kept.reads);
  return kept.value as T;
}

/** Has another thing share what one has worked out, and will: both come to the same. */
export function shareOnce(one: Keeping, other: object): void {
  Object.defineProperty(other, KEPT, { value: keptBy(one) });
  if (one[ACROSS]) Object.defineProperty(other, ACROSS, { value: one[ACROSS] });
}

/**
 * The same for what is plain data and knows nothing of the model it was worked out by: while a document is written, the
 * next model is given it where what it rests on is as it was. Elsewhere it is worked out once.
 */
export function onceAcross<T>(owner: Keeping, key: string, make: () => T): T {
  const across = owner[ACROSS];
  if (!across) return once(owner, key, make);
  const kept = across.get(key) ?? made(make);
  across.set(key, kept);
  noteInner(kept.reads);
  return kept.value as T;
}

/** Has a model keep what is plain data for the next one. */
export function keepAcross(owner: Keeping): void {
  if (!owner[ACROSS]) Object.defineProperty(owner, ACROSS, { value: new Map() });
}

/**
 * Gives a model what an earlier one of its document kept for it.
 * @param holds whether what a result rests on is as it was
 */
export function handOver(earlier: Keeping, next: Keeping, holds: (reads: Reads) => boolean): void {
  const [from, to] = [earlier[ACROSS], next[ACROSS]];
  if (!from || !to || from === to) return;
  for (const [key, kept] of from) if (kept.reads !== undefined && holds(kept.reads)) to.set(key, kept);
}
