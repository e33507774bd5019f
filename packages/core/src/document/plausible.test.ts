import type { Kind } from "@plumbmark/calc";
import { readQuantity } from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { isPlausible } from "./plausible.js";
import { readQuantities } from "./quantities.js";
import { readWholeYaml } from "./yaml/whole-yaml.js";

const plausible = (text: string, kinds: readonly Kind[], range: readonly [string, string]): boolean => {
  const read = readQuantity(text, kinds);
  if (!read.ok) throw new Error(read.found);
  return isPlausible(read.quantity, range);
};

describe("a field's plausible range", () => {
  test.each([
    ["1 kg", true],
    ["200 t", true],
    ["0.9 kg", false],
    ["1e300 lb", false],
    // 1 kg weighs 9.80665 N (CGPM 1901).
    ["9.8 N", false],
    ["9.81 N", true],
    ["1962 kN", false],
  ])("a rating of %s from 1 kg to 200 t: %s", (text, is) =>
    expect(plausible(text, ["mass", "force"], ["1 kg", "200 t"])).toBe(is),
  );

  test("is told with its place, and the value is still read", () => {
    const schema = {
      properties: { rating: { title: "rating", quantity: ["mass", "force"], plausible: ["1 kg", "200 t"] } },
    };
    const { values, mistakes, implausible } = readQuantities(schema, readWholeYaml("name: x\nrating: 1e300 lb\n"));
    expect(mistakes).toEqual([]);
    expect(values.has("rating")).toBe(true);
    expect(implausible).toMatchObject([{ path: "rating", text: "1e300 lb", title: "rating", place: { line: 2 } }]);
  });
});

describe("which fields may be less than nothing is said field by field", () => {
  const read = (field: object, text: string) =>
    readQuantities({ properties: { it: { title: "it", ...field } } }, readWholeYaml(`it: ${text}\n`)).mistakes;
  test.each([
    [{ quantity: "length" }, "-3 ft", 1],
    [{ quantity: "length", sign: "any" }, "-3 ft", 0],
    [{ quantity: "angle" }, "-3 deg", 1],
    [{ pair: "length" }, "1 m x -1 m", 1],
    [{ quantity: "mass" }, "-1 kg", 1],
    [{ quantity: "factor" }, ".inf", 1],
    [{ quantity: "factor" }, ".nan", 1],
    [{ quantity: "mass" }, "1e400 kg", 1],
  ])("%j: %s", (field, text, refused) => expect(read(field, text)).toHaveLength(refused));
});
