import {
  asymmetryMultiplier,
  ballastNeeded,
  couplingMultiplier,
  deckPressure,
  distanceMultiplier,
  footLoad,
  headRoom,
  horizontalMultiplier,
  loadConstant,
  notionalMoment,
  overturningFactor,
  peopleNeeded,
  recommendedWeight,
  restoringMoment,
  verticalMultiplier,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const IN = 0.0254;
const MESSE = "trade-fair technical rules, Messe Duesseldorf stand building";
const fair = (h: number): number => notionalMoment.compute({ b: 1, h, c: 4, q1: 125, q2: 63 });

describe("standing faces", () => {
  for (const [h, printed] of [
    [3, 562.5],
    [5, 1283.5],
    [6, 1630],
  ] as const)
    reference({
      name: `push on ${h} m, per metre`,
      source: MESSE,
      basis: "arithmetic",
      printed,
      within: 0.5,
      got: () => fair(h),
    });
  const PSF = 47.88025898;
  reference({
    name: "5 psf on 10 ft: 250 lb-ft per ft",
    source: "IBC 1607.13 (2000–2009)",
    basis: "arithmetic",
    printed: 250,
    within: 0.01,
    got: () => notionalMoment.compute({ b: 0.3048, h: 3.048, c: 3.048, q1: 5 * PSF, q2: 0 }) / 1.3558179483,
  });
  const Mo = notionalMoment.compute({ b: 3, h: 2.5, c: 4, q1: 125, q2: 63 });
  const Mr = restoringMoment.compute({ m: 240, x: 0.6, mb: 0, xb: 1.1 });
  const because = "0.5 %: worked with g = 9.81";
  reference({
    name: "wall 3.0 × 2.5 m: push, resistance, factor",
    source: MESSE,
    basis: "arithmetic",
    printed: [1171.875, 1.205],
    within: 0.006,
    because,
    got: () => [Mo, overturningFactor.compute({ Mr, Mo })],
  });
  reference({
    name: "ballast at 1.10 m",
    source: MESSE,
    basis: "arithmetic",
    printed: 31.99,
    within: 0.16,
    because,
    got: () => ballastNeeded.compute({ γ: 1.5, Mo, Mr, xb: 1.1 }),
  });
  reference({
    name: "with 0.24 kN/m² the factor is 0.628",
    source: "IBC 1607.13 (2000–2009)",
    basis: "arithmetic",
    printed: 0.628,
    within: 0.003,
    because,
    got: () => overturningFactor.compute({ Mr, Mo: notionalMoment.compute({ b: 3, h: 2.5, c: 4, q1: 240, q2: 240 }) }),
  });
  test("the ballast found brings the factor to what was asked", () => {
    const mb = ballastNeeded.compute({ γ: 1.5, Mo, Mr, xb: 1.1 });
    expect(overturningFactor.compute({ Mr: restoringMoment.compute({ m: 240, x: 0.6, mb, xb: 1.1 }), Mo })).toBeCloseTo(
      1.5,
      9,
    );
  });
  reference({
    name: "600 kg on 1.2 × 3.0 m, lb/ft²",
    source: "statics",
    basis: "arithmetic",
    printed: 34.1,
    within: 0.05,
    got: () => deckPressure.compute({ m: 600, A: 3.6 }) / PSF,
  });
  reference({
    name: "four 100 × 100 mm pads, kPa",
    source: "statics",
    basis: "arithmetic",
    printed: 147,
    within: 0.5,
    got: () => deckPressure.compute({ m: 600, A: 0.04 }) / 1000,
  });
  reference({
    name: "a push of 500 N·m puts 250 N more on each of two front feet 1 m apart",
    source: "statics",
    basis: "arithmetic",
    printed: 250,
    within: 1e-9,
    got: () => footLoad.compute({ m: 100, n: 4, Mo: 500, d: 1 }) - footLoad.compute({ m: 100, n: 4, Mo: 0, d: 1 }),
  });
});

describe("lifting", () => {
  const N = "NIOSH 94-110";
  const rwl = (LC: number, HM: number, VM: number, DM: number, FM: number, CM: number): number =>
    recommendedWeight.compute({ LC, HM, VM, DM, AM: 1, FM, CM });
  reference({
    name: "Example 4, origin, printed multipliers",
    source: `${N}, Example 4, pp. 44–46`,
    basis: "published",
    printed: 34.9,
    within: 0.15,
    got: () => rwl(51, 1, 0.94, 0.87, 0.88, 0.95),
  });
  reference({
    name: "Example 4, destination, inputs from memory",
    source: `${N}, Example 4`,
    basis: "memory",
    printed: 15.2,
    within: 0.15,
    because: "the example rounds its multipliers",
    got: () =>
      rwl(
        51,
        horizontalMultiplier(20 * IN, "us"),
        verticalMultiplier(59 * IN, "us"),
        distanceMultiplier(37 * IN, "us"),
        0.88,
        1,
      ),
  });
  reference({
    name: "Example 1, origin",
    source: `${N}, Example 1, pp. 33–37`,
    basis: "memory",
    printed: 16.3,
    within: 0.3,
    because: "the example rounds its multipliers; full precision 16.03",
    got: () =>
      rwl(
        51,
        horizontalMultiplier(23 * IN, "us"),
        verticalMultiplier(15 * IN, "us"),
        distanceMultiplier(48 * IN, "us"),
        1,
        couplingMultiplier("fair", 15 * IN),
      ),
  });
  reference({
    name: "12 kg, H 25, V 55, D 95 cm, fair",
    source: "homeworksource.com",
    basis: "published",
    printed: 15.7,
    within: 0.05,
    got: () =>
      rwl(
        loadConstant.metric,
        horizontalMultiplier(0.25),
        verticalMultiplier(0.55),
        distanceMultiplier(0.95),
        0.88,
        couplingMultiplier("fair", 0.55),
      ),
  });
  reference({
    name: "outside the range nothing is recommended",
    source: N,
    basis: "published",
    printed: [0, 0, 0, 0],
    got: () => [
      horizontalMultiplier(26 * IN),
      verticalMultiplier(1.8),
      asymmetryMultiplier(136),
      distanceMultiplier(1.8),
    ],
  });
  reference({
    name: "coupling, fair, breaks at 75 cm; poor is 0.90",
    source: `${N}, Table 7`,
    basis: "published",
    printed: [0.95, 1, 0.9, 0.9],
    got: () => [
      couplingMultiplier("fair", 0.74),
      couplingMultiplier("fair", 0.75),
      couplingMultiplier("poor", 0.5),
      couplingMultiplier("poor", 1),
    ],
  });
  reference({
    name: "25 kg above the shoulder by a 10 kg filter needs more than one",
    source: "HSE L23 / INDG143 filter",
    basis: "memory",
    printed: 3,
    got: () => peopleNeeded(25, 10) ?? 0,
  });
  test("no limit, no number of people", () => expect(peopleNeeded(25, 0)).toBeUndefined());
});

describe("head room", () => {
  reference({
    name: "80 in, printed 2030 mm",
    source: "ADA 2010 Standards 307.4",
    basis: "published",
    printed: 2.03,
    within: 0.005,
    because: "the millimetres are printed to 10",
    got: () => headRoom.us,
  });
  reference({
    name: "79.9 in is too low",
    source: "ADA 2010 Standards 307.4",
    basis: "published",
    printed: [0, 1],
    got: () => [79.9, 80].map((inches) => (inches * IN >= headRoom.us ? 1 : 0)),
  });
});
