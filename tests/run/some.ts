import fc from "fast-check";

/** A few of many, other ones with every seed; all where there are no more. */
export function some<T>(all: readonly T[], count: number, seed: number): readonly T[] {
  if (all.length <= count) return all;
  const picked = fc.shuffledSubarray([...all], { minLength: count, maxLength: count });
  return fc.sample(picked, { seed, numRuns: 1 })[0] ?? [];
}

/** A few of every kind, other ones with every seed: no kind is left out. */
export function someOfEach<T>(
  all: readonly T[],
  kindOf: (one: T) => string,
  count: number,
  seed: number,
): readonly T[] {
  const kinds = new Map<string, T[]>();
  for (const one of all) kinds.set(kindOf(one), [...(kinds.get(kindOf(one)) ?? []), one]);
  return [...kinds.values()].flatMap((of, index) => some(of, count, seed + index));
}
