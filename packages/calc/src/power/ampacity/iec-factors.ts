import type { SourceId } from "../../sources/index.js";

interface Ambient {
  readonly to: number;
  readonly factor: number;
  readonly source: SourceId;
}

/** PVC, 70 °C, base 30 °C. The row of 35 °C has not been seen in print. */
export const pvcAmbient: readonly Ambient[] = [
  { to: 30, factor: 1, source: "iec-60364-5-52-b14" },
  { to: 35, factor: 0.94, source: "iec-60364-5-52-b14-memory" },
  { to: 40, factor: 0.87, source: "iec-60364-5-52-b14" },
  { to: 45, factor: 0.79, source: "iec-60364-5-52-b14" },
  { to: 50, factor: 0.71, source: "iec-60364-5-52-b14" },
  { to: 55, factor: 0.61, source: "iec-60364-5-52-b14" },
];

/** Rubber cord, 60 °C, base 30 °C: the square root of (60 − θ) ÷ 30, rounded. */
export const rubberAmbient: readonly Ambient[] = [
  { to: 30, factor: 1, source: "ambient-60" },
  { to: 35, factor: 0.91, source: "ambient-60" },
  { to: 40, factor: 0.82, source: "ambient-60" },
  { to: 45, factor: 0.71, source: "ambient-60" },
];

/**
 * Ambient factor of IEC practice for fixed wiring or a flexible cord. Below 30 °C the table allows more; 1 is used,
 * which is the safe side. Undefined where the table ends.
 */
export const iecAmbient = (celsius: number, what: "wiring" | "cord"): Ambient | undefined =>
  (what === "wiring" ? pvcAmbient : rubberAmbient).find(({ to }) => celsius <= to);

/** IEC 60364-5-52 Table B.52.17 item 1, from memory: circuits bunched in air, on a surface or enclosed. */
export const groupFactors = [1, 0.8, 0.7, 0.65, 0.6, 0.57, 0.54, 0.52, 0.5] as const;

/** Factor for circuits of like load that run together, this one counted; undefined above nine. */
export const iecGrouping = (circuits: number): number | undefined => groupFactors[circuits - 1];
