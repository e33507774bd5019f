import { given, LEAST_ROPE_MASS, ropeMassLeast } from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const of100 = (W: number, millimetres: number): number => {
  const found = ropeMassLeast.of({
    W: given(W, "factor"),
    d: given(millimetres / 1000, "length"),
    L: given(100, "length"),
  });
  return found.known ? found.value : Number.NaN;
};

// API Specification 9A, Table C.1, class 6 × 7 with fibre core: approximate nominal length mass, kg for 100 m.
const PRINTED: readonly (readonly [millimetres: number, kilograms: number])[] = [
  [6, 12.4],
  [8, 22.1],
  [10, 34.5],
  [16, 88.3],
  [22, 167],
  [32, 353],
];
describe("length mass of stranded ropes", () => {
  for (const [millimetres, kilograms] of PRINTED)
    reference({
      name: `6 × 7 with fibre core, ${millimetres} mm, W = 0.345 (EN 12385-4), kg for 100 m`,
      source: "API Specification 9A, Table C.1",
      basis: "published",
      got: () => of100(0.345, millimetres),
      printed: kilograms,
      within: kilograms * 0.003,
    });
  test("the least that is taken is under every factor of EN 12385-4 in print", () => {
    // 8 × 7 with fibre core is the lightest there, 0.327.
    expect(LEAST_ROPE_MASS).toBeLessThan(0.327);
    expect(LEAST_ROPE_MASS / 0.327).toBeGreaterThan(0.85);
  });
});
