import {
  allowableMoment,
  ballastNeeded,
  deckPressure,
  type Formula,
  footLoad,
  formulas,
  fromKept,
  given,
  type Known,
  notionalMoment,
  overturningFactor,
  printer,
  restoringMoment,
  unitFor,
} from "@plumbmark/calc";
import { all, create, type FactoryFunctionMap } from "mathjs";
import { expect, test } from "vitest";

const math = create(all as FactoryFunctionMap);

/** The shown numbers, units and commas dropped, as something a calculator takes. */
const keyed = (line: string): number =>
  math.evaluate(
    line
      .replace(/(\d) ?(kPa|MPa|ksi|N·m|lb·ft|lb\/ft²|lb|kg|ft²|m²|cm³|in³|ft|m)(?![\p{L}])/gu, "$1")
      .replace(/(\d),(?=\d{3}(?!\d))/gu, "$1")
      .replace(/²/gu, "^2")
      .replace(/−/gu, "-")
      .replace(/×/gu, "*")
      .replace(/÷/gu, "/"),
  ) as number;

const chosen = [
  notionalMoment,
  restoringMoment,
  ballastNeeded,
  deckPressure,
  footLoad,
  overturningFactor,
  allowableMoment,
] as unknown as readonly Formula[];

for (const { id } of chosen)
  for (const system of ["us", "metric"] as const)
    test(`${id} in ${system} units can be redone from what is shown`, () => {
      const formula = formulas().find((each) => each.id === id)!;
      const values = Object.fromEntries(
        Object.entries(formula.inputs).map(([symbol, { kind }]) => [
          symbol,
          given(formula.example.given[symbol] as number, kind),
        ]),
      );
      const result = formula.of(values) as Known;
      if (result.origin.from !== "step") throw new Error("a formula gives a step");
      const shown = keyed(result.origin.step.show(printer(system)));
      const printed = fromKept(result.value, unitFor(result.value, result.kind, system));
      expect(Math.abs(shown / printed - 1)).toBeLessThan(2e-3);
    });
