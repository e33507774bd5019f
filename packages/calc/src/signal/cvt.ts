import { frameRate, type Rate, rateOf, type Timing, wholeQuotient } from "./timing.js";

export type CvtMode = "standard" | "reduced" | "reduced-2";

/**
 * Least vertical back porch in lines of CVT and reduced blanking 1. The common reference programs disagree
 * (7 against 6 or 3); it matters below about 560 lines. The text of CVT 1.2 was not at hand.
 */
export const LEAST_BACK_PORCH = 7;

export const FRONT_PORCH = 3;
export const CELL = 8;
export const QUARTER_MEGAHERTZ = 250_000;

/** Lines of vertical sync say which shape the picture has. */
function syncLines(width: number, height: number): number {
  const shape = (across: number, down: number): boolean => width * down === height * across;
  if (shape(4, 3)) return 4;
  if (shape(16, 9)) return 5;
  if (shape(16, 10)) return 6;
  if (shape(5, 4) || shape(15, 9)) return 7;
  return 10;
}

type Frame = Pick<Timing, "totalWidth" | "totalHeight" | "clock">;

/** Standard blanking. The line period in µs is kept as the fraction `period / lines`. */
function standard(width: number, height: number, { over, under }: Rate): Frame {
  const period = 1_000_000 * under - 550 * over;
  const lines = over * (height + FRONT_PORCH);
  const sync = syncLines(width, height);
  const behind = Math.max(wholeQuotient([550, lines], [period]) + 1, sync + LEAST_BACK_PORCH);
  // Duty cycle 30 − 300 × period in ms, at least 20 %: blanking ÷ active = duty ÷ (100 − duty).
  const duty = 300 * lines - 3 * period;
  const least = 200 * lines;
  const [blank, rest] = duty < least ? [1, 4] : [duty, 1000 * lines - duty];
  const totalWidth = width + wholeQuotient([width, blank], [rest, 2 * CELL]) * 2 * CELL;
  const clock = wholeQuotient([4, totalWidth, lines], [period]) * QUARTER_MEGAHERTZ;
  return { totalWidth, totalHeight: height + FRONT_PORCH + behind, clock };
}

/** Blank lines that last at least 460 µs. */
const reducedBlank = (height: number, { over, under }: Rate): number =>
  wholeQuotient([460, height, over], [1_000_000 * under - 460 * over]) + 1;

function reduced(width: number, height: number, rate: Rate, version: 1 | 2, slowed: boolean): Frame {
  const least = version === 1 ? FRONT_PORCH + syncLines(width, height) + LEAST_BACK_PORCH : 1 + 8 + 6;
  const totalHeight = height + Math.max(reducedBlank(height, rate), least);
  const totalWidth = width + (version === 1 ? 160 : 80);
  const step = version === 1 ? QUARTER_MEGAHERTZ : 1000;
  const [more, less] = slowed ? [1000, 1001] : [1, 1];
  const clock = wholeQuotient([rate.over, totalWidth, totalHeight, more], [step, rate.under, less]) * step;
  return { totalWidth, totalHeight, clock };
}

const names = { standard: "CVT", reduced: "CVT reduced blanking", "reduced-2": "CVT reduced blanking 2" } as const;

/** Whether the formula means anything for a raster: whole sides of a cell or more, a frame long enough to be blanked. */
export const canBeTimed = (width: number, height: number, hertz: number): boolean =>
  [width, height].every((side) => Number.isInteger(side) && side >= 1 && side <= 65_536) &&
  width >= CELL &&
  hertz >= 1 &&
  hertz <= 1000;

/**
 * VESA coordinated video timing of a raster at a nominal rate in Hz, in whole Hz throughout (a floating-point floor
 * loses a step of the clock). Standard and reduced blanking round the width down to whole cells of 8 pixels.
 * `slowed` gives the 1000/1001 variant of reduced blanking 2. Throws on what `canBeTimed` refuses.
 */
export function cvt(width: number, height: number, hertz: number, mode: CvtMode, slowed = false): Timing {
  if (!canBeTimed(width, height, hertz)) throw new RangeError(`${width} × ${height} at ${hertz} Hz is no raster`);
  const across = mode === "reduced-2" ? width : wholeQuotient([width], [CELL]) * CELL;
  const rate = rateOf(hertz);
  const frame =
    mode === "standard"
      ? standard(across, height, rate)
      : reduced(across, height, rate, mode === "reduced" ? 1 : 2, slowed && mode === "reduced-2");
  return {
    width: across,
    height,
    ...frame,
    rate: frameRate(frame.clock, frame.totalWidth, frame.totalHeight),
    name: names[mode],
    source: mode === "reduced-2" ? "vesa-cvt-1.2" : "vesa-cvt-1.1",
  };
}
