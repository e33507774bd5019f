// Some of many, by chance: what a share is worth can be told without trying every change.

/** Numbers from 0 to 1 by a seed: a linear congruential generator (Numerical Recipes, 7.1, "quick and dirty"). */
function chances(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** `count` of a list, the same ones for the same seed, in the order they are drawn: the first of them are a sample too. */
export function sampled(list, count, seed) {
  const chance = chances(seed);
  const drawn = list.map((each) => ({ each, lot: chance() })).sort((one, other) => one.lot - other.lot);
  return drawn.slice(0, count).map(({ each }) => each);
}

/** `count` of each part, or all of a smaller one; a part is told by the beginning of its paths. */
export const sampledByPart = (list, parts, count, seed) =>
  parts.flatMap((part) =>
    sampled(
      list.filter(({ path }) => path.startsWith(`${part}/`)),
      count,
      seed,
    ),
  );

/** The list in turns, one of each part: a run that is ended early has something of all of them. */
export function inTurns(list, parts) {
  const lines = parts.map((part) => list.filter(({ path }) => path.startsWith(`${part}/`)));
  const longest = Math.max(...lines.map(({ length }) => length));
  return Array.from({ length: longest }, (_, at) => lines.flatMap((line) => line.slice(at, at + 1))).flat();
}
