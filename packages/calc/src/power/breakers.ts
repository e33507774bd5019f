import type { SourceId } from "../sources/index.js";

/** Standard ampere ratings of overcurrent devices, NEC 240.6(A); those above 100 A except 175 A are from memory. */
export const standardBreakers: readonly { readonly amperes: number; readonly source: SourceId }[] = [
  ...[15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100].map((amperes) => ({
    amperes,
    source: "nec-240.6a" as const,
  })),
  ...[110, 125, 150, 175, 200, 225].map((amperes) => ({
    amperes,
    source: amperes === 175 ? ("nec-240.6a" as const) : ("nec-240.6a-memory" as const),
  })),
];

/** Float noise must not push a load that is exactly at a rating to the next size. */
const NOISE = 1e-9;

/** The next standard rating at or above `amperes` (A), up to 225 A; undefined above. */
export const nextBreaker = (amperes: number): number | undefined =>
  standardBreakers.find((each) => each.amperes >= amperes * (1 - NOISE))?.amperes;
