/** One size of IEC 60228, copper, greatest resistance at 20 °C, Ω/km. */
export interface MetricRow {
  readonly mm2: number;
  /** Flexible, plain. */
  readonly class5: number;
  /** Flexible, tinned. */
  readonly class5Tinned: number;
  /** Solid or stranded for fixed wiring, plain. */
  readonly class1or2: number;
}

/** IEC 60228 (source `iec-60228`). These are maxima at 20 °C, where NEC Table 8 is nominal at 75 °C. */
export const metricRows: readonly MetricRow[] = [
  { mm2: 0.75, class5: 26.0, class5Tinned: 26.7, class1or2: 24.5 },
  { mm2: 1, class5: 19.5, class5Tinned: 20.0, class1or2: 18.1 },
  { mm2: 1.5, class5: 13.3, class5Tinned: 13.7, class1or2: 12.1 },
  { mm2: 2.5, class5: 7.98, class5Tinned: 8.21, class1or2: 7.41 },
  { mm2: 4, class5: 4.95, class5Tinned: 5.09, class1or2: 4.61 },
  { mm2: 6, class5: 3.3, class5Tinned: 3.39, class1or2: 3.08 },
  { mm2: 10, class5: 1.91, class5Tinned: 1.95, class1or2: 1.83 },
  { mm2: 16, class5: 1.21, class5Tinned: 1.24, class1or2: 1.15 },
  { mm2: 25, class5: 0.78, class5Tinned: 0.795, class1or2: 0.727 },
];

export const metricRow = (mm2: number): MetricRow | undefined =>
  metricRows.find((row) => Math.abs(row.mm2 - mm2) < 1e-6);

/** Coefficient of copper on a base of 20 °C, per K (from memory; IEC 60228's own table follows the rounder 0.004). */
export const ALPHA_20 = 0.00393;

/** Ω/km at 20 °C → Ω/km at `celsius`, with the physical coefficient. */
export const metricAt = (at20: number, celsius: number): number => at20 * (1 + ALPHA_20 * (celsius - 20));

/** IEC 60228's correction kt with R20 = Rt × kt. */
export const correctionTo20 = (celsius: number): number => 1 / (1 + 0.004 * (celsius - 20));
