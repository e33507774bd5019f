import { standTogether } from "@plumbmark/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";

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

test("of more pairs than are asked for the first are told, and that there are more", () => {
  const all = claims(["a", "x", 3], ["b", "x", 3], ["c", "x", 3]);
  const told = (most?: number) => {
    const { apart, more } = standTogether(all, new Map([["x", 5]]), most);
    return [apart.map(({ builds }) => builds.join("")), more];
  };
  expect(told()).toEqual([["ab", "ac", "bc"], false]);
  expect(told(3)).toEqual([["ab", "ac", "bc"], false]);
  expect(told(2)).toEqual([["ab", "ac"], true]);
});

test("the pairs apart are those of all pairs that ask some lot for more than it has", () => {
  const lots = new Map([
    ["x", 40],
    ["y", 25],
    ["z", 10],
  ]);
  const claim = fc.record({
    build: fc.constantFrom("a", "b", "c", "d", "e", "f"),
    lot: fc.constantFrom(...lots.keys()),
    count: fc.integer({ min: 0, max: 30 }),
  });
  fc.assert(
    fc.property(fc.array(claim, { maxLength: 12 }), (all) => {
      const asked = (set: readonly string[], lot: string): number =>
        all.filter((each) => set.includes(each.build) && each.lot === lot).reduce((sum, { count }) => sum + count, 0);
      const isShort = (set: readonly string[]): boolean => [...lots].some(([lot, count]) => asked(set, lot) > count);
      const able = [...new Set(all.map(({ build }) => build))].filter((build) => !isShort([build]));
      const pairs = able.flatMap((one, index) => able.slice(index + 1).map((other) => [one, other] as const));
      const { apart } = standTogether(all, lots);
      expect(apart.map(({ builds }) => builds)).toEqual(pairs.filter(isShort));
      for (const { builds, short } of apart)
        for (const each of notEmpty(short)) {
          expect(each.asked).toBe(asked(builds, each.lot));
          expect(each.asked).toBeGreaterThan(each.count);
        }
    }),
  );
});
