import fc from "fast-check";

/** A few of many, other ones with every seed; all where there are no more. */
export function some<T>(all: readonly T[], count: number, seed: number): readonly T[] {
  if (all.length <= count) return all;
  const picked = fc.shuffledSubarray([...all], { minLength: count, maxLength: count });
  return fc.sample(picked, { seed, numRuns: 1 })[0] ?? [];
}
