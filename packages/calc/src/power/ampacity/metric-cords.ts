import { missing, tabled, type Value } from "../../formula/value.js";

/** One size of flexible cord, A at 30 °C ambient, 60 °C conductor. */
export interface MetricCordRow {
  readonly mm2: number;
  /** Single-phase AC or DC. */
  readonly single: number;
  readonly three: number;
}

/** BS 7671 Table 4F3A (source `bs-7671-4f3a`), from memory: never the only ground of a hard failure. */
export const metricCordRows: readonly MetricCordRow[] = [
  { mm2: 0.75, single: 6, three: 6 },
  { mm2: 1, single: 10, three: 10 },
  { mm2: 1.5, single: 16, three: 16 },
  { mm2: 2.5, single: 25, three: 20 },
  { mm2: 4, single: 32, three: 25 },
];

/** Current rating of a metric flexible cord in IEC practice, at 30 °C; missing for sizes without a row. */
export function metricCordAmpacity(conductor: Value, threePhase = false): Value {
  if (!conductor.known) return missing("current", ...conductor.gaps);
  const row = metricCordRows.find((each) => Math.abs(each.mm2 - conductor.value) < 1e-6);
  const path = conductor.origin.from === "written" ? conductor.origin.path : "";
  const because = "There is no current rating for a cord of this size in the table; state it on the part.";
  if (!row) return missing("current", { path, what: "ampacity", because });
  const what = `${row.mm2} mm² flexible cord, ${threePhase ? "three phase" : "single phase"}`;
  return tabled(threePhase ? row.three : row.single, "current", "bs-7671-4f3a", what);
}
