/**
 * Sets of places a bar can hang from, fewest hangs first: every set of two to `most` of them, those first whose outer
 * hangs stand widest apart. Whether one does is for the rules to say; which are worth asking about is said here.
 * @param places in metres along the beam, rising
 * @param reach the bar's ends along the same beam, in metres: hangs stand between them
 * @param centre where the load's centre is, in metres: a set that does not stand on both sides of it tips
 */
export function* hangSets(
  places: readonly number[],
  reach: readonly [number, number],
  centre: number,
  most: number,
): Generator<readonly number[]> {
  const inside = places
    .map((at, index) => ({ at, index }))
    .filter(({ at }) => at >= reach[0] - NEAR && at <= reach[1] + NEAR)
    .sort((a, b) => a.at - b.at);
  for (let size = 2; size <= Math.min(most, inside.length); size += 1) {
    const sets = [...subsets(inside, size)].filter(
      (set) => (set[0]?.at ?? 0) < centre - NEAR && (set.at(-1)?.at ?? 0) > centre + NEAR,
    );
    const unevenness = (set: readonly { readonly at: number }[]): number =>
      Math.abs(((set[0]?.at ?? 0) + (set.at(-1)?.at ?? 0)) / 2 - centre);
    sets.sort((a, b) => unevenness(a) - unevenness(b) || spanOf(b) - spanOf(a));
    for (const set of sets) yield set.map(({ index }) => index);
  }
}

const NEAR = 1e-9;

const spanOf = (set: readonly { readonly at: number }[]): number => (set.at(-1)?.at ?? 0) - (set[0]?.at ?? 0);

function* subsets<T>(all: readonly T[], size: number, from = 0): Generator<readonly T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let index = from; index <= all.length - size; index += 1)
    for (const rest of subsets(all, size - 1, index + 1)) yield [all[index] as T, ...rest];
}
