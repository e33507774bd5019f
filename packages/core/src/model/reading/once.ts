const KEPT = Symbol("kept");

type Keeping = object & { readonly [KEPT]?: Map<string, unknown> };

/** Of owners that take no more properties. */
const apart = new WeakMap<object, Map<string, unknown>>();

/** On the owner itself where that can be: the garbage collector goes through a large WeakMap over and over. */
function keptBy(owner: Keeping): Map<string, unknown> {
  const known = owner[KEPT] ?? apart.get(owner);
  if (known) return known;
  const own = new Map<string, unknown>();
  if (Object.isExtensible(owner)) Object.defineProperty(owner, KEPT, { value: own });
  else apart.set(owner, own);
  return own;
}

/**
 * What a thing of the model works out once: a model does not change after it is read, and every rule asks anew.
 * Without this the cost of a large face grows with the square of its runs.
 */
export function once<T>(owner: object, key: string, make: () => T): T {
  const own = keptBy(owner);
  if (!own.has(key)) own.set(key, make());
  return own.get(key) as T;
}

/** Has another thing share what one has worked out, and will: both come to the same. */
export function shareOnce(one: object, other: object): void {
  Object.defineProperty(other, KEPT, { value: keptBy(one) });
}
