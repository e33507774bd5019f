import {
  CORD_LEAKAGE,
  classA,
  classATime,
  coolingTons,
  curveRides,
  given,
  heat,
  type Known,
  LEAKAGE_SHARE,
  leakageAllowed,
  legCurrents,
  legImbalance,
  loadCurrent,
  phasorDifference,
  printer,
  RESIDUAL_MOST,
  residualDevice,
  TRIP_CURVES,
  type TripCurve,
  threePhaseCurrent,
  wattsToBtu,
} from "@plumbmark/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const legs = (AB: number, BC: number, CA: number): readonly number[] => {
  const { A, B, C } = legCurrents({ AB: given(AB, "current"), BC: given(BC, "current"), CA: given(CA, "current") });
  return [A, B, C].map((each) => (each as Known).value);
};

describe("line-to-line loads on three phase", () => {
  reference({
    name: "6-E1: 105, 33, 33 A",
    source: "industrialmonitordirect.com, Delta unbalanced load current",
    basis: "published",
    got: () => legs(105, 33, 33),
    printed: [124.82, 124.82, 57.16],
    within: 0.05,
  });
  const wye = "industrialmonitordirect.com, 3-phase wye leg currents from line-to-line loads";
  reference({
    name: "6-E2: three equal 14 A",
    source: wye,
    basis: "published",
    got: () => legs(14, 14, 14),
    printed: [24.25, 24.25, 24.25],
    within: 0.01,
  });
  reference({
    name: "6-E2: 8.74 kVA is 24.25 A a line",
    source: wye,
    basis: "published",
    got: () => threePhaseCurrent.compute({ S: 8740, V: 208 }),
    printed: 24.25,
    within: 0.02,
    because: "8.74 kVA is rounded to 5 VA, 24.25 A to 0.005 A",
  });
  reference({
    name: "6-E3: 44 A at 90° less 22 A at −120°",
    source: "Alexander & Sadiku, Fundamentals of Electric Circuits, 3rd ed., Practice Problem 12.10",
    basis: "published",
    got: () => {
      const { amperes, degrees } = phasorDifference({ amperes: 44, degrees: 90 }, { amperes: 22, degrees: -120 });
      return [amperes, degrees];
    },
    printed: [64.005, 80.104],
    within: 0.01,
  });
  reference({
    name: "6-D1: 12, 14, 16 A (a page in print adds phasors it should subtract)",
    source: "formula",
    basis: "arithmetic",
    got: () => legs(12, 14, 16),
    printed: [24.331, 22.539, 26],
    within: 0.001,
  });
  reference({
    name: "6-D2: 16 A on A-B and C-A",
    source: "formula",
    basis: "arithmetic",
    got: () => legs(16, 0, 16),
    printed: [27.713, 16, 16],
    within: 0.001,
  });
  reference({
    name: "one load only: its two lines carry it, the third nothing",
    source: "formula",
    basis: "arithmetic",
    got: () => legs(16, 0, 0),
    printed: [16, 16, 0],
  });
  const mixed = "industrialmonitordirect.com, mixed connections";
  reference({
    name: "6-E4: 100 W at 208 V line to line",
    source: mixed,
    basis: "published",
    got: () => loadCurrent.compute({ S: 100, V: 208 }),
    printed: 0.481,
    within: 0.0005,
  });
  reference({
    name: "6-E4: 100 W balanced",
    source: mixed,
    basis: "published",
    got: () => threePhaseCurrent.compute({ S: 100, V: 208 }),
    printed: 0.277,
    within: 0.001,
    because: "printed cut, not rounded: 0.2776",
  });
  test("a vector sum is never above the plain sum, nor below the larger load", () => {
    const load = fc.double({ min: 0, max: 400, noNaN: true });
    fc.assert(
      fc.property(load, load, load, (AB, BC, CA) => {
        const [A, B, C] = legs(AB, BC, CA) as [number, number, number];
        for (const [leg, one, two] of [
          [A, AB, CA],
          [B, BC, AB],
          [C, CA, BC],
        ] as const) {
          expect(leg).toBeLessThanOrEqual(one + two + 1e-9);
          expect(leg + 1e-9).toBeGreaterThanOrEqual(Math.max(one, two));
        }
      }),
    );
  });
  test("a missing load leaves its own two legs missing, not the third", () => {
    const unknown = { known: false, kind: "current", gaps: [{ path: "p", what: "maximum power" }] } as const;
    const { A, B, C } = legCurrents({ AB: unknown, BC: given(5, "current"), CA: given(5, "current") });
    expect([A.known, B.known, C.known]).toEqual([false, false, true]);
  });
  test("legs without load are balanced", () => expect(legImbalance.compute({ I: [0, 0, 0] })).toBe(0));
});

describe("heat", () => {
  const nist = "NIST SP 811 App. B.8";
  reference({
    name: "1 W",
    source: nist,
    basis: "published",
    got: () => wattsToBtu(1),
    printed: 3.4121,
    within: 0.0001,
  });
  reference({
    name: "one ton is 3516.853 W",
    source: nist,
    basis: "published",
    got: () => coolingTons.compute({ Q: 3516.853 }),
    printed: 1,
    within: 0.01 / 3516.853,
  });
  reference({
    name: "12 500 W, in Btu/h and tons",
    source: "virtualremote.net",
    basis: "published",
    got: () => [wattsToBtu(12500) / 42000, coolingTons.compute({ Q: 12500 }) / 3.5],
    printed: [1, 1],
    within: 0.02,
    because: "rounded by them",
  });
  reference({
    name: "754 W",
    source: "virtualremote.net (3600 ÷ 1054)",
    basis: "published",
    got: () => wattsToBtu(754),
    printed: 2577,
    within: 2577 * 0.002,
  });
  reference({
    name: "10 000 Btu/h in tons",
    source: "pustudy.com",
    basis: "published",
    got: () => coolingTons.compute({ Q: 10000 / wattsToBtu(1) }),
    printed: 0.83333,
    within: 0.000005,
  });
});

describe("working of heat", () => {
  const shown = (system: "us" | "metric") => {
    const value = heat.of({ P: [given(500, "power"), given(254, "power")] });
    return value.known && value.origin.from === "step" ? value.origin.step.show(printer(system)) : "";
  };
  test("is in the units of its result", () => {
    expect(shown("us")).toBe("(500 W + 254 W) × 3.412 BTU/h per W");
    expect(shown("metric")).toBe("500 W + 254 W");
  });
});

describe("leakage", () => {
  const ul = "UL 943";
  reference({
    name: "Class A trip time at 6, 30 and 264 mA",
    source: ul,
    basis: "published",
    got: () =>
      [6, 30, 264]
        .map((each) => classATime(each) ?? 0)
        .map((each, index) => each / ([5.59, 0.56, 0.025][index] as number)),
    printed: [1, 1, 1],
    within: 0.005,
  });
  for (const [milliamperes, printed] of [
    [3.9, "holds"],
    [4, "may trip"],
    [5.9, "may trip"],
    [6, "trips"],
    [7, "trips"],
  ] as const)
    reference({
      name: `Class A at ${milliamperes} mA`,
      source: ul,
      basis: "published",
      got: () => classA(milliamperes / 1000),
      printed,
    });
  const iec = "IEC 60364-5-53 531.3.2";
  reference({
    name: "30 % of 30 and of 300 mA",
    source: iec,
    basis: "published",
    got: () => [0.03, 0.3].map((Id) => leakageAllowed.compute({ Id, share: LEAKAGE_SHARE })),
    printed: [0.009, 0.09],
    within: 1e-12,
  });
  reference({
    name: "25 % of 30 mA, the stricter older guidance",
    source: "ECA fact sheet 02 (17th ed.)",
    basis: "published",
    got: () => leakageAllowed.compute({ Id: 0.03, share: 0.25 }),
    printed: 0.0075,
    within: 1e-12,
  });
  reference({
    name: "pieces of 3.5 mA on a 30 mA device",
    source: iec,
    basis: "arithmetic",
    got: () => Math.floor(leakageAllowed.compute({ Id: 0.03, share: LEAKAGE_SHARE }) / CORD_LEAKAGE),
    printed: 2,
  });
  for (const [milliamperes, printed] of [
    [14.9, "holds"],
    [15, "may trip"],
    [30, "trips"],
  ] as const)
    reference({
      name: `30 mA device at ${milliamperes} mA`,
      source: "residual-device product standard (half of the rating)",
      basis: "published",
      got: () => residualDevice(milliamperes / 1000, 0.03),
      printed,
    });
});

describe("additional protection of people", () => {
  reference({
    name: "a residual device trips at 30 mA at most",
    source: "BS 7671:2018, 415.1.1",
    basis: "published",
    got: () => RESIDUAL_MOST * 1000,
    printed: 30,
  });
});

describe("breakers at switch-on", () => {
  reference({
    name: "least of the bands B 3 to 5, C 5 to 10, D 10 to 20 times the rating",
    source: "IEC 60898-1 (filipinoengineer.com, January 2024)",
    basis: "published",
    got: () => Object.values(TRIP_CURVES),
    printed: [3, 5, 10],
  });
  const ridden = (rating: number, curve: TripCurve): number =>
    (curveRides(given(rating, "current"), curve) as Known).value;
  // E-51: √2 × the least multiple × the rating, two digits after the point.
  for (const [rating, ...printed] of [
    [10, 42.43, 70.71, 141.42],
    [13, 55.15, 91.92, 183.85],
    [16, 67.88, 113.14, 226.27],
    [20, 84.85, 141.42, 282.84],
    [32, 135.76, 226.27, 452.55],
  ] as const)
    reference({
      name: `peak a breaker of ${rating} A and curve B, C, D rides through`,
      source: "IEC 60898-1, least multiples 3, 5 and 10 in r.m.s., × √2",
      basis: "arithmetic",
      got: () => (["B", "C", "D"] as const).map((curve) => ridden(rating, curve)),
      printed,
      within: 0.005,
    });
  // E-52: holding a peak against the r.m.s. figure would let only 1, 2 and 5 tiles on 16 A, 2, 3 and 6 on 20 A.
  for (const [rating, ...printed] of [
    [16, 2, 3, 7],
    [20, 2, 4, 9],
  ] as const)
    reference({
      name: `tiles of 30 A peak on ${rating} A of curve B, C, D`,
      source: "E-51 ÷ 30 A, whole tiles",
      basis: "arithmetic",
      got: () => (["B", "C", "D"] as const).map((curve) => Math.floor(ridden(rating, curve) / 30)),
      printed,
    });
});
