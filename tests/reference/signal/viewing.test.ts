import {
  acuityDistance,
  adaCharacterHeight,
  CHARACTER_ADVANCE,
  californiaCharacterHeight,
  capHeight,
  capPixels,
  characterAngle,
  characterHeight,
  driveLevel,
  given,
  greySteps,
  lineCharacters,
  practiceDistance,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const INCH = 0.0254;
const FOOT = 0.3048;

describe("acuity", () => {
  for (const [millimetres, metres] of [
    [1.953125, 6.714],
    [2.604167, 8.952],
    [2.976, 10.231],
    [3.90625, 13.429],
    [5, 17.189],
  ] as const)
    reference({
      name: `${millimetres} mm`,
      source: "20/20 acuity: pitch ÷ tan(1′)",
      basis: "arithmetic",
      got: () => acuityDistance.compute({ p: millimetres / 1000 }),
      printed: metres,
      within: 0.001,
      because: "three decimals",
    });
  for (const [inches, feet] of [
    [0.0454, 13],
    [0.0681, 19.5],
  ] as const)
    reference({
      name: `pixel of ${inches} in`,
      source: "walkontworopes.blogspot.com, 2009: 100-inch picture",
      basis: "published",
      got: () => acuityDistance.compute({ p: inches * INCH }) / FOOT,
      printed: feet,
      within: 0.05,
      because: "printed to half a foot",
    });
  reference({
    name: "1080 lines on 1500 mm",
    source: "AVIXA V202.01:2016, restated by aetm.org: 4775 mm, the farthest viewer",
    basis: "published",
    got: () => acuityDistance.compute({ p: 1.5 / 1080 }) * 1000,
    printed: 4775,
    within: 0.5,
    because: "printed to a millimetre, with 3438 for 3437.75",
  });
  for (const [lines, heights] of [
    [480, 7.162],
    [1080, 3.183],
    [2160, 1.592],
    [4320, 0.796],
  ] as const)
    reference({
      name: `design viewing distance of ${lines} lines in picture heights`,
      source: "ITU-R BT.500-14, BT.2022: neighbouring pixels subtend 1′",
      basis: "arithmetic",
      got: () => acuityDistance.compute({ p: 1 / lines }),
      printed: heights,
      within: 0.0005,
    });
  reference({
    name: "1 m for each millimetre",
    source: "common practice",
    basis: "practice",
    got: () => practiceDistance.compute({ p: 0.002976, k: 1 }),
    printed: 2.976,
  });
});

describe("character height", () => {
  for (const [metres, minutes, millimetres] of [
    [10, 16, 46.5],
    [10, 20, 58.2],
    [20, 22, 128],
  ] as const)
    reference({
      name: `${metres} m, ${minutes}′`,
      source: "NUREG-0700 rev. 2, 1.3.1-4: 6.283 × D × MA ÷ 21600",
      basis: "arithmetic",
      got: () => characterHeight.compute({ d: metres, a: minutes / 60 }) * 1000,
      printed: millimetres,
      within: 0.05,
      because: "one decimal",
    });
  reference({
    name: "20′ at 500 mm",
    source: "ISO 9241-303, restated: 2.9 mm",
    basis: "published",
    got: () => characterHeight.compute({ d: 0.5, a: 20 / 60 }) * 1000,
    printed: 2.9,
    within: 0.05,
    because: "one decimal",
  });
  for (const [ratio, minutes] of [
    [150, 22.92],
    [200, 17.19],
  ] as const)
    reference({
      name: `1/${ratio} of the distance`,
      source: "10800 ÷ π ÷ ratio (1/200: FAA, abstract 10.1201/b22361-52)",
      basis: "arithmetic",
      got: () => characterAngle.compute({ h: 1, d: ratio }) * 60,
      printed: minutes,
      within: 0.005,
      because: "two decimals",
    });
  reference({
    name: "full height is 1.00, where a printed note has 0.01",
    source: "AVIXA V202.01:2016, restated by aetm.org; its note is a misprint",
    basis: "arithmetic",
    got: () => capHeight.compute({ n: capPixels.compute({ y: 128, l: 1, c: 1 }), p: 0.5 / 128 }),
    printed: 0.5,
  });
});

describe("fixed signs", () => {
  for (const [baseline, feet, inches] of [
    [60, 21, 2.5],
    [60, 10, 1.125],
    [100, 20, 2.625],
    [130, 30, 4.125],
    [130, 50, 6.625],
    [60, 6, 0.625],
  ] as const)
    reference({
      name: `baseline ${baseline} in, ${feet} ft`,
      source: "2010 ADA Standards, Table 703.5.5",
      basis: feet === 21 || feet === 6 ? "published" : "arithmetic",
      got: () => (adaCharacterHeight(baseline * INCH, feet * FOOT) ?? 0) / INCH,
      printed: inches,
      within: 0.001,
    });
  for (const [baseline, feet, inches] of [
    [60, 20, 4],
    [100, 30, 6],
    [130, 40, 8],
  ] as const)
    reference({
      name: `message sign, baseline ${baseline} in, ${feet} ft`,
      source: "California Building Code 2013, 11B-703.8.4",
      basis: "arithmetic",
      got: () => (californiaCharacterHeight(baseline * INCH, feet * FOOT) ?? 0) / INCH,
      printed: inches,
      within: 0.001,
    });
  test("below 40 in the table says nothing", () => expect(adaCharacterHeight(39 * INCH, 3)).toBeUndefined());
});

describe("dimming", () => {
  reference({
    name: "drive for 400 of 800 cd/m², steps of 8 bit",
    source: "half of 2^8",
    basis: "arithmetic",
    got: () => greySteps.compute({ s: driveLevel.compute({ t: 400, L: 800 }), b: 8 }),
    printed: 128,
  });
  test("a target the panel cannot reach leaves no number of steps", () => {
    const drive = driveLevel.of({ t: given(800, "luminance"), L: given(400, "luminance") });
    expect(greySteps.of({ s: drive, b: given(8, "colour-depth") }).known).toBe(false);
  });
});

describe("characters of a line", () => {
  // Advances from the core metrics, weighted by English letter shares (from memory): Helvetica's capitals, mixed case, all W.
  for (const [what, advance, characters] of [
    ["capitals", 0.833, 30],
    ["mixed case", 0.616, 40],
    ["nothing but W", 944 / 718, 19],
  ] as const)
    reference({
      name: `1008 px, capitals of 40 px, ${what}`,
      source: "core font metrics (AFM) of Helvetica: capitals 718, W 944 per 1000; letter shares from memory",
      basis: "arithmetic",
      got: () => lineCharacters.compute({ x: 1008, k: advance, n: 40 }),
      printed: characters,
    });
  test("the usual advance is that of bold sans-serif capitals, 0.842, rounded up", () => {
    expect(CHARACTER_ADVANCE).toBeGreaterThanOrEqual(0.842);
    // ISO 9241-3 recommends characters 0.7 to 0.9 of their height wide.
    expect(CHARACTER_ADVANCE).toBeLessThanOrEqual(0.9);
  });
});
