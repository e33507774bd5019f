const NEAR = 1e-9;

function* subsets<T>(all: readonly T[], size: number, from = 0): Generator<readonly T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let index = from; index <= all.length - size; index += 1)
    for (const rest of subsets(all, size - 1, index + 1)) yield [all[index] as T, ...rest];
}

/** Overhang over span at which the bar is bent as much over the outer hangs as between them: 1/√8 on two, 1/√6 on more. */
const OVERHANG = { two: 1 / Math.sqrt(8), more: 1 / Math.sqrt(6) } as const;

/**
 * Where a bar that is evenly loaded is bent least, in metres: over two hangs w·a²/2 = w·s²/8 − w·a²/2, over more of them
 * the end moment is that of a fixed span, w·s²/12 (beam theory).
 */
export function bestStations(count: number, from: number, to: number): readonly number[] {
  const share = count === 2 ? OVERHANG.two : OVERHANG.more;
  const span = (to - from) / (count - 1 + 2 * share);
  return Array.from({ length: count }, (_, index) => from + (share + index) * span);
}

/** More subsets than that are not all written out: those near the best stations are. */
const MOST_SUBSETS = 3000;

/**
 * Sets of hangs in the order they are worth asking about: fewest first, then those that ask for no longer bar than the
 * load does, then those nearest to where the bar is bent least.
 * @param load the ends of what hangs, in metres along the beam
 * @returns each set by the indices of its places, and up to how many hangs every set there is was written out
 */
export function worthAsking(
  places: readonly number[],
  reach: readonly [number, number],
  load: readonly [number, number],
  most: number,
): { readonly sets: readonly (readonly number[])[]; readonly wholeUpTo: number } {
  const centre = (load[0] + load[1]) / 2;
  const inside = places
    .map((at, index) => ({ at, index }))
    .filter(({ at }) => at >= reach[0] - NEAR && at <= reach[1] + NEAR)
    .sort((a, b) => a.at - b.at);
  const at = (index: number): number => places[index] as number;
  const outside = (set: readonly number[]): number =>
    Math.max(0, load[0] - at(set[0] as number)) + Math.max(0, at(set.at(-1) as number) - load[1]);
  let wholeUpTo = Number.POSITIVE_INFINITY;
  const sets: (readonly number[])[] = [];
  for (let size = 2; size <= Math.min(most, inside.length); size += 1) {
    const stations = bestStations(size, load[0], load[1]);
    const few = binomial(inside.length, size) <= MOST_SUBSETS;
    if (!few) wholeUpTo = Math.min(wholeUpTo, size - 1);
    const found = few
      ? [...subsets(inside, size)].map((set) => set.map(({ index }) => index))
      : nearest(inside, stations);
    const off = (set: readonly number[]): number =>
      set.reduce((sum, index, turn) => sum + Math.abs(at(index) - (stations[turn] as number)), 0);
    sets.push(
      ...found
        .filter((set) => at(set[0] as number) < centre - NEAR && at(set.at(-1) as number) > centre + NEAR)
        .map((set) => ({ set, outside: outside(set), off: off(set) }))
        .sort((a, b) => a.outside - b.outside || a.off - b.off)
        .map(({ set }) => set),
    );
  }
  return { sets, wholeUpTo };
}

/** Sets of the places next to each station, on either side of it. */
function nearest(
  inside: readonly { readonly at: number; readonly index: number }[],
  stations: readonly number[],
): readonly (readonly number[])[] {
  const near = stations.map((station) =>
    [...inside].sort((a, b) => Math.abs(a.at - station) - Math.abs(b.at - station)).slice(0, 2),
  );
  let sets: (typeof inside)[] = [[]];
  for (const places of near)
    sets = sets.flatMap((set) =>
      places.filter(({ at }) => at > (set.at(-1)?.at ?? -Infinity)).map((each) => [...set, each]),
    );
  return sets.map((set) => set.map(({ index }) => index));
}

function binomial(of: number, take: number): number {
  let count = 1;
  for (let each = 1; each <= take; each += 1) count = (count * (of - take + each)) / each;
  return count;
}
