import { deflectionValue, given, type Known, momentValue, printer, solveBeam } from "@plumbmark/calc";
import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";

// 10 lb/ft over 20 ft: wL² ÷ 8 = 500 lb·ft; 5wL⁴ ÷ 384 = 20,833.3 lb·ft³, with 29,000 ksi and 0.293 in⁴ 4.2368 in.
const pounds = 10 * (0.45359237 / 0.3048);
const span = (feet: number) =>
  solveBeam({
    length: feet * 0.3048,
    supports: [0, feet * 0.3048],
    uniform: [{ from: 0, to: feet * 0.3048, perMetre: pounds }],
  });
const steel = [given(29_000 * 6.894757293168, "stress"), given(0.293 * 0.0254 ** 4, "second-moment")] as const;

const shown = (value: Known): string => (value.origin.from === "step" ? value.origin.step.show(printer("us")) : "");
const keyed = (line: string): number =>
  evaluate(
    line
      .replace(/(\d) (?:lb·ft³|lb|ft|ksi|in⁴)/gu, "$1")
      .replace(/(\d),(?=\d{3}(?!\d))/gu, "$1")
      .replace(/^\|(.*)\|/u, "abs($1)")
      .replaceAll("×", "*")
      .replaceAll("÷", "/")
      .replaceAll("−", "-"),
  ) as number;

describe("bending as shown in feet and pounds, keyed into a calculator", () => {
  test("the moment of 20 ft is 500 lb·ft (wL²/8)", () =>
    expect(Math.abs(keyed(shown(momentValue(span(20), []))) - 500)).toBeLessThan(0.05));
  test("20 ft of NPS 1-1/2 pipe sink 4.2368 in (5wL⁴/384EI)", () =>
    expect(Math.abs(keyed(shown(deflectionValue(span(20), [0, 20 * 0.3048], ...steel, []))) - 4.2368)).toBeLessThan(
      0.001,
    ));
  test("40 ft would sink 16 times as much, 67.788 in, and are shown in feet", () =>
    expect(
      Math.abs(keyed(shown(deflectionValue(span(40), [0, 40 * 0.3048], ...steel, []))) - 67.788 / 12),
    ).toBeLessThan(0.005));
});
