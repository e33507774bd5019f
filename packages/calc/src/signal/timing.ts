import type { SourceId } from "../sources/index.js";

/** A complete raster timing: totals with blanking in pixels and lines, clock in Hz. */
export interface Timing {
  readonly width: number;
  readonly height: number;
  readonly totalWidth: number;
  readonly totalHeight: number;
  /** Pixel clock in Hz, a whole number except for the 1000/1001 rates. */
  readonly clock: number;
  /** Frame rate in Hz that comes out of the clock. */
  readonly rate: number;
  readonly name: string;
  readonly source: SourceId;
}

/** Frame rate in Hz from clock and totals: exact but for the last division. */
export const frameRate = (clock: number, totalWidth: number, totalHeight: number): number =>
  clock / (totalWidth * totalHeight);

/** A rate as a fraction of whole numbers, so that timings are worked out in whole Hz. */
export interface Rate {
  readonly over: number;
  readonly under: number;
}

/** 60 → 60/1, 59.94 → 60000/1001, anything else in thousandths of a hertz. */
export function rateOf(hertz: number): Rate {
  if (Number.isInteger(hertz)) return { over: hertz, under: 1 };
  const near = Math.round(hertz * 1.001);
  // 59.94, 29.97 and 23.98 are how the 1000/1001 rates are written.
  if (Math.abs((near * 1000) / 1001 - hertz) < 0.005) return { over: near * 1000, under: 1001 };
  return { over: Math.round(hertz * 1000), under: 1000 };
}

/** Floor of a quotient of two whole numbers below 2^53, exactly. */
export const wholeQuotient = (over: number, under: number): number =>
  (over - (((over % under) + under) % under)) / under;
