import { signCharacterHeight } from "./character-height.js";

/** Baseline up to, near distance, least height there: 2010 ADA Standards, Table 703.5.5, inches. */
export const adaRows = [
  { upTo: 70, near: 72, least: 0.625 },
  { upTo: 120, near: 180, least: 2 },
  { upTo: Number.POSITIVE_INFINITY, near: 252, least: 3 },
] as const;

/**
 * Least character height in metres of a fixed sign by the height of its baseline above the floor and the distance,
 * both in metres: an eighth of an inch more for each foot beyond the near distance. For changing pictures it is
 * advice. The table begins at 40 in; below that it says nothing and the result is undefined.
 */
export const adaCharacterHeight = (baseline: number, distance: number): number | undefined =>
  signCharacterHeight({ rows: adaRows, nearUnit: 0.0254, perFoot: 1 / 8 }, baseline, distance);
