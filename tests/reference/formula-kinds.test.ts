import {
  formulas,
  given,
  greatestOf,
  type Kind,
  kinds,
  leastOf,
  loadCurrent,
  missing,
  shareOf,
  sum,
  type Value,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";

const all = Object.keys(kinds) as Kind[];

/** The values of a formula's example, one input of them of another kind. */
function valuesOf(
  formula: ReturnType<typeof formulas>[number],
  other?: { readonly name: string; readonly kind: Kind },
) {
  const values = Object.entries(formula.inputs).map(([name, { kind, many }]) => {
    const example = formula.example.given[name] as number | readonly number[];
    const numbers = typeof example === "number" ? [example] : example;
    const made = numbers.map((each) => given(each, other?.name === name ? other.kind : kind));
    return [name, many ? made : made[0]] as const;
  });
  return Object.fromEntries(values) as Record<string, Value>;
}

const inputs = formulas().flatMap((formula) =>
  Object.entries(formula.inputs).map(([name, input]) => ({ formula, name, input })),
);

describe("an input of a formula is of its own kind", () => {
  test.each(notEmpty(inputs))("$formula.id $name", ({ formula, name, input }) => {
    expect(formula.of(valuesOf(formula)).known).toBe(true);
    for (const kind of notEmpty(all.filter((each) => each !== input.kind)))
      expect(() => formula.of(valuesOf(formula, { name, kind }))).toThrow(TypeError);
  });

  test("what is missing is of a kind, too", () => {
    const wrong = missing("mass", { path: "a", what: "b" }) as Value;
    expect(() => loadCurrent.of({ S: given(1, "apparent-power"), V: wrong })).toThrow(
      /voltage.* has to be a voltage; it is a mass/u,
    );
  });

  test("a value of a kind that is known to be another one does not compile", () => {
    // @ts-expect-error a mass is no voltage
    expect(() => loadCurrent.of({ S: given(1, "apparent-power"), V: given(1, "mass") })).toThrow(TypeError);
    // @ts-expect-error a power is no apparent power
    expect(() => loadCurrent.of({ S: given(1, "power"), V: given(1, "voltage") })).toThrow(TypeError);
  });
});

describe.each([
  ["sum", sum],
  ["leastOf", leastOf],
  ["greatestOf", greatestOf],
] as const)("%s", (_, of) => {
  const [mass, length] = [given(2, "mass"), given(3, "length")];

  test("takes values of one kind", () => expect(of([mass, given(3, "mass")], "mass").known).toBe(true));

  test("refuses a value of another kind, known or missing", () => {
    for (const other of [length, missing("length", { path: "a", what: "b" })]) {
      expect(() => of([mass, other] as readonly Value[], "mass")).toThrow(/has to be a mass; it is a length/u);
      expect(() => of([other, mass] as readonly Value[], "mass")).toThrow(TypeError);
    }
  });
});

test("2 kg and 3 m have no least, greatest or sum; it does not compile either", () => {
  const mixed = [given(2, "mass"), given(3, "length")] as const;
  // @ts-expect-error a length is no mass
  expect(() => leastOf(mixed, "mass")).toThrow(TypeError);
  // @ts-expect-error a length is no mass
  expect(() => greatestOf(mixed, "mass")).toThrow(TypeError);
  // @ts-expect-error a length is no mass
  expect(() => sum(mixed, "mass")).toThrow(TypeError);
  expect(() => shareOf(mixed[0], mixed[1])).toThrow(/is no share of/u);
});
