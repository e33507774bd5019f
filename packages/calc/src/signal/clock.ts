import { formula } from "../formula/formula.js";
import { type Known, restingOn, tabled } from "../formula/value.js";
import { ctaTiming } from "./cta.js";
import { type CvtMode, canBeTimed, cvt } from "./cvt.js";
import type { Timing } from "./timing.js";
import { widened, withTotals } from "./widened.js";

/** Pixel clock in Hz from the totals of a timing and its frame rate. */
export const pixelClock = formula({
  id: "signal.pixel-clock",
  title: "Pixel clock",
  symbol: "c",
  kind: "frequency",
  inputs: {
    X: { kind: "pixels", is: "pixels of a line, blanking included", least: 1 },
    Y: { kind: "count", is: "lines of a frame, blanking included", least: 1 },
    f: { kind: "frequency", is: "frame rate", above: 0 },
  },
  expression: "X × Y × f",
  source: "cta-861",
  validity: "progressive timings",
  example: { given: { X: 2200, Y: 1125, f: 60 }, gives: 148.5e6, within: 0, from: "CTA-861 format 16" },
  compute: ({ X, Y, f }) => X * Y * f,
});

/** Pixel clock of a timing with its working, on the source of the timing. */
export function timingClock(timing: Timing): Known<"frequency"> {
  const { totalWidth, totalHeight, rate, name, source, clock } = timing;
  const worked = pixelClock.of({
    X: tabled(totalWidth, "pixels", source, `pixels of a line of ${name}`),
    Y: tabled(totalHeight, "count", source, `lines of a frame of ${name}`),
    f: tabled(rate, "frequency", source, `frame rate of ${name}`),
  });
  // The clock is a whole number of hertz; the rate was worked out from it.
  return { ...(restingOn(worked, source) as Known<"frequency">), value: clock };
}

const MODES: readonly CvtMode[] = ["reduced-2", "reduced", "standard"];

/** Blanking a source is set to: one of VESA CVT, or widened to the least clock of a link. */
export type Blanking = CvtMode | "widened";

/** Pixels of a line and lines of a frame, blanking included, as somebody set them. */
export interface RasterTotals {
  readonly width: number;
  readonly height: number;
}

/** Totals as they are set come before any choice of blanking; undefined when neither is of our own making. */
function custom(
  width: number,
  height: number,
  hertz: number,
  only?: Blanking,
  totals?: RasterTotals,
): Timing | undefined {
  if (totals) return withTotals(width, height, hertz, totals);
  return only === "widened" ? widened(width, height, hertz) : undefined;
}

/**
 * Timings a source may choose for a raster at a rate in Hz: the standard one where CTA-861 has it, else the
 * coordinated ones, least blanking first. A mode that would round the width is left out.
 * `only` is the blanking its source is set to, `totals` are pixels and lines as they are set, blanking included. Empty
 * for a raster that cannot be timed at all, or not with these totals.
 */
export function timingsOf(
  width: number,
  height: number,
  hertz: number,
  only?: Blanking,
  totals?: RasterTotals,
): readonly Timing[] {
  if (totals || only === "widened") {
    const timing = custom(width, height, hertz, only, totals);
    return timing ? [timing] : [];
  }
  const standard = only === undefined || only === "standard" ? ctaTiming(width, height, hertz) : undefined;
  if (standard) return [standard];
  if (!canBeTimed(width, height, hertz)) return [];
  return (only ? [only] : MODES)
    .map((mode) => cvt(width, height, hertz, mode))
    .filter((timing) => timing.width === width);
}
