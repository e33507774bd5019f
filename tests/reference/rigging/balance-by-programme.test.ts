import { anyBalance, type Beam, heaviestCase, loadMiddle, totalLoad } from "@plumbmark/calc";
import fc from "fast-check";
import highs from "highs";
import { beforeAll, expect, inject, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";

// The package is CommonJS and its types speak of a module of ECMAScript.
const load = highs as unknown as typeof highs.default;
let solver: Awaited<ReturnType<typeof load>>;
beforeAll(async () => {
  solver = await load();
});

/** Most of a linear function of the reactions over R ≥ 0, ΣR = W, ΣR × x = W × x̄, by a linear program. */
function most(beam: Beam, weights: readonly number[]): number | undefined {
  const sum = (of: readonly number[]): string =>
    of.map((each, index) => `${each < 0 ? "-" : "+"} ${Math.abs(each).toFixed(12)} r${index}`).join(" ");
  const [total, middle] = [totalLoad(beam), loadMiddle(beam)];
  // Places from the middle of the load: its own moment is then nothing.
  const arms = beam.supports.map((place) => place - middle);
  const programme = `Maximize\n obj: ${sum(weights)}\nSubject To\n c1: ${sum(beam.supports.map(() => 1))} = ${total.toFixed(12)}\n c2: ${sum(arms)} = 0\nEnd\n`;
  const found = solver.solve(programme);
  return found.Status === "Optimal" ? found.ObjectiveValue : undefined;
}

/** Moment at a place of the loads left of it, and what a unit of each reaction adds. */
function momentAt(beam: Beam, at: number): { readonly fixed: number; readonly arms: readonly number[] } {
  const spread = (beam.uniform ?? []).reduce((sum, { from, to, perMetre }) => {
    const end = Math.min(to, at);
    return end > from ? sum + perMetre * (end - from) * (at - (from + end) / 2) : sum;
  }, 0);
  const points = (beam.points ?? []).reduce(
    (sum, { at: place, load }) => sum + (place < at ? load * (at - place) : 0),
    0,
  );
  return { fixed: -spread - points, arms: beam.supports.map((place) => Math.max(0, at - place)) };
}

const bars = fc
  .record({
    length: fc.double({ min: 2, max: 20, noNaN: true }),
    hangs: fc.uniqueArray(fc.integer({ min: 2, max: 98 }), { minLength: 2, maxLength: 7 }),
    own: fc.double({ min: 1, max: 10, noNaN: true }),
    spread: fc.array(
      fc.record({
        from: fc.nat(50),
        wide: fc.integer({ min: 5, max: 50 }),
        load: fc.double({ min: 0, max: 80, noNaN: true }),
      }),
      { maxLength: 3 },
    ),
    points: fc.array(fc.record({ at: fc.nat(100), load: fc.double({ min: 0, max: 300, noNaN: true }) }), {
      maxLength: 4,
    }),
  })
  .map(
    ({ length, hangs, own, spread, points }): Beam => ({
      length,
      supports: [...hangs].sort((a, b) => a - b).map((each) => (each / 100) * length),
      uniform: [
        { from: 0, to: length, perMetre: own },
        ...spread.map(({ from, wide, load }) => ({
          from: (from / 100) * length,
          to: ((from + wide) / 100) * length,
          perMetre: load,
        })),
      ],
      points: points.map(({ at, load }) => ({ at: (at / 100) * length, load })),
    }),
  );

/** Places nearer than a hundredth of a millimetre are one place to a beam: nobody measures closer. */
const ONE_PLACE = 1.1e-5;

/** How far the load may seem to be from where it is, for how far the hangs are apart. */
function shifted(beam: Beam): number {
  const middle = loadMiddle(beam);
  if (beam.supports.every((place) => Math.abs(place - middle) > ONE_PLACE)) return 0;
  const apart = beam.supports.slice(1).map((place, index) => place - (beam.supports[index] as number));
  return ONE_PLACE / Math.min(...apart);
}

const near = (one: number, other: number, beam: Beam): void =>
  expect(Math.abs(one - other)).toBeLessThanOrEqual(
    (1e-6 + shifted(beam)) * totalLoad(beam) * Math.max(1, beam.length),
  );

/** A programme is dear: a quick run asks of a few beams, other ones with every seed. */
const RUNS = { numRuns: inject("effort").deep ? 1200 : 18 };

test("worst reactions are those of a linear program over all balances", () => {
  let still = 0;
  fc.assert(
    fc.property(bars, (beam) => {
      const found = anyBalance(beam);
      const [first, last] = [beam.supports[0]!, beam.supports.at(-1)!];
      const middle = loadMiddle(beam);
      if (!found.still) {
        expect(middle < first + 2e-5 || middle > last - 2e-5).toBe(true);
        return;
      }
      still += 1;
      for (const hang of notEmpty(beam.supports.keys())) {
        const by = most(
          beam,
          beam.supports.map((_, each) => (each === hang ? 1 : 0)),
        );
        near(heaviestCase(found.cases, hang).reactions[hang]!, by as number, beam);
      }
    }),
    RUNS,
  );
  expect(still).toBeGreaterThan(0);
});

test("the worst moments either way are those of linear programs at every place", () => {
  let places = 0;
  fc.assert(
    fc.property(bars, (beam) => {
      const found = anyBalance(beam);
      if (!found.still) return;
      const sag = Math.max(...found.cases.map(({ bent }) => bent.greatestMoment.value));
      const hog = Math.min(...found.cases.map(({ bent }) => bent.leastMoment.value));
      const looked = [
        ...beam.supports,
        ...(beam.points ?? []).map(({ at }) => at),
        ...Array.from({ length: 21 }, (_, i) => (beam.length * i) / 20),
        ...found.cases.flatMap(({ bent }) => [bent.greatestMoment.at, bent.leastMoment.at]),
      ];
      let [greatest, least] = [0, 0];
      for (const at of looked) {
        const { fixed, arms } = momentAt(beam, at);
        greatest = Math.max(greatest, fixed + (most(beam, arms) as number));
        least = Math.min(
          least,
          fixed -
            (most(
              beam,
              arms.map((each) => -each),
            ) as number),
        );
        places += 1;
      }
      near(sag, greatest, beam);
      near(hog, least, beam);
    }),
    { numRuns: Math.ceil(RUNS.numRuns / 3) },
  );
  expect(places).toBeGreaterThan(0);
});
