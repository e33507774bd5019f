const INCH = 0.0254;

/** A row of a table of signs: baseline up to so many inches, near distance in the table's own unit, least height there. */
export interface SignRow {
  readonly upTo: number;
  readonly near: number;
  readonly least: number;
}

export interface SignTable {
  readonly rows: readonly SignRow[];
  /** Metres in the unit the near distances are printed in. */
  readonly nearUnit: number;
  /** Inches of height for each foot beyond the near distance. */
  readonly perFoot: number;
}

/**
 * Least character height in metres by the height of the baseline above the floor and the distance, both in metres.
 * Both tables there are begin at a baseline of 40 in; below it they say nothing and the result is undefined.
 */
export function signCharacterHeight(
  { rows, nearUnit, perFoot }: SignTable,
  baseline: number,
  distance: number,
): number | undefined {
  const above = baseline / INCH;
  if (above < 40 - 1e-9 || distance < 0) return undefined;
  const row = rows.find(({ upTo }) => above <= upTo + 1e-9);
  if (!row) return undefined;
  const beyond = Math.max(0, distance - row.near * nearUnit) / (12 * INCH);
  return (row.least + beyond * perFoot) * INCH;
}
