import { gaugeRow } from "./conductors/copper-awg.js";

/** Ω·cmil/ft at 75 °C (handbook form of NEC Chapter 9 Table 8, source `nec-k-method`). */
export const K = { copper: 12.9, aluminium: 21.2 } as const;

/**
 * Voltage drop by the K method, for checking by hand; the product uses Table 8 itself. Up to 2.4 % apart from the
 * solid sizes of the table. `amperes` A, `feet` one way ft, `circularMils` cmil; volts, line to line for three phase.
 */
export const dropByK = (
  amperes: number,
  feet: number,
  circularMils: number,
  threePhase = false,
  metal: keyof typeof K = "copper",
): number => ((threePhase ? Math.sqrt(3) : 2) * K[metal] * amperes * feet) / circularMils;

/** Circular mils of a gauge in Table 8; undefined where it has none. */
export const circularMils = (awg: string): number | undefined => gaugeRow(awg)?.circularMils;
