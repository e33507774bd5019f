import { sum } from "../formula/arithmetic.js";
import type { Value } from "../formula/value.js";
import { segmentDrop, segmentDropThreePhase } from "./drop.js";
import { farEndDrop } from "./far-end.js";

/** One length of cable of a run and what is tapped off at its far end. */
export interface Segment {
  /** Resistance per length of one conductor. */
  readonly resistance: Value;
  readonly length: Value;
  /** Current drawn at the far end of this segment. */
  readonly tap: Value;
}

/**
 * Current in every segment: everything that is tapped off downstream of it. The first segment carries the whole run.
 * A missing tap leaves the segments before and at it missing, not those behind it.
 */
export const segmentCurrents = (taps: readonly Value[]): readonly Value<"current">[] =>
  taps.map((_, index) => sum(taps.slice(index), "current", "I"));

/** Voltage lost along each segment, in order. */
export function segmentDrops(segments: readonly Segment[], threePhase = false): readonly Value<"voltage">[] {
  const currents = segmentCurrents(segments.map((each) => each.tap));
  const drop = threePhase ? segmentDropThreePhase : segmentDrop;
  return segments.map((each, index) => drop.of({ I: currents[index] as Value, r: each.resistance, L: each.length }));
}

/** Voltage lost to the end of each segment, in order; the last is the drop of the run. */
export function runDrops(segments: readonly Segment[], threePhase = false): readonly Value<"voltage">[] {
  const drops = segmentDrops(segments, threePhase);
  return drops.map((_, index) => farEndDrop.of({ dv: drops.slice(0, index + 1) }));
}

/** Closed form for equal loads at equal spacing: r × s × I × N(N + 1) ÷ 2, with r the loop resistance per length (Ω/m). */
export const equalTapsDrop = (loop: number, spacing: number, current: number, taps: number): number =>
  (loop * spacing * current * taps * (taps + 1)) / 2;
