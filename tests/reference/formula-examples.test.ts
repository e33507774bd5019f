import { formulas } from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";

describe("every formula meets its own worked example", () => {
  for (const formula of notEmpty(formulas()))
    test(`${formula.id}: ${formula.example.from}`, () => {
      expect(Math.abs(formula.compute(formula.example.given) - formula.example.gives)).toBeLessThanOrEqual(
        formula.example.within,
      );
      expect(formula.validity).not.toBe("");
    });
});
