import { standTogether } from "@plumbmark/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";

const claims = (...of: readonly (readonly [string, string, number])[]) =>
  of.map(([build, lot, count]) => ({ build, lot, count }));

describe("builds that can stand at the same time", () => {
  // By hand: of 40 panels a takes 8, b 18, c 14, d 30. a + b + c = 40 is just enough; d fits with a only (38).
  const stock = new Map([
    ["x", 40],
    ["y", 10],
  ]);
  const four = claims(["a", "x", 8], ["b", "x", 18], ["c", "x", 14], ["d", "x", 30], ["e", "y", 10], ["f", "y", 11]);
  const result = standTogether(four, stock);

  test("the largest sets", () =>
    expect(result.sets).toEqual([
      ["a", "b", "c"],
      ["a", "d"],
    ]));
  test("pairs that cannot, and by how much", () =>
    expect(result.apart).toEqual([
      { builds: ["b", "d"], short: [{ lot: "x", asked: 48, count: 40 }] },
      { builds: ["c", "d"], short: [{ lot: "x", asked: 44, count: 40 }] },
    ]));
  test("one alone in its lot is free of the rest", () => expect(result.free).toEqual(["e"]));
  test("one that asks for more than there is never stands", () =>
    expect(result.never).toEqual([{ build: "f", short: [{ lot: "y", asked: 11, count: 10 }] }]));
  test("three of which any two fit", () =>
    expect(standTogether(claims(["a", "x", 20], ["b", "x", 20], ["c", "x", 20]), stock).sets).toEqual([
      ["a", "b"],
      ["a", "c"],
      ["b", "c"],
    ]));
});

test("no set asks for more than there is, and each build that can stand is in one", () =>
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 8 }), (counts) => {
      const all = claims(...counts.map((count, index) => [`b${index}`, "x", count] as const));
      const { sets = [], free, never } = standTogether(all, new Map([["x", 40]]));
      expect(never).toEqual([]);
      for (const set of sets)
        expect(
          all.filter(({ build }) => set.includes(build)).reduce((sum, { count }) => sum + count, 0),
        ).toBeLessThanOrEqual(40);
      expect(new Set([...sets.flat(), ...free]).size).toBe(counts.length);
    }),
  ));
