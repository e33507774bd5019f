import { CELL, canBeTimed, cvt } from "./cvt.js";
import { TMDS_FLOOR } from "./links.js";
import { frameRate, rateOf, type Timing } from "./timing.js";

/**
 * Step of the pixel clock of a detailed timing, Hz; the most blanking its 12 bits hold, pixels or lines; and the least
 * blanking of a line, pixels, which is that of CVT reduced blanking 2.
 */
export const DETAILED = { clockStep: 10_000, mostBlanking: 4095, leastAcross: 80 } as const;

/** Least line rate, Hz, of the one choice of totals: below it many receivers lock to nothing (common practice). */
export const LINE_RATE_LEAST = 15_000;

/** Clocks are tried upward to this many steps over the least: a frame whose totals divide comes within a few. */
const STEPS = 2000;

const divides = (whole: number, by: number): boolean => whole % by === 0;

/** Totals of a frame of exactly `pixels` pixels, the fewest lines first; undefined when none divides it so. */
function totalsOf(
  pixels: number,
  active: { readonly width: number; readonly height: number },
  leastLines: number,
): { readonly totalWidth: number; readonly totalHeight: number } | undefined {
  const leastAcross = Math.ceil((active.width + DETAILED.leastAcross) / CELL) * CELL;
  const most = Math.min(Math.floor(pixels / leastAcross), active.height + DETAILED.mostBlanking);
  for (let lines = leastLines; lines <= most; lines += 1)
    if (divides(pixels, lines * CELL) && pixels / lines - active.width <= DETAILED.mostBlanking)
      return { totalWidth: pixels / lines, totalHeight: lines };
  return undefined;
}

/**
 * A raster too small for the least pixel clock, with its blanking widened until the clock reaches it. Of all totals that
 * do, one is chosen so that everybody who works it out comes to the same: the least clock in whole steps of 10 kHz at or
 * over 25 MHz, pixels of a line a multiple of 8 and at least 80 more than are seen, lines at least those of CVT reduced
 * blanking 2, at least 15,000 lines a second, and of equal clocks the fewest lines. It is no timing of VESA CVT: source
 * and receiver both have to be made to take it.
 * Undefined where no such totals are found, and for what is no raster. Whole hertz throughout.
 */
export function widened(width: number, height: number, hertz: number): Timing | undefined {
  if (!canBeTimed(width, height, hertz)) return undefined;
  const { over, under } = rateOf(hertz);
  const reduced = cvt(width, height, hertz, "reduced-2");
  const leastLines = Math.max(reduced.totalHeight, Math.ceil((LINE_RATE_LEAST * under) / over));
  const leastAcross = Math.ceil((width + DETAILED.leastAcross) / CELL) * CELL;
  const floor = Math.max(TMDS_FLOOR, (leastAcross * leastLines * over) / under);
  const first = Math.ceil(floor / DETAILED.clockStep - 1e-9);
  for (let step = first; step < first + STEPS; step += 1) {
    const clock = step * DETAILED.clockStep;
    if (!divides(clock * under, over)) continue;
    const totals = totalsOf((clock * under) / over, { width, height }, leastLines);
    if (totals)
      return {
        width,
        height,
        ...totals,
        clock,
        rate: frameRate(clock, totals.totalWidth, totals.totalHeight),
        name: `widened blanking, ${totals.totalWidth} × ${totals.totalHeight} in all`,
        source: "detailed-timing",
      };
  }
  return undefined;
}

/**
 * A raster with totals as somebody wrote them. Undefined when they leave no blanking, leave more than a detailed timing
 * holds, or are not whole.
 */
export function withTotals(
  width: number,
  height: number,
  hertz: number,
  totals: { readonly width: number; readonly height: number },
): Timing | undefined {
  if (!canBeTimed(width, height, hertz) || ![totals.width, totals.height].every(Number.isInteger)) return undefined;
  const blanking = [totals.width - width, totals.height - height];
  if (blanking.some((each) => each < 1 || each > DETAILED.mostBlanking)) return undefined;
  const { over, under } = rateOf(hertz);
  const clock = (totals.width * totals.height * over) / under;
  return {
    width,
    height,
    totalWidth: totals.width,
    totalHeight: totals.height,
    clock,
    rate: frameRate(clock, totals.width, totals.height),
    name: `totals as written, ${totals.width} × ${totals.height}`,
    source: "detailed-timing",
  };
}
