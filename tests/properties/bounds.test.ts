import { type Formula, formulas, given, type Input, type Value } from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";

/** Whether a formula has a result when one input is put at a number and the others are those of its example. */
function known(formula: Formula, name: string, number: number): boolean {
  const values = Object.entries(formula.inputs).map(([each, { kind, many }]) => {
    const example = formula.example.given[each] as number | readonly number[];
    const numbers = each === name ? [number] : typeof example === "number" ? [example] : example;
    const all = numbers.map((one) => given(one, kind));
    return [each, many ? all : all[0]] as const;
  });
  return formula.of(Object.fromEntries(values) as Record<string, Value>).known;
}

const inputs = formulas().flatMap((formula) =>
  Object.entries(formula.inputs).map(([name, input]) => ({ formula, name, input, label: `${formula.id} ${name}` })),
);

const isWhole = ({ kind }: Input): boolean => kind === "count" || kind === "pixels";

/** Whole things of which there may be none: a face that is all left out, a cable that is not there, text too small to show. */
const MAY_BE_NONE: readonly string[] = [
  "face.area n",
  "face.line-mass n",
  "face.panels-mass n",
  "face.parts-mass n",
  "face.pixels n",
  "signal.active-rate n",
  "signal.panels-per-port n",
  "viewing.cap-height n",
];

/** What has a least above nothing, or a most other than the whole, with both and why. */
const BETWEEN: Readonly<Record<string, readonly [least: number | undefined, most: number | undefined, why: string]>> = {
  "power.annex-g-drop b": [1, 2, "1 for three phase, 2 for single phase (IEC 60364-5-52 Annex G)"],
  "power.generator-leg n": [undefined, 3, "windings on one, two or three legs"],
  "rigging.allowable-moment Ω": [1, undefined, "a safety factor never raises what is allowed"],
  "rigging.ballast-needed γ": [1, undefined, "less than 1 falls over"],
  "rigging.rope-working-load D": [1, undefined, "a design factor never raises what is allowed"],
  "rigging.fixing-shear n": [undefined, 2, "the worst two of a wall's fixings take it"],
  "rigging.fixing-tension n": [undefined, 2, "the worst two of the top row take it"],
  "rigging.foot-load n": [2, undefined, "two rows of feet"],
  "rigging.sling-leg-load α": [undefined, 90, "straight up"],
  "rigging.tube-plastic-modulus D": [0.008001, undefined, "the wall of the example, 4 mm, has to fit twice"],
  "viewing.character-height a": [undefined, 5, "small angles: the tangent is 0.25 % above the angle at 5°"],
  "viewing.grey-steps b": [1, 32, "one step is none; no picture has more bits"],
  "signal.exposure a": [undefined, 360, "a shutter that is never closed"],
  "signal.tmds-clock b": [24, undefined, "three components of 8 bit are the least TMDS carries (DVI 1.0)"],
};

describe("an input has a result as far as it has a meaning", () => {
  for (const { formula, name, input, label } of notEmpty(inputs)) {
    const [least, most] = BETWEEN[label] ?? [];
    test(`${label}: less than nothing is not known`, () => expect(known(formula, name, -1e-6)).toBe(false));
    if (least === undefined)
      test(`${label}: ${isWhole(input) ? "one" : "very little"} is known`, () =>
        expect(known(formula, name, isWhole(input) ? 1 : 1e-6)).toBe(true));
    else
      test(`${label}: from ${least} on`, () => {
        expect([known(formula, name, least), known(formula, name, least - 2e-6)]).toEqual([true, false]);
      });
    if (isWhole(input) && least === undefined)
      test(`${label}: ${MAY_BE_NONE.includes(label) ? "may be none" : "there is always one"}`, () =>
        expect(known(formula, name, 0)).toBe(MAY_BE_NONE.includes(label)));
    if (most !== undefined || input.most !== undefined)
      test(`${label}: up to ${most ?? 1}`, () => {
        expect([known(formula, name, most ?? 1), known(formula, name, (most ?? 1) * 1.001)]).toEqual([true, false]);
      });
  }
});
