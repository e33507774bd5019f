import { carries, cvt, links, timingsOf, widened, withTotals } from "@plumbmark/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const totals = (width: number, height: number, hertz: number): readonly number[] => {
  const timing = widened(width, height, hertz);
  return timing ? [timing.totalWidth, timing.totalHeight, timing.clock] : [];
};

describe("widened blanking: one choice of totals", () => {
  // D-10 to D-14: least clock in 10 kHz at or over the floor whose frame divides; worked out by a search of its own.
  for (const [width, height, hertz, ...printed] of [
    [960, 160, 60, 1112, 375, 25_020_000],
    [960, 160, 50, 1640, 305, 25_010_000],
    [720, 120, 60, 1112, 375, 25_020_000],
    [720, 120, 50, 1000, 500, 25_000_000],
    [512, 256, 60, 1112, 375, 25_020_000],
  ] as const)
    reference({
      name: `${width} × ${height} at ${hertz} Hz`,
      source:
        "DVI 1.0 floor of 25 MHz; detailed timing in steps of 10 kHz (linux drm_edid.h): H × V × f in whole steps",
      basis: "arithmetic",
      got: () => totals(width, height, hertz),
      printed,
    });
  for (const [width, height, hertz, H, V] of [
    [960, 160, 60, 1040, 175],
    [960, 160, 50, 1040, 175],
    [720, 120, 60, 800, 135],
    [720, 120, 50, 800, 135],
    [512, 256, 60, 592, 271],
    [512, 256, 50, 592, 271],
  ] as const)
    reference({
      name: `${width} × ${height} at ${hertz} Hz without it: totals of CVT reduced blanking 2`,
      source: "VESA CVT 1.2: 80 pixels across, at least 460 µs and 15 lines down",
      basis: "arithmetic",
      got: () => {
        const { totalWidth, totalHeight } = cvt(width, height, hertz, "reduced-2");
        return [totalWidth, totalHeight];
      },
      printed: [H, V],
    });
  reference({
    name: "1666 × 250 at 60 Hz is under the floor, 1667 × 250 over it, Hz",
    source: "1666 × 250 × 60, 1667 × 250 × 60",
    basis: "arithmetic",
    got: () => [1666, 1667].map((width) => withTotals(960, 160, 60, { width, height: 250 })?.clock ?? 0),
    printed: [24_990_000, 25_005_000],
  });
  const over = (width: number) =>
    carries(links["hdmi-1.4"], { width: 960, height: 160, rate: 60, depth: 8, totals: { width, height: 250 } });
  test("the first is not carried, the second is", () => {
    expect(over(1666).carried).toBe(false);
    expect(over(1666).sense).toBe("at least");
    expect(over(1667).carried).toBe(true);
  });
  test("widened blanking is carried where reduced blanking is not", () => {
    const picture = { width: 960, height: 160, rate: 60, depth: 8 } as const;
    expect(carries(links.dvi, { ...picture, blanking: "reduced-2" }).carried).toBe(false);
    expect(carries(links.dvi, { ...picture, blanking: "widened" }).carried).toBe(true);
  });
  test("it is no timing of VESA CVT, and is not chosen unless somebody asks for it", () => {
    expect(timingsOf(960, 160, 60).map(({ source }) => source)).not.toContain("detailed-timing");
    expect(timingsOf(960, 160, 60, "widened").map(({ source }) => source)).toEqual(["detailed-timing"]);
  });

  test("totals that leave no blanking, or more than 12 bits of it, are none", () => {
    expect(withTotals(960, 160, 60, { width: 960, height: 300 })).toBeUndefined();
    expect(withTotals(960, 160, 60, { width: 1100, height: 160 })).toBeUndefined();
    expect(withTotals(960, 160, 60, { width: 960 + 4096, height: 300 })).toBeUndefined();
    expect(withTotals(960, 160, 60, { width: 960 + 4095, height: 300 })?.clock).toBe(5055 * 300 * 60);
  });

  /** The same choice by going over every total there is, slowly. */
  function slowly(width: number, height: number, hertz: number): readonly number[] {
    const least = cvt(width, height, hertz, "reduced-2").totalHeight;
    let best: readonly number[] = [];
    for (let lines = least; lines <= height + 4095; lines += 1) {
      if (lines * hertz < 15_000) continue;
      for (let across = Math.ceil((width + 80) / 8) * 8; across <= width + 4095; across += 8) {
        const clock = across * lines * hertz;
        if (clock < 25e6 || clock % 10_000 !== 0) continue;
        if (best[2] !== undefined && clock > best[2]) break;
        if (best[2] === undefined || clock < best[2]) best = [across, lines, clock];
      }
    }
    return best;
  }
  test("nothing better is passed over", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 16, max: 1400 }),
        fc.integer({ min: 16, max: 400 }),
        fc.constantFrom(24, 25, 30, 50, 60),
        (width, height, hertz) => {
          expect(totals(width, height, hertz)).toEqual(slowly(width, height, hertz));
        },
      ),
      { numRuns: 25 },
    );
  });
});
