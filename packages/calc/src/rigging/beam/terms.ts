import type { Beam } from "./beam.js";

/** A load and the place of its middle. */
export interface LoadTerm {
  readonly load: number;
  readonly at: number;
}

/** More terms than this are no working that anybody redoes: what is spread is then one term and what is not another. */
const MOST = 12;

const resultant = (terms: readonly LoadTerm[]): readonly LoadTerm[] => {
  const load = terms.reduce((sum, each) => sum + each.load, 0);
  const turning = terms.reduce((sum, each) => sum + each.load * each.at, 0);
  return load === 0 ? [] : [{ load, at: turning / load }];
};

/** Loads left of a place as single forces, spread ones in the middle of what lies there; couples are not covered. */
export function termsOf(beam: Beam, leftOf = beam.length + 1): readonly LoadTerm[] {
  const spread = (beam.uniform ?? [])
    .map(({ from, to, perMetre }) => ({ from, to: Math.min(to, leftOf), perMetre }))
    .filter(({ from, to }) => to > from)
    .map(({ from, to, perMetre }) => ({ load: perMetre * (to - from), at: (from + to) / 2 }));
  const points = (beam.points ?? []).filter(({ at }) => at < leftOf).map(({ at, load }) => ({ load, at }));
  const all = [...spread, ...points].filter(({ load }) => load !== 0);
  return all.length > MOST ? [...resultant(spread), ...resultant(points)] : all;
}
