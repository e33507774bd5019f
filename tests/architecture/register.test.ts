import * as calc from "@plumbmark/calc";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";

const register = calc.register(rules);

describe("sources", () => {
  for (const entry of notEmpty(register.sources))
    test(`something rests on ${entry.id}`, () => {
      expect(
        calc.restsOn(entry),
        "cite it from a formula, a method, a table or a rule, or take it out",
      ).toBeGreaterThan(0);
      expect(entry.source.says).not.toBe("");
    });
  test("every rule cites sources that are listed", () => {
    for (const rule of notEmpty(rules)) {
      expect(rule.sources, rule.id).not.toHaveLength(0);
      for (const id of notEmpty(rule.sources)) expect(calc.sources, `${rule.id} cites ${id}`).toHaveProperty([id]);
    }
  });
  test("every table rests on a source", () => {
    for (const table of notEmpty(register.tables)) expect(calc.sourcesOfTable(table), table.id).not.toHaveLength(0);
  });
});

describe("what is named is named once", () => {
  for (const [what, names] of [
    ["tables", register.tables.map(({ id }) => id)],
    ["methods", register.methods.map(({ name }) => name)],
  ] as const)
    test(what, () => expect(new Set(names).size).toBe(names.length));
});

describe("formulas", () => {
  for (const formula of notEmpty(register.formulas))
    test(`${formula.id} has a source, a validity and an example from somewhere`, () => {
      expect(calc.sources).toHaveProperty([formula.source]);
      expect(formula.validity).not.toBe("");
      expect(formula.example.from).not.toBe("");
      for (const input of Object.values(formula.inputs)) expect(input.is).not.toBe("");
    });
});

describe("methods meet their worked examples", () => {
  for (const { name, example } of notEmpty(register.methods))
    test(`${name}: ${example.asks} (${example.from})`, () => {
      const compare = (got: unknown, gives: unknown): void =>
        typeof gives === "number"
          ? expect(Math.abs((got as number) - gives), `got ${got}`).toBeLessThanOrEqual(example.within ?? 1e-9)
          : expect(got).toBe(gives);
      const got = example.got();
      if (!Array.isArray(example.gives)) return compare(got, example.gives);
      expect(got).toHaveLength(example.gives.length);
      for (const [index, gives] of notEmpty(example.gives.entries())) compare((got as readonly number[])[index], gives);
    });
});

/** Functions that read, print, make or look up, and so have no result that could be worked out on paper. */
const NOT_COMPUTING = new Set([
  ...["formula", "formulas", "register", "restsOn", "sourcesOfTable", "sourceOf", "showSum"],
  ...[
    "assumed",
    "assumedIn",
    "assumedWithin",
    "counted",
    "given",
    "missing",
    "restingOn",
    "tabled",
    "gapsOf",
    "workingOf",
  ],
  ...["guessed", "guessesIn", "guessMark", "marked", "statedIn"],
  ...["awgName", "awgNumber", "siUnit", "unitByCode", "unitFor", "unitsOf"],
  ...["printer", "printNumber", "printQuantity", "readPair", "readQuantity"],
  ...["heldByFriction", "buildingRow", "gaugeRow", "metricRow"],
  ...["requireSoundBeam", "samePlace", "stretchAt", "reactionWorking"],
]);

describe("every function that computes has a source and an example", () => {
  const listed = new Set<unknown>([...register.formulas, ...register.methods.map(({ of }) => of)]);
  for (const [name, exported] of Object.entries(calc))
    if (typeof exported === "function" && !NOT_COMPUTING.has(name))
      test(name, () =>
        expect(listed.has(exported), "list it in packages/calc/src/register/methods with a source and an example").toBe(
          true,
        ),
      );
  test("a method carries its function's own name", () => {
    const exported = new Map<string, unknown>(Object.entries(calc));
    for (const { name, of } of notEmpty(register.methods)) expect(exported.get(name), name).toBe(of);
  });
});
