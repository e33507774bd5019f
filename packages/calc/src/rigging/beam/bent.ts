import type { Beam } from "./beam.js";
import { type Extreme, momentExtremes, type Stretch, stretchesUnder } from "./solve.js";

/** A bar under its loads and given reactions at its supports: what statics alone tell of it. */
export interface Bent {
  readonly beam: Beam;
  readonly reactions: readonly number[];
  readonly stretches: readonly Stretch[];
  /** Most sagging and most hogging moment; at the free ends both are nothing. */
  readonly greatestMoment: Extreme;
  readonly leastMoment: Extreme;
  /** The greatest shear either way. */
  readonly greatestShear: Extreme;
}

/**
 * Moments and shears of a bar whose reactions are known. Only balances are used, so it holds for any stiffness; a
 * reaction stands at each of `beam.supports`, and one support is enough where the load is balanced on it.
 */
export function bentUnder(beam: Beam, reactions: readonly number[]): Bent {
  const { stretches } = stretchesUnder(beam, reactions);
  const shears = stretches.flatMap(({ from, to, shear, perMetre }) => [
    { at: from, value: Math.abs(shear) },
    { at: to, value: Math.abs(shear - perMetre * (to - from)) },
  ]);
  return {
    beam,
    reactions,
    stretches,
    ...momentExtremes(stretches),
    greatestShear: shears.reduce((best, each) => (each.value > best.value ? each : best), { at: 0, value: 0 }),
  };
}
