import {
  type Formula,
  formulas,
  given,
  type Kind,
  type Known,
  printer,
  toKept,
  type Unit,
  units,
  unitsOf,
  type Value,
} from "@plumbmark/calc";
import { all, create, type FactoryFunctionMap } from "mathjs";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";

const math = create(all as FactoryFunctionMap);
math.import({
  arctan: (x: number) => (Math.atan(x) * 180) / Math.PI,
  sine: (x: number) => Math.sin((x * Math.PI) / 180),
});

const NAMES = [...new Set(units.map(({ print }) => print).filter((print) => print !== "" && print !== "%"))]
  .sort((a, b) => b.length - a.length)
  .map((print) => print.replace(/[.*+?^${}()|[\]\\/]/gu, "\\$&"))
  .join("|");
const UNIT = new RegExp(`(\\d) ?(?:${NAMES})(?![\\p{L}\\d²³⁴/·])`, "gu");

/** The shown line as keyed in on a pocket calculator: units dropped, signs as the keys have them. */
const keyed = (line: string): string =>
  line
    .replace(/(\d) (?:Gb\/s)/gu, "($1 * 1e9)")
    .replace(/Ω·mm²\/m| per W| mm²?\/(?:ft²?|in)|°|′/gu, "")
    .replace(UNIT, "$1")
    .replace(/(\d),(?=\d{3}(?!\d))/gu, "$1")
    .replace(/([\d.]+) ?%/gu, "($1 / 100)")
    .replace(/ BTU\/h| m(?![\p{L}])| bit| Hz/gu, "")
    .replaceAll("²", "^2")
    .replaceAll("³", "^3")
    .replaceAll("√", "sqrt")
    .replace(/sqrt([23])(?![\d(])/gu, "sqrt($1)")
    .replace(/sin ([\d.]+)/gu, "sine($1)")
    .replaceAll("−", "-")
    .replaceAll("×", "*")
    .replaceAll("÷", "/");

/** What the keyed number may be in: a unit of its kind, or millimetres squared and cubed. */
const unitsFor = (kind: Kind): readonly Unit[] => {
  const all = unitsOf(kind);
  const millimetres = kind === "area" ? 1e-6 : kind === "section-modulus" ? 1e-9 : undefined;
  return millimetres ? [...all, { ...(all[0] as Unit), factor: millimetres }] : all;
};

function valuesOf(formula: Formula): Record<string, Value> {
  const entries = Object.entries(formula.inputs).map(([symbol, { kind, many }]) => {
    const example = formula.example.given[symbol] as number | readonly number[];
    const list = (typeof example === "number" ? [example] : example).map((each) => given(each, kind));
    return [symbol, many ? list : list[0]] as const;
  });
  return Object.fromEntries(entries) as Record<string, Value>;
}

describe.each(["us", "metric"] as const)("what is shown in %s units, keyed in, gives what is printed", (system) => {
  for (const formula of notEmpty(formulas()))
    test(formula.id, () => {
      const result = formula.of(valuesOf(formula)) as Known;
      if (result.origin.from !== "step") throw new Error("a formula gives a step");
      const shown = result.origin.step.show(printer(system));
      const got = math.evaluate(keyed(shown)) as number;
      const misses = unitsFor(result.kind).map(
        (unit) => Math.abs(toKept(got, unit) - result.value) / (result.value || 1),
      );
      expect(Math.min(...misses), `${shown} is ${got}; it is ${result.value} as kept`).toBeLessThan(2e-3);
    });
});
