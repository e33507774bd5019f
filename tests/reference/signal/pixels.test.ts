import {
  areNeighbours,
  facePixelsAlong,
  type GridPlace,
  isInside,
  jumperNeeded,
  overlap,
  panelPixels,
  panelsMass,
  pathLength,
  peakUse,
  pitchAgrees,
  pixelPitch,
} from "@plumbmark/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

describe("pitch of a 500 mm panel", () => {
  for (const [pixels, millimetres] of [
    [64, 7.8125],
    [80, 6.25],
    [96, 5.208333],
    [104, 4.807692],
    [112, 4.464286],
    [128, 3.90625],
    [144, 3.472222],
    [168, 2.97619],
    [176, 2.840909],
    [192, 2.604167],
    [208, 2.403846],
    [256, 1.953125],
    [384, 1.302083],
  ] as const)
    reference({
      name: `${pixels} pixels`,
      source: "500 mm ÷ pixels",
      basis: "arithmetic",
      got: () => pixelPitch.compute({ w: 0.5, n: pixels }) * 1000,
      printed: millimetres,
      within: 0.0000005,
      because: "six decimals",
    });
  test("pixels are never derived from a rounded pitch: 2.9 and 2.8 give panels that do not exist", () => {
    for (const [nominal, true_] of [
      [2.9, 168],
      [2.8, 176],
    ] as const) {
      expect(Math.round(500 / nominal)).not.toBe(true_);
      expect(pitchAgrees(pixelPitch.compute({ w: 0.5, n: true_ }), nominal / 1000, 1)).toBe(true);
    }
    expect(pitchAgrees(0.5 / 168, 0.0029, 3)).toBe(false);
    expect(pitchAgrees(0.5 / 168, 0.002976, 3)).toBe(true);
  });
});

for (const [count, side, along] of [
  [6, 168, 1008],
  [6, 128, 768],
  [24, 128, 3072],
] as const)
  reference({
    name: `${count} panels of ${side} pixels`,
    source: "columns × pixels",
    basis: "arithmetic",
    got: () => facePixelsAlong.compute({ k: count, p: side }),
    printed: along,
    within: 0,
  });

const size = { width: 0.5, height: 0.5 };
const inRows = (columns: number, rows: number, serpentine: boolean): GridPlace[] =>
  Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_each, k) => ({
      row,
      column: serpentine && row % 2 === 1 ? columns - 1 - k : k,
    })),
  ).flat();

describe("paths", () => {
  test("the order of cables changes no total, and a serpentine is never longer", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }), (columns, rows) => {
        const plain = inRows(columns, rows, false);
        const snake = inRows(columns, rows, true);
        const totals = (cells: readonly GridPlace[]) => [
          panelPixels.compute({ n: new Set(cells.map((c) => `${c.row},${c.column}`)).size, x: 168, y: 168 }),
          panelsMass.compute({ n: cells.length, m: 7.6 }),
        ];
        expect(totals(snake)).toEqual(totals(plain));
        expect(pathLength(snake, size)).toBeLessThanOrEqual(pathLength(plain, size) + 1e-9);
        // Neighbour to neighbour, every step of a serpentine is one panel long.
        expect(pathLength(snake, size)).toBeCloseTo((columns * rows - 1) * 0.5, 9);
        expect(snake.every((cell, k) => k === 0 || areNeighbours(snake[k - 1] as GridPlace, cell))).toBe(true);
      }),
    );
  });
  test("connectors of a panel that lie apart lengthen or shorten the step", () => {
    const along = [
      { row: 0, column: 0 },
      { row: 0, column: 1 },
    ];
    expect(pathLength(along, size, { x: 0.2, y: 0 }, { x: -0.2, y: 0 })).toBeCloseTo(0.1, 9);
  });
  reference({
    name: "jumper over a 3-4-5 triangle",
    source: "Euclid, I.47",
    basis: "arithmetic",
    got: () => jumperNeeded.compute({ dx: 0.3, dy: 0.4, s: 0 }),
    printed: 0.5,
  });
});

describe("placement", () => {
  const one = { x: 0, y: 0, width: 1008, height: 168 };
  const raster = { width: 1920, height: 1080 };
  test("to the last pixel is inside, one more is not", () => {
    expect(isInside({ ...one, x: 912, y: 912 }, raster)).toBe(true);
    expect(isInside({ ...one, x: 913, y: 912 }, raster)).toBe(false);
    expect(isInside({ ...one, x: -1 }, raster)).toBe(false);
  });
  test("faces side by side do not overlap; a pixel closer they share a column", () => {
    expect(overlap(one, { ...one, x: 1008 })).toBeUndefined();
    expect(overlap(one, { ...one, x: 1007 })).toEqual({ x: 1007, y: 0, width: 1, height: 168 });
  });
});

describe("use of a lot by day", () => {
  const days = Array.from({ length: 28 }, (_, k) => `2027-02-${String(k + 1).padStart(2, "0")}`);
  const booking = fc
    .tuple(fc.nat(27), fc.nat(27), fc.integer({ min: 1, max: 20 }), fc.boolean())
    .map(([a, b, count, stays]) => ({
      lot: "lot",
      build: "b",
      count,
      from: days[Math.min(a, b)] as string,
      ...(stays ? {} : { to: days[Math.max(a, b)] as string }),
    }));
  test("the sweep finds what counting day by day finds", () => {
    fc.assert(
      fc.property(fc.array(booking, { minLength: 1, maxLength: 12 }), (bookings) => {
        const daily = days.map((day) =>
          bookings
            .filter((each) => each.from <= day && (each.to ?? "9999") >= day)
            .reduce((sum, each) => sum + each.count, 0),
        );
        const peak = peakUse(bookings)[0];
        expect(peak?.count).toBe(Math.max(...daily));
        expect(peak?.day).toBe(days[daily.indexOf(Math.max(...daily))]);
        expect(peak?.bookings.reduce((sum, each) => sum + each.count, 0)).toBe(peak?.count);
      }),
    );
  });
  test("both days of a stay count: out on the day the other comes back needs both", () => {
    const stay = { lot: "a", build: "one", count: 6, from: "2027-03-05", to: "2027-03-08" };
    expect(peakUse([stay, { ...stay, from: "2027-03-08", to: "2027-03-09" }])[0]?.count).toBe(12);
    expect(peakUse([stay, { ...stay, from: "2027-03-09", to: "2027-03-09" }])[0]?.count).toBe(6);
  });
  test("a day that is none is refused", () => {
    for (const from of ["2027-02-30", "tomorrow", "2027-3-1"])
      expect(() => peakUse([{ lot: "a", build: "b", count: 1, from }])).toThrow();
  });
});
