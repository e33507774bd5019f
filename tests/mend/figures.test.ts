import { counted, type Kind, type Known, tabled } from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { figureAgrees, upToDate } from "../../rules/document/quoted-values/figure.js";

const of = (value: number, kind: Kind): Known => tabled(value, kind, "house", "a value") as Known;

// Exact by definition: 1 in = 25.4 mm, 1 ft = 12 in, 1 lb = 0.45359237 kg (NIST Handbook 44, appendix C).
const INCH = 0.0254;

describe("a quoted figure is brought up to date in the form it is written in", () => {
  test.each([
    ["132 lb", 80 * 0.45359237, "mass", "80 lb"],
    ["6.8 A", 9.123, "current", "9.1 A"],
    ["6.80 A", 9.123, "current", "9.12 A"],
    ["1008 px", 1344, "pixels", "1344 px"],
    ["1,008 px", 11344, "pixels", "11,344 px"],
    ["53 %", 0.6149, "ratio", "61 %"],
    ["0.5", 0.6149, "ratio", "0.6"],
    ["6", 8, "count", "8"],
    ["1.5 m", 2.449, "length", "2.4 m"],
    ["500mm", 0.6004, "length", "600mm"],
    ["13 ft 0 in", 155.6 * INCH, "length", "13 ft 0 in"],
    ["13 ft 2 in", 163.4 * INCH, "length", "13 ft 7 in"],
    ["12 ft 11 in", 155.6 * INCH, "length", "13 ft 0 in"],
    ["13 ft 2.5 in", 163.44 * INCH, "length", "13 ft 7.4 in"],
    ["12 ft 10-3/4 in", 163.27 * INCH, "length", "13 ft 7-1/4 in"],
    ["12 ft 10-3/4 in", 162.5 * INCH, "length", "13 ft 6-1/2 in"],
    ["12 ft 10-3/4 in", 156.06 * INCH, "length", "13 ft 0 in"],
    ["12 ft 10-1/16 in", 163.5 * INCH, "length", "13 ft 7-1/2 in"],
    ["12 ft 10-1/16 in", 163.625 * INCH, "length", "13 ft 7-5/8 in"],
    ["12 ft 10-1/64 in", 163.25 * INCH, "length", "13 ft 7-1/4 in"],
    ["12 ft 10-1/64 in", 163.5 * INCH, "length", "13 ft 7-1/2 in"],
    ["12 ft 10-1/128 in", 163.5 * INCH, "length", "13 ft 7-1/2 in"],
    ["13 ft 2 in", 0, "length", "0 ft 0 in"],
    ["13 ft 2 in", 0.5, "length", "1 ft 8 in"],
    ["-6.8 m", -5.004, "length", "-5.0 m"],
    ["6.8 m", -5.004, "length", "-5.0 m"],
    ["-6.8 m", -0.004, "length", "0.0 m"],
    [`13' 2"`, 163.4 * INCH, "length", `13' 7"`],
  ] as const)("%s of %d %s is %s", (text, value, kind, expected) => {
    expect(upToDate(text, of(value, kind))).toBe(expected);
  });

  test("feet and inches below nothing are left to a person", () => {
    expect(upToDate("13 ft 2 in", of(-0.5, "length"))).toBeUndefined();
  });

  test.each([
    ["186 kg", 186.49, true],
    ["186 kg", 186.52, false],
    ["186 kg", 185.48, false],
    ["186.0 kg", 186.04, true],
    ["186.0 kg", 186.052, false],
  ])("%s of %d kg within half of its last digit", (text, kilograms, agrees) => {
    expect(figureAgrees(text, of(kilograms, "mass"))).toBe(agrees);
  });

  test("what it makes, the rule takes: whatever the value", () => {
    for (const text of ["132 lb", "6.8 kg", "1,008 kg", "0.75 t"])
      for (const kilograms of [0, 0.004, 0.5, 7.6, 99.95, 999.5, 1e5]) {
        const made = upToDate(text, of(kilograms, "mass"));
        expect({ text, kilograms, made, agrees: made && figureAgrees(made, of(kilograms, "mass")) }).toMatchObject({
          agrees: true,
        });
      }
  });

  test.each(["6.8 lb", "heavy", "", "6-1/2"])("%s where a current belongs is left to a person", (text) => {
    expect(upToDate(text, of(9, "current"))).toBeUndefined();
    expect(upToDate(text, counted(9, "amperes", "current"))).toBeUndefined();
  });
});
