import { awgArea, fromKept, type Kind, kinds, readPair, readQuantity, toKept, units } from "@plumbmark/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

const IN = 0.0254;
const LB = 0.45359237;

const written: readonly (readonly [string, Kind, number])[] = [
  ["11 ft", "length", 132 * IN],
  ["10 ft 6 in", "length", 126 * IN],
  ["14' 6\"", "length", 174 * IN],
  ["14′ 6″", "length", 174 * IN],
  ["3/8 in", "length", 0.375 * IN],
  ["1-1/2 in", "length", 1.5 * IN],
  ["1 1/2 in", "length", 1.5 * IN],
  ["2.9 mm", "length", 0.0029],
  ["186 lb", "mass", 186 * LB],
  ["7.6 kg", "mass", 7.6],
  ["20 A", "current", 20],
  ["3.5 mA", "current", 0.0035],
  ["120 V", "voltage", 120],
  ["130 W", "power", 130],
  ["140 VA", "apparent-power", 140],
  ["750 cd/m2", "luminance", 750],
  ["750 nit", "luminance", 750],
  ["60 Hz", "frequency", 60],
  ["12 AWG", "conductor", awgArea(12)],
  ["2.5 mm2", "conductor", 2.5],
  ["70 %", "ratio", 0.7],
  // 125 × 47.880258980 N/m², UCUM 2.2
  ["125 lb/ft2", "areal-load", 5985.0323725],
  ["30 deg", "angle", 30],
  ["1 Gb/s", "data-rate", 1e9],
];

describe("quantities as people write them", () => {
  for (const [text, kind, kept] of written)
    reference({
      name: `\`${text}\``,
      source: "inch, pound (1959); SI; UCUM 2.2",
      basis: "arithmetic",
      got: () => {
        const reading = readQuantity(text, [kind]);
        return reading.ok ? reading.quantity.value : Number.NaN;
      },
      printed: kept,
      within: Math.abs(kept) * 1e-9,
    });
});

describe("what is refused", () => {
  for (const [text, wanted] of [
    ["12", "length"],
    ["12 kg", "force"],
    ["12 lb", "force"],
    ["12 W", "apparent-power"],
    ["12 VA", "power"],
    ["12 lx", "luminance"],
    ["12 AWG", "length"],
    ["12 mm", "conductor"],
    ["6 in 10 ft", "length"],
    ["1/0 in", "length"],
    ["", "length"],
    ["ten ft", "length"],
    ["11 ft x", "length"],
  ] as const)
    test(`\`${text}\` is not ${kinds[wanted].name}`, () => {
      const reading = readQuantity(text, [wanted]);
      expect(reading.ok).toBe(false);
      if (!reading.ok) expect(reading.allowed).toContain(kinds[wanted].name);
    });
  test("no text throws or reads as something not finite", () => {
    const all = Object.keys(kinds) as Kind[];
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 90 }), fc.constantFrom(...all), (text, kind) => {
        const reading = readQuantity(text, [kind]);
        if (reading.ok) expect(Number.isFinite(reading.quantity.value)).toBe(true);
      }),
    );
  });
});

describe("pairs", () => {
  for (const [text, kind, pair] of [
    ["500 mm x 500 mm", "length", [0.5, 0.5]],
    ["500 x 250 mm", "length", [0.5, 0.25]],
    ["3 m × 1 m", "length", [3, 1]],
    ["168 x 168", "pixels", [168, 168]],
    ["1920 x 1080", "pixels", [1920, 1080]],
  ] as const)
    test(`\`${text}\``, () => {
      const reading = readPair(text, [kind]);
      expect(reading.ok && reading.pair.map((each) => each.value)).toEqual(pair);
    });
  test("three values are no pair", () => expect(readPair("1 x 2 x 3", ["pixels"]).ok).toBe(false));
});

test("every unit is read back as it is printed, and as every spelling of it", () => {
  for (const unit of notEmpty(units))
    for (const name of [unit.print, ...unit.spellings]) {
      if (name === "") continue;
      const reading = readQuantity(`3 ${name}`, [unit.kind]);
      expect(reading.ok, `3 ${name} as ${unit.kind}`).toBe(true);
      if (reading.ok) expect(reading.quantity.value).toBeCloseTo(toKept(3, unit), 9);
      expect(fromKept(toKept(3, unit), unit)).toBeCloseTo(3, 9);
    }
});
