import {
  atLeast,
  atMost,
  type Build,
  counted,
  type Known,
  quantity,
  quantityOf,
  rule,
  type Value,
  within,
} from "@plumbmark/kit";
import { describe, expect, expectTypeOf, test } from "vitest";

// Compiled with the workspace: each `@ts-expect-error` is an error of the compiler that has to be there.

const thing = { path: "faces.wall", label: "Face wall" };
const says = () => "";
const current: Value<"current"> = quantity("17.2 A");
const length: Value<"length"> = quantity("3 m");

describe("a quantity", () => {
  test("has the kind of its unit, for the compiler too", () => {
    expectTypeOf(quantity("20 A")).toEqualTypeOf<Known<"current">>();
    expectTypeOf(quantity("10 ft 6 in")).toEqualTypeOf<Known<"length">>();
    expectTypeOf(quantityOf("conductor", "2.5 mm2")).toEqualTypeOf<Known<"conductor">>();
  });

  // 1 ft = 0.3048 m and 1 in = 0.0254 m exactly (international yard and pound, 1959): 10 ft 6 in = 3.2004 m.
  test.each([
    [quantity("10 ft 6 in"), "length", 3.2004],
    [quantity("20 A"), "current", 20],
    [quantity("75 %"), "ratio", 0.75],
    [quantity("1 lb"), "mass", 0.45359237],
    [quantityOf("conductor", "2.5 mm2"), "conductor", 2.5],
  ])("reads %o", (value, kind, kept) => {
    expect(value.kind).toBe(kind);
    expect(value.value).toBeCloseTo(kept, 12);
  });

  test("with a unit that is not known does not compile, and does not run", () => {
    // @ts-expect-error there is no such unit
    expect(() => quantity("20 amperages")).toThrow(RangeError);
    // @ts-expect-error a bare number has no kind
    expect(() => quantity("20")).toThrow(RangeError);
    expect(() => quantityOf("length", "20 A")).toThrow(/which is a current/u);
  });
});

describe("a comparison", () => {
  test("of two kinds does not compile", () => {
    atMost(thing, { measured: current, allowed: quantity("16 A"), says });
    // @ts-expect-error metres are no amperes
    atMost(thing, { measured: current, allowed: length, says });
    // @ts-expect-error volt-amperes are no watts
    atLeast(thing, { measured: quantity("140 VA"), allowed: quantity("130 W"), says });
    // @ts-expect-error the upper end is a mass
    within(thing, { measured: length, least: quantity("2.1 m"), most: quantity("3 kg"), says });
    within(thing, { measured: length, least: quantity("7 ft"), most: quantity("3 m"), says });
  });

  test("takes a value whose kind is only known when the rule runs", () => {
    const either: Value = counted(1, "panels");
    atMost(thing, { measured: either, allowed: quantity("16 A"), says });
    atMost(thing, { measured: current, allowed: either, says });
  });

  test("of the model's own values is checked as well", () => {
    const look = (build: Build): void => {
      for (const face of build.faces) {
        atMost(face, { measured: face.mass, allowed: quantity("400 kg"), says });
        // @ts-expect-error a mass is no length
        atMost(face, { measured: face.mass, allowed: quantity("400 mm"), says });
      }
    };
    expect(look).toBeTypeOf("function");
  });
});

test("settings have the types of their defaults, and limits the kinds of theirs", () => {
  const made = rule({
    id: "house.share",
    states: "A share.",
    level: "note",
    why: "Types.",
    judged: "By the compiler.",
    sources: ["house"],
    settings: {
      share: { us: 0.8, iec: 1, kind: "ratio", describe: "a share" },
      strict: { us: true, iec: false, describe: "a switch" },
    },
    checks({ settings, limits }) {
      expectTypeOf(settings.share).toEqualTypeOf<number>();
      expectTypeOf(settings.strict).toEqualTypeOf<boolean>();
      expectTypeOf(limits.share).toEqualTypeOf<Known<"ratio">>();
      // @ts-expect-error there is no such setting
      settings.other;
      // @ts-expect-error a switch is no limit
      limits.strict;
      return [];
    },
  });
  expect(made.id).toBe("house.share");
});
