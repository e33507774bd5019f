import { gapsOf, missing, readQuantity } from "@plumbmark/calc";
import { expect, test } from "vitest";

// SI Brochure, 9th edition, table 7: M is mega, m is milli. Neither is read for the other.
test.each([
  ["3 MV", "voltage"],
  ["3 MA", "current"],
] as const)("%s is no slip for a thousandth", (text, kind) => {
  expect(readQuantity(text, [kind]).ok).toBe(false);
});

test.each([
  ["3 mA", "current", 0.003],
  ["500 MM", "length", 0.5],
  ["12 FT", "length", 3.6576],
] as const)("%s is read", (text, kind, kept) => {
  const read = readQuantity(text, [kind]);
  expect(read.ok && read.quantity.value).toBeCloseTo(kept, 9);
});

test("a missing value without a reason is missing all the same", () => {
  expect(gapsOf([missing("mass")])).toHaveLength(1);
});
