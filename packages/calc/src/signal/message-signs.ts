const INCH = 0.0254;
const FOOT = 0.3048;

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
export function californiaCharacterHeight(baseline: number, distance: number): number | undefined {
  const above = baseline / INCH;
  if (above < 40 - 1e-9 || distance < 0) return undefined;
  const row = CALIFORNIA_ROWS.find(({ upTo }) => above <= upTo + 1e-9);
  return row && (row.least + Math.max(0, distance / FOOT - row.near) / 5) * INCH;
}
