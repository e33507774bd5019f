import { type Known, tabled } from "../formula/value.js";

/** Highest TMDS clock in Hz and the length in metres that passive copper is trusted with at it. Common practice. */
export const copperVideoRows = [
  { upTo: 74.25e6, length: 15 },
  { upTo: 148.5e6, length: 10 },
  { upTo: 600e6, length: 5 },
] as const;

/**
 * How long passive copper HDMI may be at a TMDS clock in Hz, by common practice: the standard sets no length.
 * Undefined above 600 MHz, where nothing is known.
 */
export function hdmiCopper(clock: number): Known | undefined {
  const row = copperVideoRows.find(({ upTo }) => clock <= upTo);
  return row && tabled(row.length, "length", "practice", "passive copper HDMI at this clock");
}
