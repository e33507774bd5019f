import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { constantsWithFigures, tableText } from "./figures.js";

/** Exact unit factors are in the table of units; where a file repeats one for its own arithmetic it goes by these names. */
const UNIT_FACTORS = ["FOOT", "INCH", "IN", "CM", "POUND", "LB", "LB_FT", "KSI", "KIP_IN", "BTU_PER_HOUR"];

/** Figures that are no limits: bounds of an input, fineness of the arithmetic, what is printed and in which unit. */
const NOT_TABLES = [
  "face/extent.ts#columns",
  "face/extent.ts#panels",
  "face/extent.ts#rows",
  "face/path.ts#CENTRE",
  "power/breakers.ts#NOISE",
  "quantity/parse.ts#AWG_UNIT",
  "quantity/parse.ts#MOST",
  "quantity/print.ts#MOST",
  "quantity/print.ts#SMALL_LENGTHS",
  "rigging/beam/beam.ts#SAME_PLACE",
  "rigging/beam/deflection.ts#PARTS",
  "rigging/beam/length-error.ts#MOST_HANGS",
  "rigging/beam/terms.ts#MOST",
  "rigging/lift/niosh.ts#NOISE",
  "signal/viewing.ts#pitch",
  "signal/widened.ts#STEPS",
  "stock/together.ts#MOST",
];

/** Rows that reach the register through the list they are joined in. */
const JOINED: Readonly<Record<string, string>> = {
  "connectors/iec-power.ts#TWO_POLES": "connectors",
  "connectors/nema.ts#CONFIGURATIONS": "connectors",
  "connectors/iec-power.ts#iecPowerConnectors": "connectors",
  "connectors/nema.ts#nemaConnectors": "connectors",
  "rigging/section/table.ts#STEEL": "tubeRows",
};

/** Lists of methods with their worked examples, which the register's own test works. */
const isMethods = (constant: string): boolean => constant.endsWith("Methods");

describe("every constant with figures is in a table of the register", () => {
  const text = tableText();
  for (const constant of notEmpty(constantsWithFigures())) {
    const name = JOINED[constant] ?? (constant.split("#")[1] as string);
    if (NOT_TABLES.includes(constant) || isMethods(constant) || UNIT_FACTORS.includes(name)) continue;
    test(constant, () => {
      expect(new RegExp(`\\b${name}\\b`, "u").test(text), "list it in packages/calc/src/register/tables").toBe(true);
    });
  }
});
