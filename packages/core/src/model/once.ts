const kept = new WeakMap<object, Map<string, unknown>>();

/**
 * What a thing of the model works out once: a model does not change after it is read, and every rule asks anew.
 * Without this the cost of a large face grows with the square of its runs.
 */
export function once<T>(owner: object, key: string, make: () => T): T {
  const own = kept.get(owner) ?? new Map<string, unknown>();
  kept.set(owner, own);
  if (!own.has(key)) own.set(key, make());
  return own.get(key) as T;
}
