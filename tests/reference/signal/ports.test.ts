import {
  activeRate,
  counted,
  frameCost,
  given,
  missing,
  panelsPerPort,
  payloadEfficiency,
  portBound,
  portCapacity,
} from "@plumbmark/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const PAY = 1500 / 1538;

// rate in Gb/s, bits, then line / pay at 25, 30, 50, 60 and 120 Hz.
const bounds: readonly (readonly [number, number, readonly (readonly [number, number, number])[]])[] = [
  [
    1,
    24,
    [
      [25, 1_666_666, 1_625_487],
      [30, 1_388_888, 1_354_573],
      [50, 833_333, 812_743],
      [60, 694_444, 677_286],
      [120, 347_222, 338_643],
    ],
  ],
  [
    1,
    30,
    [
      [25, 1_333_333, 1_300_390],
      [30, 1_111_111, 1_083_658],
      [50, 666_666, 650_195],
      [60, 555_555, 541_829],
      [120, 277_777, 270_914],
    ],
  ],
  [
    1,
    36,
    [
      [25, 1_111_111, 1_083_658],
      [30, 925_925, 903_048],
      [50, 555_555, 541_829],
      [60, 462_962, 451_524],
      [120, 231_481, 225_762],
    ],
  ],
  [
    2.5,
    24,
    [
      [25, 4_166_666, 4_063_719],
      [30, 3_472_222, 3_386_432],
      [50, 2_083_333, 2_031_859],
      [60, 1_736_111, 1_693_216],
      [120, 868_055, 846_608],
    ],
  ],
  [
    5,
    24,
    [
      [25, 8_333_333, 8_127_438],
      [30, 6_944_444, 6_772_865],
      [50, 4_166_666, 4_063_719],
      [60, 3_472_222, 3_386_432],
      [120, 1_736_111, 1_693_216],
    ],
  ],
  [
    5,
    30,
    [
      [25, 6_666_666, 6_501_950],
      [30, 5_555_555, 5_418_292],
      [50, 3_333_333, 3_250_975],
      [60, 2_777_777, 2_709_146],
      [120, 1_388_888, 1_354_573],
    ],
  ],
  [
    10,
    24,
    [
      [25, 16_666_666, 16_254_876],
      [30, 13_888_888, 13_545_730],
      [50, 8_333_333, 8_127_438],
      [60, 6_944_444, 6_772_865],
      [120, 3_472_222, 3_386_432],
    ],
  ],
  [
    10,
    30,
    [
      [25, 13_333_333, 13_003_901],
      [30, 11_111_111, 10_836_584],
      [50, 6_666_666, 6_501_950],
      [60, 5_555_555, 5_418_292],
      [120, 2_777_777, 2_709_146],
    ],
  ],
];

describe("pixels a link can carry", () => {
  for (const [gigabits, b, row] of bounds)
    for (const [f, line, pay] of row)
      reference({
        name: `${gigabits} Gb/s, ${b} bit, ${f} Hz: whole rate, payload`,
        source: "IEEE 802.3 framing, floor(rate ÷ (bits × Hz))",
        basis: "arithmetic",
        got: () => [1, PAY].map((η) => portBound.compute({ r: gigabits * 1e9, η, b, f })),
        printed: [line, pay],
        within: 0,
      });
});

describe("frame overhead", () => {
  for (const [name, useful, tagged, percent, source] of [
    ["full frame", 1500, false, 97.53, "wiki.creatica.org"],
    ["tagged frame", 1500, true, 97.28, "wiki.creatica.org"],
    ["TCP over IPv4", 1460, false, 94.9285, "wiki.td-er.nl, Ethernet payload datarates"],
    ["TCP over IPv4 with timestamps", 1448, false, 94.1482, "wiki.td-er.nl, Ethernet payload datarates"],
    ["UDP over IPv4", 1472, false, 95.7087, "wiki.td-er.nl, Ethernet payload datarates"],
  ] as const)
    reference({
      name,
      source,
      basis: "published",
      got: () => 100 * payloadEfficiency.compute({ p: useful, c: frameCost(1500, tagged) }),
      printed: percent,
      within: percent > 97 ? 0.005 : 0.00005,
      because: "half a unit in the last printed digit",
    });
  reference({
    name: "cost of a full frame",
    source: "IEEE 802.3 framing: 8 + 14 + 1500 + 4 + 12",
    basis: "published",
    got: () => frameCost(1500),
    printed: 1538,
    within: 0,
  });
  reference({
    name: "frames a second at 1 Gb/s",
    source: "IEEE 802.3 framing, printed 81,274",
    basis: "published",
    got: () => 1e9 / (frameCost(1500) * 8),
    printed: 81_274,
    within: 1,
    because: "printed to a whole frame",
  });
  test("leaving out the gap would make 95.67 % of the 94.93 %", () => {
    expect(100 * payloadEfficiency.compute({ p: 1460, c: frameCost(1500) })).not.toBeCloseTo(95.67, 1);
  });
});

describe("the maker's figure at other rates and depths", () => {
  for (const [b, f, pixels] of [
    [24, 60, 512_000],
    [30, 60, 409_600],
    [24, 50, 614_400],
    [24, 30, 1_024_000],
  ] as const)
    reference({
      name: `512 000 at ${f} Hz, ${b} bit`,
      source: "capacity ∝ 1 ÷ (bits × Hz)",
      basis: "arithmetic",
      got: () => portCapacity.compute({ n: 512_000, b0: 24, f0: 60, b, f }),
      printed: pixels,
      within: 0,
    });
  test("twice the frame rate halves a port, but for the floor", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e7 }),
        fc.integer({ min: 1, max: 120 }),
        fc.constantFrom(24, 30, 36),
        (n, f, b) => {
          const once = portCapacity.compute({ n, b0: 24, f0: 60, b, f });
          const twice = portCapacity.compute({ n, b0: 24, f0: 60, b, f: 2 * f });
          expect(once - 2 * twice).toBeGreaterThanOrEqual(0);
          expect(once - 2 * twice).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
  test("a port whose figure is not written down has no capacity, not zero", () => {
    const gap = { path: "processor-6.port-pixels", what: "pixels of a port" };
    const capacity = portCapacity.of({
      n: missing("pixels", gap),
      b0: given(24, "colour-depth"),
      f0: given(60, "frequency"),
      b: given(24, "colour-depth"),
      f: given(60, "frequency"),
    });
    expect(capacity).toEqual({ known: false, kind: "pixels", gaps: [gap] });
  });
});

describe("tiles of 500 mm on a port", () => {
  const limits = [694_444, 677_286, 512_000, 345_600];
  for (const [side, ...panels] of [
    [120, 48, 47, 35, 24],
    [160, 27, 26, 20, 13],
    [176, 22, 21, 16, 11],
    [192, 18, 18, 13, 9],
    [256, 10, 10, 7, 5],
  ] as const)
    reference({
      name: `${side} × ${side} pixels`,
      source: "floor(limit ÷ pixels of a tile)",
      basis: "arithmetic",
      got: () => limits.map((n) => panelsPerPort.compute({ n, x: side, y: side })),
      printed: panels,
      within: 0,
    });
});

describe("rate of the visible pixels at 24 bit, 60 Hz", () => {
  for (const [width, height, megabits] of [
    [768, 128, 141.558],
    [1008, 168, 243.855],
    [3072, 160, 707.789],
    [1920, 1080, 2985.984],
    [3840, 2160, 11_943.936],
  ] as const)
    reference({
      name: `${width} × ${height}`,
      source: "pixels × bits × Hz",
      basis: "arithmetic",
      got: () => activeRate.compute({ n: width * height, b: 24, f: 60 }) / 1e6,
      printed: megabits,
      within: 0.0005,
      because: "three decimals",
    });
  for (const [limit, ports] of [
    [677_286, 4],
    [512_000, 5],
    [694_444, 3],
  ] as const)
    reference({
      name: `ports of ${limit} for 1920 × 1080`,
      source: "ceil(2 073 600 ÷ limit)",
      basis: "arithmetic",
      got: () => Math.ceil(2_073_600 / limit),
      printed: ports,
      within: 0,
    });
});

test("the shown working of a port can be redone by hand", () => {
  const value = panelsPerPort.of({
    n: given(512_000, "pixels"),
    x: counted(160, "x", "pixels"),
    y: counted(160, "y", "pixels"),
  });
  expect(value.known && value.value).toBe(20);
});
