import { type CvtMode, ctaFormats, ctaTiming, cvt, frameRate, sdiGross } from "@plumbmark/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const PROGRAM = "edid-decode 0.1~git20220315 --cvt (VESA CVT 1.1, 1.2)";

// raster, mode, total width, total height, MHz, Hz as printed.
const printed: readonly (readonly [number, number, CvtMode, number, number, number, number])[] = [
  [640, 480, "standard", 800, 500, 23.75, 59.375],
  [640, 480, "reduced", 800, 494, 23.5, 59.463563],
  [640, 480, "reduced-2", 720, 495, 21.384, 60],
  [1024, 768, "standard", 1328, 798, 63.5, 59.920132],
  [1024, 768, "reduced", 1184, 790, 56, 59.869997],
  [1024, 768, "reduced-2", 1104, 790, 52.329, 59.999312],
  [1280, 800, "standard", 1680, 831, 83.5, 59.810326],
  [1280, 800, "reduced", 1440, 823, 71, 59.909545],
  [1280, 800, "reduced-2", 1360, 823, 67.156, 59.999285],
  [1920, 1080, "standard", 2576, 1120, 173, 59.962844],
  [1920, 1080, "reduced", 2080, 1111, 138.5, 59.933878],
  [1920, 1080, "reduced-2", 2000, 1111, 133.32, 60],
  [2560, 1440, "standard", 3488, 1493, 312.25, 59.960627],
  [2560, 1440, "reduced", 2720, 1481, 241.5, 59.95055],
  [2560, 1440, "reduced-2", 2640, 1481, 234.59, 59.999898],
  [3840, 2160, "standard", 5312, 2237, 712.75, 59.980927],
  [3840, 2160, "reduced", 4000, 2222, 533.25, 59.996625],
  [3840, 2160, "reduced-2", 3920, 2222, 522.614, 59.999954],
  [768, 128, "standard", 960, 148, 7.75, 54.546734],
  [768, 128, "reduced", 928, 148, 8, 58.247903],
  [768, 128, "reduced-2", 848, 143, 7.275, 59.993073],
  [1008, 168, "standard", 1248, 188, 13, 55.407801],
  [1008, 168, "reduced", 1168, 188, 13, 59.202856],
  [1008, 168, "reduced-2", 1088, 183, 11.946, 59.998795],
  [672, 168, "standard", 832, 188, 8.75, 55.940569],
  [672, 168, "reduced", 832, 188, 9.25, 59.137173],
  [672, 168, "reduced-2", 752, 183, 8.256, 59.993024],
  [3072, 160, "standard", 3840, 180, 38.75, 56.061921],
  [3072, 160, "reduced", 3232, 180, 34.75, 59.732536],
  [1920, 540, "standard", 2432, 562, 81.75, 59.811938],
  [1920, 540, "reduced", 2080, 560, 69.75, 59.881525],
  [1920, 540, "reduced-2", 2000, 556, 66.72, 60],
  [2688, 672, "standard", 3472, 699, 145.25, 59.849324],
  [2688, 672, "reduced", 2848, 692, 118, 59.873677],
  [2688, 672, "reduced-2", 2768, 692, 114.927, 59.999812],
];

describe("coordinated video timings at 60 Hz", () => {
  for (const [width, height, mode, totalWidth, totalHeight, megahertz, hertz] of printed) {
    const got = () => cvt(width, height, 60, mode);
    const name = `${width} × ${height} ${mode}`;
    reference({
      name: `${name} totals`,
      source: PROGRAM,
      basis: "published",
      got: () => [got().totalWidth, got().totalHeight],
      printed: [totalWidth, totalHeight],
      within: 0,
    });
    reference({
      name: `${name} clock`,
      source: PROGRAM,
      basis: "published",
      got: () => got().clock / 1e6,
      printed: megahertz,
      within: 0.0005,
      because: "printed to 1 kHz",
    });
    reference({
      name: `${name} rate`,
      source: PROGRAM,
      basis: "published",
      got: () => got().rate,
      printed: hertz,
      within: 0.000001,
      because: "printed to six decimals",
    });
  }
  reference({
    name: "1920 × 1080 slowed",
    source: PROGRAM,
    basis: "published",
    got: () => cvt(1920, 1080, 60, "reduced-2", true).clock / 1e6,
    printed: 133.186,
    within: 0.0005,
    because: "printed to 1 kHz",
  });
  reference({
    name: "1920 × 1080 at 50 Hz, reduced blanking",
    source: PROGRAM,
    basis: "published",
    got: () => [cvt(1920, 1080, 50, "reduced").clock, cvt(1920, 1080, 50, "reduced").rate],
    printed: [115_000_000, 49.989567],
    within: 0.000001,
    because: "printed to six decimals",
  });
});

describe("traps of timings", () => {
  test("a program that rounds otherwise gives 533.00 MHz for 3840 × 2160; the formula of CVT gives 533.25", () => {
    expect(cvt(3840, 2160, 60, "reduced").clock).not.toBe(533_000_000);
    expect(cvt(768, 128, 60, "reduced").clock).not.toBe(7_250_000);
  });
  test("a back porch of 6 lines would give 147 lines for 768 × 128; reference programs use 7", () => {
    expect(cvt(768, 128, 60, "reduced").totalHeight).not.toBe(147);
  });
  reference({
    name: "3072 × 160 in whole hertz, where a floating-point floor prints 33.095 MHz",
    source: "60 × 175 × 3152",
    basis: "arithmetic",
    got: () => [cvt(3072, 160, 60, "reduced-2").clock, cvt(3072, 160, 60, "reduced-2").rate],
    printed: [33_096_000, 60],
    within: 0,
  });
});

describe("CTA-861 formats", () => {
  const rates: Readonly<Record<number, number>> = {
    1: 59.940476,
    3: 59.94006,
    18: 50,
    4: 60,
    19: 50,
    16: 60,
    31: 50,
    34: 30,
    33: 25,
    32: 24,
    63: 120,
    64: 100,
    118: 120,
    117: 100,
    97: 60,
    96: 50,
    95: 30,
    94: 25,
    93: 24,
  };
  for (const [vic, , , totalWidth, totalHeight, kilohertz] of ctaFormats)
    reference({
      name: `format ${vic}`,
      source: "CTA-861, totals × rate = clock",
      basis: "published",
      got: () => frameRate(kilohertz * 1000, totalWidth, totalHeight),
      printed: rates[vic] ?? Number.NaN,
      within: 0.0000005,
      because: "printed to six decimals",
    });
  test("the table is as transcribed: sum of its clocks in kHz", () => {
    expect(ctaFormats).toHaveLength(19);
    // 25 175 + 2 × 27 000 + 5 × 74 250 + 2 × 148 500 + 5 × 297 000 + 2 × 594 000 + 2 × 1 188 000
    expect(ctaFormats.reduce((sum, row) => sum + row[5], 0)).toBe(
      25_175 + 2 * 27_000 + 5 * 74_250 + 2 * 148_500 + 5 * 297_000 + 2 * 594_000 + 2 * 1_188_000,
    );
    for (const [, width, height, totalWidth, totalHeight] of ctaFormats) {
      expect(totalWidth).toBeGreaterThan(width);
      expect(totalHeight).toBeGreaterThan(height);
    }
  });
  // The rows of 3840 × 2160 in the Linux display driver's table of CTA-861-G formats 117 and 118: clock in kHz, totals.
  for (const [hertz, totalWidth] of [
    [100, 5280],
    [120, 4400],
  ] as const)
    reference({
      name: `3840 × 2160 at ${hertz} Hz`,
      source: "CTA-861-G formats 117 and 118, as in the mode table of the Linux kernel",
      basis: "published",
      got: () => {
        const timing = ctaTiming(3840, 2160, hertz);
        return [timing?.clock ?? 0, timing?.totalWidth ?? 0, timing?.totalHeight ?? 0];
      },
      printed: [1_188_000_000, totalWidth, 2250],
    });
  for (const [width, height, megahertz] of [
    [1920, 1080, 148.351648],
    [1280, 720, 74.175824],
    [3840, 2160, 593.406593],
  ] as const)
    reference({
      name: `${width} × ${height} at 59.94 Hz`,
      source: "clock × 1000 ÷ 1001",
      basis: "arithmetic",
      got: () => (ctaTiming(width, height, 59.94)?.clock ?? 0) / 1e6,
      printed: megahertz,
      within: 0.0000005,
    });
  test("a raster that is none of CTA-861 has no timing there", () => {
    expect(ctaTiming(768, 128, 60)).toBeUndefined();
    expect(ctaTiming(1920, 1080, 48)).toBeUndefined();
  });
});

describe("SDI rates", () => {
  for (const [name, x, y, f, rate] of [
    ["SD 525 lines (SMPTE ST 259)", 858, 525, 30_000 / 1001, 270e6],
    ["SD 625 lines (SMPTE ST 259)", 864, 625, 25, 270e6],
    ["1080 at 30 (SMPTE ST 292-1)", 2200, 1125, 30, 1.485e9],
    ["720 at 60 (SMPTE ST 292-1)", 1650, 750, 60, 1.485e9],
    ["1080 at 60 (SMPTE ST 424)", 2200, 1125, 60, 2.97e9],
    ["2160 at 60 (SMPTE ST 2082)", 4400, 2250, 60, 11.88e9],
  ] as const)
    reference({ name, source: name, basis: "published", got: () => sdiGross(x, y, f), printed: rate, within: 1e-3 });
});

test("a timing never has less than its picture, and never runs faster than asked", () => {
  const mode = fc.constantFrom<CvtMode>("standard", "reduced", "reduced-2");
  fc.assert(
    fc.property(
      fc.integer({ min: 64, max: 8192 }),
      fc.integer({ min: 64, max: 4320 }),
      fc.integer({ min: 24, max: 144 }),
      mode,
      (w, h, f, m) => {
        const timing = cvt(w, h, f, m);
        expect(timing.totalWidth).toBeGreaterThan(timing.width);
        expect(timing.totalHeight).toBeGreaterThan(h);
        expect(Number.isInteger(timing.clock)).toBe(true);
        if (m !== "standard") expect(timing.rate).toBeLessThanOrEqual(f + 1e-9);
      },
    ),
  );
});
