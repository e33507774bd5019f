import { type Extreme, liftAt, type SolvedBeam, type Stretch, stretchAt, turnAt } from "./solve.js";

/** Each stretch is looked at in this many parts: its slope is a cubic, so no turning place hides between them in practice. */
const PARTS = 16;

function halve(stretch: Stretch, left: number, right: number): number {
  let [low, high] = [left, right];
  const sign = Math.sign(turnAt(stretch, low));
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2;
    if (Math.sign(turnAt(stretch, middle)) === sign) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function levelPlaces(stretch: Stretch): readonly number[] {
  const places = Array.from({ length: PARTS + 1 }, (_, i) => stretch.from + ((stretch.to - stretch.from) * i) / PARTS);
  const crossings = places.slice(1).flatMap((right, index) => {
    const left = places[index]!;
    return turnAt(stretch, left) * turnAt(stretch, right) < 0 ? [halve(stretch, left, right)] : [];
  });
  // The looked-at places count themselves: a slope of exactly zero on one is no change of sign beside it.
  return [...places, ...crossings];
}

/** EI × deflection at a place, up positive. */
export const deflectionAt = (solved: SolvedBeam, x: number): number => liftAt(stretchAt(solved, x), x);

/** The lowest place of a part of the beam and EI × how far it sinks there (positive downwards, 0 if it only rises). */
export function deepest(solved: SolvedBeam, from = 0, to = solved.beam.length): Extreme {
  const level = solved.stretches
    .filter((stretch) => stretch.to >= from && stretch.from <= to)
    .flatMap((stretch) => levelPlaces(stretch).map((at) => ({ at, value: -liftAt(stretch, at) })))
    .filter(({ at }) => at >= from && at <= to);
  // The part's own ends count too: it may be deepest where it is cut off.
  const candidates = [...level, ...[from, to].map((at) => ({ at, value: -deflectionAt(solved, at) }))];
  return candidates.reduce((best, each) => (each.value > best.value ? each : best), { at: from, value: 0 });
}
