import {
  asymmetryMultiplier,
  clipChart,
  designFactorOptions,
  distanceMultiplier,
  headRoom,
  horizontalMultiplier,
  loadConstant,
  peopleNeeded,
  recommendedWeight,
  sections,
  slingColours,
  slingModes,
  terminations,
  tubeProperties,
  verticalMultiplier,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

const INCH = 0.0254;
const POUND = 0.45359237;
const of = (id: string) => {
  const section = sections.get(id);
  if (!section) throw new Error(`there is no ${id}`);
  return section;
};

describe("clips", () => {
  const charts = "clip makers' charts; WorkSafeNB";
  for (const [what, key, printed] of [
    ["count", "clips", [2, 2, 2, 2, 2, 2, 3]],
    ["turn-back, in", "turnBack", [3.75, 3.75, 4.75, 5.25, 6.5, 7, 11.5]],
    ["torque, lb·ft", "torque", [4.5, 7.5, 15, 30, 45, 65, 65]],
  ] as const)
    reference({
      name: `${what}, 1/8 to 1/2 in rope`,
      source: charts,
      basis: "published",
      got: () => clipChart.map((row) => row[key]),
      printed,
    });
});

describe("slings", () => {
  reference({
    name: "colours: violet, green, yellow, grey, red, brown, blue in tonnes",
    source: "EN 1492-1/-2",
    basis: "published",
    got: () =>
      (["violet", "green", "yellow", "grey", "red", "brown", "blue"] as const).map((each) => slingColours[each]),
    printed: [1, 2, 3, 4, 5, 6, 8],
  });
  reference({
    name: "straight, choke, parallel basket, two legs to 45° and to 60° from vertical",
    source: "EN 1492-2 / LEEA",
    basis: "published",
    got: () => [
      slingModes.straight,
      slingModes.choke,
      slingModes["basket-parallel"],
      slingModes["two-leg-to-45"],
      slingModes["two-leg-45-to-60"],
    ],
    printed: [1, 0.8, 2, 1.4, 1],
  });
  reference({
    name: "green choked 1.6 t, parallel basket 4 t, two legs at 30° from vertical 2.8 t",
    source: "EN 1492-2 / LEEA",
    basis: "arithmetic",
    got: () =>
      [slingModes.choke, slingModes["basket-parallel"], slingModes["two-leg-to-45"]].map(
        (mode) => slingColours.green * mode,
      ),
    printed: [1.6, 4, 2.8],
    within: 1e-9,
  });
});

describe("terminations and design factors", () => {
  reference({
    name: "hand-tucked splice, stainless; wedge socket; clips: the lower end of a range",
    source: "US Army TM 5-3810-305-10, Table 4, p. 4-36",
    basis: "published",
    got: () => [
      terminations["tucked-splice"].share,
      terminations["tucked-splice-stainless"].share,
      terminations["wedge-socket"].share,
      terminations.clips.share,
    ],
    printed: [0.86, 0.76, 0.75, 0.8],
  });
  reference({
    name: "wire rope carries at most one fifth of its breaking load",
    source: "WAC 296-24-29401",
    basis: "published",
    got: () => designFactorOptions.static?.factor ?? Number.NaN,
    printed: 5,
  });
  reference({
    name: "over people at most half the maker's working load",
    source: "DGUV Information 215-313 s. 2.1, Table 1",
    basis: "published",
    got: () => designFactorOptions["half-wll"]?.wllShare ?? Number.NaN,
    printed: 0.5,
  });
  test("no choice lets hardware carry more than its maker's working load", () => {
    for (const { wllShare } of notEmpty(Object.values(designFactorOptions))) expect(wllShare).toBeLessThanOrEqual(1);
  });
  test("a house factor is what its name says", () => {
    expect([designFactorOptions["house-8"]?.factor, designFactorOptions["house-10"]?.factor]).toEqual([8, 10]);
  });
});

describe("sections", () => {
  const weights = "ASME B36.10M, lb/ft, printed to two places";
  for (const [nps, pounds] of [
    ["1", 1.68],
    ["1.25", 2.27],
    ["1.5", 2.72],
    ["2", 3.65],
    ["2.5", 5.79],
    ["3", 7.58],
  ] as const)
    for (const wall of ["", "-nominal"])
      reference({
        name: `NPS ${nps}${wall}: ${pounds} lb/ft`,
        source: weights,
        basis: "published",
        got: () => (of(`pipe-${nps}-std${wall}`).massPerMetre * 0.3048) / POUND,
        printed: pounds,
        within: 1e-9,
      });
  reference({
    name: "steel of A53 Grade B: 35 ksi and 29,000 ksi",
    source: "ASTM A53; AISC Manual",
    basis: "published",
    got: () => [of("pipe-1.5-std").yield / 6.894757293168, of("pipe-1.5-std").modulus / 6.894757293168],
    printed: [35, 29_000],
    within: 1e-6,
  });
  reference({
    name: "scaffold tube: yield 235 MPa, modulus 210 GPa",
    source: "EN 39; TG20:13",
    basis: "published",
    got: () => ["tube-48.3x4.0", "tube-48.3x3.2"].flatMap((id) => [of(id).yield, of(id).modulus]),
    printed: [235, 210_000, 235, 210_000],
  });
  reference({
    name: "aluminium tube: modulus 70 GPa",
    source: "BS 1139-1.2 data sheet",
    basis: "published",
    got: () => of("tube-al-48.3x4.47").modulus,
    printed: 70_000,
  });
  // A ring's radius of gyration is a quarter of the root of its two diameters squared: geometry.
  reference({
    name: "radius of gyration of 48.3 × 4.0 mm: √(48.3² + 40.3²) ÷ 4",
    source: "geometry of a ring; 1.57 cm in TG20 data sheets (from memory)",
    basis: "arithmetic",
    got: () => tubeProperties(0.0483, 0.004).gyration * 1000,
    printed: 15.726,
    within: 0.0005,
  });
  test("a tube that cannot be is refused: no wall, no diameter, a wall of half the diameter", () => {
    for (const [outside, wall] of [
      [0.05, 0],
      [0, 0.004],
      [0.008, 0.004],
      [-1, 0.004],
      [0.05, -0.004],
      [0.05, 0.03],
    ] as const)
      expect(() => tubeProperties(outside, wall)).toThrow(RangeError);
    expect(() => tubeProperties(0.00801, 0.004)).not.toThrow();
  });
});

describe("the lifting equation at its edges", () => {
  const niosh = "NIOSH 94-110 (rev. September 2021)";
  reference({
    name: "load constant 51 lb and 23 kg",
    source: niosh,
    basis: "published",
    got: () => [loadConstant.us / POUND, loadConstant.metric],
    printed: [51, 23],
    within: 1e-9,
  });
  reference({
    name: "HM at 10, 25 and 26 in",
    source: niosh,
    basis: "published",
    got: () => [10, 25, 26].map((h) => horizontalMultiplier(h * INCH, "us")),
    printed: [1, 0.4, 0],
    within: 1e-9,
  });
  reference({
    name: "HM at 20, 25 and 50 cm: 25 ÷ H, at most 1",
    source: niosh,
    basis: "published",
    got: () => [0.2, 0.25, 0.5].map((h) => horizontalMultiplier(h)),
    printed: [1, 1, 0.5],
    within: 1e-9,
  });
  reference({
    name: "VM at 0, 75, 175 and 176 cm: 1 − 0.003 |V − 75|",
    source: niosh,
    basis: "published",
    got: () => [0, 0.75, 1.75, 1.76].map((v) => verticalMultiplier(v)),
    printed: [0.775, 1, 0.7, 0],
    within: 1e-9,
  });
  reference({
    name: "VM at 70 and 71 in: 1 − 0.0075 × 40",
    source: niosh,
    basis: "memory",
    got: () => [70, 71].map((v) => verticalMultiplier(v * INCH, "us")),
    printed: [0.7, 0],
    within: 1e-9,
  });
  test("below the floor nothing is lifted", () => expect(verticalMultiplier(-0.01)).toBe(0));
  reference({
    name: "DM at 10, 25, 175 and 176 cm: 0.82 + 4.5 ÷ D, at most 1",
    source: niosh,
    basis: "published",
    got: () => [0.1, 0.25, 1.75, 1.76].map((d) => distanceMultiplier(d)),
    printed: [1, 1, 0.8457, 0],
    within: 0.00005,
  });
  reference({
    name: "DM at 60, 70 and 71 in: 0.82 + 1.8 ÷ D",
    source: niosh,
    basis: "memory",
    got: () => [60, 70, 71].map((d) => distanceMultiplier(d * INCH, "us")),
    printed: [0.85, 0.8457, 0],
    within: 0.00005,
  });
  reference({
    name: "AM at 0, 135 and 136°: 1 − 0.0032 A",
    source: niosh,
    basis: "published",
    got: () => [0, 135, 136].map(asymmetryMultiplier),
    printed: [1, 0.568, 0],
    within: 1e-9,
  });
  reference({
    name: "a twist of 90° takes its share off: 51 lb × 0.712",
    source: niosh,
    basis: "arithmetic",
    got: () => recommendedWeight.compute({ LC: 51, HM: 1, VM: 1, DM: 1, AM: 0.712, FM: 1, CM: 1 }),
    printed: 36.312,
    within: 1e-9,
  });
  reference({
    name: "30 kg at 15 kg each: two; 31 kg: three; 5 kg: one; nobody may lift: no number helps",
    source: "an even split, common practice, no source",
    basis: "practice",
    got: () => [peopleNeeded(30, 15), peopleNeeded(31, 15), peopleNeeded(5, 15), peopleNeeded(5, 0)].join(", "),
    printed: "2, 3, 1, ",
  });
});

describe("head room", () => {
  reference({
    name: "80 in in us practice",
    source: "2010 ADA Standards 307.4",
    basis: "published",
    got: () => headRoom.us / INCH,
    printed: 80,
    within: 1e-9,
  });
  reference({
    name: "2.1 m in iec practice",
    source: "common practice, no source",
    basis: "practice",
    got: () => headRoom.iec,
    printed: 2.1,
  });
});
