import { rateOf } from "./timing.js";

/** Frame rates SMPTE lists, in Hz; those of 24, 30 and 60 also divided by 1.001. */
export const sdiRates = [24, 25, 30, 50, 60] as const;

/** Least link rate in bit/s by raster, for rates up to 30 Hz and above. */
export const sdiRasters = [
  { width: 1280, height: 720, slow: 1.485e9, fast: 1.485e9, source: "smpte-st-296" },
  { width: 1920, height: 1080, slow: 1.485e9, fast: 2.97e9, source: "smpte-st-274" },
  { width: 3840, height: 2160, slow: 5.94e9, fast: 11.88e9, source: "smpte-st-2036" },
  { width: 4096, height: 2160, slow: 5.94e9, fast: 11.88e9, source: "smpte-st-2048" },
] as const;

/**
 * Least SDI rate in bit/s that carries a progressive raster at a rate in Hz, for 10 bit 4:2:2; undefined when SMPTE
 * lists no such raster. 4:4:4 or 12 bit needs twice that. Interlaced SD is left out: an LED raster is progressive.
 */
export function sdiRate(width: number, height: number, hertz: number): number | undefined {
  const raster = sdiRasters.find((each) => each.width === width && each.height === height);
  const { over, under } = rateOf(hertz);
  const nominal = under === 1001 ? over / 1000 : under === 1 ? over : 0;
  const listed = sdiRates.some((each) => each === nominal && (under === 1 || each % 6 === 0));
  if (!raster || !listed) return undefined;
  return nominal > 30 ? raster.fast : raster.slow;
}

/** Gross SDI rate in bit/s of a raster with its blanking: two 10-bit words a pixel. */
export const sdiGross = (totalWidth: number, totalHeight: number, frames: number): number =>
  totalWidth * totalHeight * frames * 20;
