import { type DraftedWish, drawnTogether, type Option, takeLengths } from "@plumbmark/draft";
import fc from "fast-check";
import { munkres } from "munkres";
import { describe, expect, test } from "vitest";
import { laidOut, opened } from "./drafting.js";

describe("cables from the shelf", () => {
  test("serve as many needs with as little length as an assignment by a library does", () => {
    const FAR = 10_000;
    const lengths = fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(lengths, lengths, (needs, there) => {
        const owned = new Map<number, number>();
        for (const length of there) owned.set(length, (owned.get(length) ?? 0) + 1);
        const { taken } = takeLengths(needs, owned);
        const used = taken.filter((each) => each !== undefined);
        // A need that nothing is left for costs more than all cable there is.
        const size = Math.max(needs.length, there.length);
        const cost = Array.from({ length: size }, (_, need) =>
          Array.from({ length: size }, (_, at) => {
            const [asked, length] = [needs[need], there[at]];
            if (asked === undefined) return 0;
            return length !== undefined && length >= asked ? length : FAR;
          }),
        );
        const least = munkres(cost).reduce(
          (sum, [row, column]) => sum + ((cost[row] as number[])[column] as number),
          0,
        );
        const own = used.reduce((sum, each) => sum + each, 0) + (needs.length - used.length) * FAR;
        expect(own).toBe(least);
      }),
      { numRuns: 200 },
    );
  });
});

describe("several wishes as one purchase", () => {
  const drafted = (text: string): DraftedWish => {
    const { brief, ...all } = laidOut(text, { every: true });
    return { wish: brief.wish, drafted: all };
  };
  const onAWall = (name: string, days: string, width: string): string =>
    `wish: ${name}\ntitle: ${name}\non-site: ${days}\nsupport: wall\nsize: {width: ${width}, height: exactly 1 m}\nout-of: catalogue\n`;

  // Two stand at the same time and one at another: what has to be there is the greater of a sum and a single one.
  test("buys no fewer panels than any choice of options asks for, found by trying all", () => {
    const wishes = [
      drafted(onAWall("one", "2027-05-01 to 2027-05-03", "exactly 1 m")),
      drafted(onAWall("two", "2027-05-03 to 2027-05-05", "exactly 2 m")),
      drafted(onAWall("three", "2027-08-01 to 2027-08-05", "exactly 2 m")),
    ];
    const { purchases } = drawnTogether(wishes, opened());
    expect(purchases.length).toBeGreaterThan(0);
    for (const { panel, peak } of purchases) {
      const panels = (option: Option): number =>
        option.needs.filter(({ kind }) => kind === "panel").reduce((sum, { count }) => sum + count, 0);
      const lists = wishes.map(({ drafted: { options } }) =>
        options.filter(({ scheme }) => scheme.panel === panel).map(panels),
      );
      const [first = [], second = [], third = []] = lists;
      const all = first.flatMap((a) => second.flatMap((b) => third.map((c) => Math.max(a + b, c))));
      const told = peak.filter(({ kind }) => kind === "panel").reduce((sum, { count }) => sum + count, 0);
      expect(told).toBe(Math.min(...all));
    }
  });
});
