import { frameRate, rateOf, type Timing } from "./timing.js";

/** VIC, width, height, total width, total height, clock in kHz: progressive formats of CTA-861. */
export const ctaFormats = [
  [1, 640, 480, 800, 525, 25_175],
  [3, 720, 480, 858, 525, 27_000],
  [18, 720, 576, 864, 625, 27_000],
  [4, 1280, 720, 1650, 750, 74_250],
  [19, 1280, 720, 1980, 750, 74_250],
  [16, 1920, 1080, 2200, 1125, 148_500],
  [31, 1920, 1080, 2640, 1125, 148_500],
  [34, 1920, 1080, 2200, 1125, 74_250],
  [33, 1920, 1080, 2640, 1125, 74_250],
  [32, 1920, 1080, 2750, 1125, 74_250],
  [63, 1920, 1080, 2200, 1125, 297_000],
  [64, 1920, 1080, 2640, 1125, 297_000],
  [118, 3840, 2160, 4400, 2250, 1_188_000],
  [117, 3840, 2160, 5280, 2250, 1_188_000],
  [97, 3840, 2160, 4400, 2250, 594_000],
  [96, 3840, 2160, 5280, 2250, 594_000],
  [95, 3840, 2160, 4400, 2250, 297_000],
  [94, 3840, 2160, 5280, 2250, 297_000],
  [93, 3840, 2160, 5500, 2250, 297_000],
] as const;

/** The CTA-861 timing of a raster at a rate in Hz, its 1000/1001 variant included; undefined when it has none. */
export function ctaTiming(width: number, height: number, hertz: number): Timing | undefined {
  const { over, under } = rateOf(hertz);
  for (const [vic, w, h, totalWidth, totalHeight, kilohertz] of ctaFormats) {
    if (w !== width || h !== height) continue;
    const nominal = frameRate(kilohertz * 1000, totalWidth, totalHeight);
    const whole = Math.round(nominal);
    // 640×480 and 720×480 are already 1000/1001 formats; written as 60 Hz they are meant all the same.
    const own = Math.abs(nominal - hertz) < 0.1 && nominal !== whole;
    const slow = under === 1001 && over / 1000 === whole && nominal === whole;
    if (!own && !slow && nominal !== hertz) continue;
    const clock = slow ? (kilohertz * 1_000_000) / 1001 : kilohertz * 1000;
    const rate = frameRate(clock, totalWidth, totalHeight);
    return { width, height, totalWidth, totalHeight, clock, rate, name: `CTA-861 format ${vic}`, source: "cta-861" };
  }
  return undefined;
}
