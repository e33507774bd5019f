import { isNoting, noteInner, noting, Reads } from "./reads.js";

const KEPT = Symbol("kept");

/** A value that was worked out, and what it rests on where somebody noted that. */
interface Kept {
  readonly value: unknown;
  readonly reads: Reads | undefined;
}

type Keeping = object & { readonly [KEPT]?: Map<string, Kept> };

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
export function shareOnce(one: object, other: object): void {
  Object.defineProperty(other, KEPT, { value: keptBy(one) });
}
