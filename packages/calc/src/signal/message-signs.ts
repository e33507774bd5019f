import { signCharacterHeight } from "./character-height.js";

/** Baseline up to (in), near distance (ft), least height there (in): California Building Code 2013, 11B-703.8.4. */
export const CALIFORNIA_ROWS = [
  { upTo: 70, near: 10, least: 2 },
  { upTo: 120, near: 15, least: 3 },
  { upTo: Number.POSITIVE_INFINITY, near: 20, least: 4 },
] as const;

/**
 * Least character height in metres of a low-resolution message sign, the nearest rule there is for coarse LED text:
 * a fifth of an inch more for each foot beyond the near distance. Both lengths in metres; below 40 in it says nothing.
 */
export const californiaCharacterHeight = (baseline: number, distance: number): number | undefined =>
  signCharacterHeight({ rows: CALIFORNIA_ROWS, nearUnit: 0.3048, perFoot: 1 / 5 }, baseline, distance);
