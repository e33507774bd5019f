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

const product = (factors: readonly number[]): bigint => factors.reduce((all, each) => all * BigInt(each), 1n);

/** Floor of a quotient of two products of whole numbers above zero, exactly, whatever their size. */
export const wholeQuotient = (over: readonly number[], under: readonly number[]): number =>
  Number(product(over) / product(under));
