import {
  anyBalance,
  type Beam,
  balanceReaction,
  hangBeam,
  heaviestCase,
  lengthErrors,
  loadMiddle,
  lostHang,
  suddenPeak,
  totalLoad,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

const STATICS = "statics: balance of forces and moments, worked in fractions";

/** Hangs alike spaced over a bar of 1 with an overhang at each end. */
const even = (n: number, overhang = 0): readonly number[] =>
  Array.from({ length: n }, (_, index) => overhang + ((1 - 2 * overhang) * index) / (n - 1));
const point = (n: number, at: number): Beam => ({ length: 1, supports: even(n), points: [{ at, load: 1 }] });
const uniform = (n: number, overhang = 0): Beam => ({
  length: 1,
  supports: even(n, overhang),
  uniform: [{ from: 0, to: 1, perMetre: 1 }],
});

const casesOf = (beam: Beam) => {
  const found = anyBalance(beam);
  if (!found.still) throw new Error(found.because);
  return found.cases;
};
const worst = (beam: Beam): readonly number[] =>
  beam.supports.map((_, hang) => heaviestCase(casesOf(beam), hang).reactions[hang]!);
const sag = (beam: Beam): number => Math.max(...casesOf(beam).map(({ bent }) => bent.greatestMoment.value));
const hog = (beam: Beam): number => Math.min(...casesOf(beam).map(({ bent }) => bent.leastMoment.value));

describe("worst reactions over all balances", () => {
  for (const [n, printed] of [
    [2, [1 / 2, 1 / 2]],
    [3, [1 / 2, 1, 1 / 2]],
    [4, [1 / 2, 3 / 4, 3 / 4, 1 / 2]],
    [5, [1 / 2, 2 / 3, 1, 2 / 3, 1 / 2]],
    [6, [1 / 2, 5 / 8, 5 / 6, 5 / 6, 5 / 8, 1 / 2]],
  ] as const) {
    reference({
      name: `${n} hangs, load in the middle`,
      source: STATICS,
      basis: "arithmetic",
      printed,
      got: () => worst(point(n, 1 / 2)),
    });
    reference({
      name: `${n} hangs, uniform load`,
      source: STATICS,
      basis: "arithmetic",
      printed,
      got: () => worst(uniform(n)),
    });
  }
  for (const [x, n, printed] of [
    [1 / 4, 3, [3 / 4, 1 / 2, 1 / 4]],
    [1 / 4, 5, [3 / 4, 1, 1 / 2, 1 / 3, 1 / 4]],
    [1 / 3, 4, [2 / 3, 1, 1 / 2, 1 / 3]],
    [1 / 3, 6, [2 / 3, 5 / 6, 5 / 6, 5 / 9, 5 / 12, 1 / 3]],
    [2 / 5, 4, [3 / 5, 9 / 10, 3 / 5, 2 / 5]],
    [2 / 5, 6, [3 / 5, 3 / 4, 1, 2 / 3, 1 / 2, 2 / 5]],
  ] as const)
    reference({
      name: `${n} hangs, load at ${x.toFixed(3)} of the bar`,
      source: STATICS,
      basis: "arithmetic",
      printed,
      got: () => worst(point(n, x)),
    });
  reference({
    name: "165.2 lb on three hangs alike: 82.6, 165.2, 82.6 lb",
    source: STATICS,
    basis: "arithmetic",
    printed: [413 / 5, 826 / 5, 413 / 5],
    got: () => worst({ length: 10, supports: [1, 5, 9], points: [{ at: 5, load: 165.2 }] }),
  });
});

describe("bending over all balances", () => {
  for (const [n, hogging] of [
    [3, -1 / 8],
    [4, -1 / 18],
    [5, -1 / 8],
    [6, -2 / 25],
  ] as const)
    reference({
      name: `${n} hangs, uniform load: the outer pair sags with wL²/8, an inner hang hogs`,
      source: STATICS,
      basis: "arithmetic",
      printed: [1 / 8, hogging],
      got: () => [sag(uniform(n)), hog(uniform(n))],
    });
  for (const [a, sagging, two, three, four, six] of [
    [1 / 10, 3 / 40, -1 / 200, -1 / 8, -121 / 1800, -441 / 5000],
    [1 / 8, 1 / 16, -1 / 128, -1 / 8, -9 / 128, -289 / 3200],
    [1 / 6, 1 / 24, -1 / 72, -1 / 8, -49 / 648, -169 / 1800],
    [1 / 5, 1 / 40, -1 / 50, -1 / 8, -2 / 25, -121 / 1250],
    [1 / 4, 0, -1 / 32, -1 / 8, -25 / 288, -81 / 800],
  ] as const)
    reference({
      name: `overhang ${a.toFixed(3)} of the bar: sag, then hogging of two, three, four and six hangs`,
      source: STATICS,
      basis: "arithmetic",
      printed: [sagging, two, three, four, six],
      got: () => [sag(uniform(4, a)), ...[2, 3, 4, 6].map((n) => hog(uniform(n, a)))],
    });
  const mixed: Beam = {
    length: 16,
    supports: [1, 5, 9, 15],
    uniform: [{ from: 0, to: 16, perMetre: 10 }],
    points: [{ at: 4, load: 100 }],
  };
  reference({
    name: "hangs at 1, 5, 9 and 15 ft, 10 lb/ft over 16 ft, 100 lb at 4 ft: middle, worst reactions, sag, hogging",
    source: STATICS,
    basis: "arithmetic",
    printed: [84 / 13, 1110 / 7, 222, 355 / 2, 710 / 7, 20235 / 49, -245],
    got: () => [loadMiddle(mixed), ...worst(mixed), sag(mixed), hog(mixed)],
  });
  test("the sag is at 41/7 ft, on the outer pair", () => {
    const outer = casesOf(mixed).find(({ taut }) => taut.join() === "0,3")!;
    expect(outer.bent.greatestMoment.at).toBeCloseTo(41 / 7, 9);
  });
});

describe("what one slack hang at a time understates", () => {
  /** Each hang slack in turn on a level bar: what was judged before. */
  const oneSlack = (beam: Beam): readonly number[] =>
    beam.supports.map((_, hang) =>
      Math.max(
        ...[-1, ...beam.supports.keys()].map((slack) => {
          const hung = hangBeam(beam, slack < 0 ? [] : [slack]);
          return hung.stable && !hung.neutral ? hung.reactions[hang]! : 0;
        }),
      ),
    );
  reference({
    name: "three hangs: 1/2, 5/8, 1/2 against 1/2, 1, 1/2",
    source: "handbook reactions of continuous beams (Hicks, Table 2.1)",
    basis: "published",
    printed: [1 / 2, 5 / 8, 1 / 2],
    got: () => oneSlack(uniform(3)),
  });
  reference({
    name: "four hangs: 13/48, 11/16, 11/16, 13/48 against 1/2, 3/4, 3/4, 1/2",
    source: STATICS,
    basis: "arithmetic",
    printed: [13 / 48, 11 / 16, 11 / 16, 13 / 48],
    got: () => oneSlack(uniform(4)),
  });
  test.each([3, 4, 5, 6])("%i hangs: some hang is understated, none overstated", (n) => {
    const [few, all] = [oneSlack(uniform(n)), worst(uniform(n))];
    for (const [hang, each] of few.entries()) expect(each).toBeLessThanOrEqual(all[hang]! + 1e-9);
    expect(few.some((each, hang) => each < all[hang]! - 0.01)).toBe(true);
  });
});

describe("a bar whose load is not between its outer hangs does not hang", () => {
  test.each([
    ["beyond", 0.9],
    ["right under", 0.8],
  ])("%s the last hang", (_, at) =>
    expect(anyBalance({ length: 1, supports: [0.2, 0.5, 0.8], points: [{ at, load: 1 }] }).still).toBe(false),
  );
  test("one hang is none to balance on, and nothing on it is no load", () => {
    expect(anyBalance({ length: 1, supports: [0.5], points: [{ at: 0.5, load: 1 }] }).still).toBe(false);
    expect(anyBalance({ length: 1, supports: [0, 1] }).still).toBe(false);
  });
});

test("a reaction is the lever of the other hang", () => {
  // Pair 1, 3 of the mixed bar: 165 lb and 95 lb.
  expect(balanceReaction.compute({ W: 260, xm: 84 / 13, xk: 5, xo: 9 })).toBeCloseTo(165, 9);
  expect(balanceReaction.compute({ W: 260, xm: 84 / 13, xk: 9, xo: 5 })).toBeCloseTo(95, 9);
});

describe("a lost hang", () => {
  const states = (beam: Beam): readonly boolean[] => beam.supports.map((_, lost) => lostHang(beam, lost).tips);
  test("two hangs tip whichever goes", () => expect(states(uniform(2))).toEqual([true, true]));
  test("three with the load over the middle one: an end lost is balanced, which is no hold; the middle lost holds", () =>
    expect(states(uniform(3))).toEqual([true, false, true]));
  test("four and more hold", () => {
    for (const n of [4, 5, 6]) expect(states(uniform(n))).toEqual(Array(n).fill(false));
  });
  const left = (n: number, lost: number): readonly number[] => {
    const found = lostHang(uniform(n), lost);
    return found.tips ? [] : found.after.reactions;
  };
  const peak = (n: number, lost: number): number => {
    const before = hangBeam(uniform(n));
    if (!before.stable) return Number.NaN;
    const R2 = left(n, lost);
    const peaks = R2.map((each, hang) => suddenPeak.compute({ R1: before.reactions[hang]!, R2: each }));
    return Math.max(...peaks.filter((_, hang) => hang !== lost));
  };
  for (const [n, lost, level, printed] of [
    [3, 1, [1 / 2, 0, 1 / 2], 13 / 16],
    [4, 0, [0, 2 / 3, 1 / 6, 1 / 6], 29 / 30],
    [4, 1, [13 / 48, 0, 11 / 16, 1 / 24], 121 / 120],
    [5, 0, [0, 61 / 120, 3 / 40, 13 / 40, 11 / 120], 307 / 420],
    [5, 1, [75 / 368, 0, 93 / 184, 4 / 23, 43 / 368], 1003 / 1288],
    [6, 0, [0, 227 / 560, 19 / 280, 8 / 35, 61 / 280, 9 / 112], 3109 / 5320],
  ] as const) {
    reference({
      name: `${n} hangs, hang ${lost + 1} lost: what is left, level`,
      source: "three moments, worked in fractions",
      basis: "arithmetic",
      printed: level,
      got: () => left(n, lost),
    });
    reference({
      name: `${n} hangs, hang ${lost + 1} lost: the greatest peak on another`,
      source: "sudden load on a linear spring: 2 × after − before",
      basis: "arithmetic",
      printed,
      got: () => peak(n, lost),
    });
  }
  test("no lost hang loads another more, at rest, than some balance does", () => {
    // Of three hangs an end lost leaves a bar that tips: nothing is carried at rest then.
    const cases = [3, 4, 5, 6].flatMap((n) =>
      Array.from({ length: n }, (_, lost) => lost).flatMap((lost) =>
        [...left(n, lost).entries()].map(([hang, each]) => ({ each, most: worst(uniform(n))[hang] as number })),
      ),
    );
    for (const { each, most } of notEmpty(cases)) expect(each).toBeLessThanOrEqual(most + 1e-9);
  });
});

describe("length errors", () => {
  // 1-1/2 in standard pipe, 20 ft on three hangs, 20 lb/ft: I 0.293 in⁴, E 29,000 ksi.
  const foot = 12;
  const pipe: Beam = {
    length: 20 * foot,
    supports: [0, 10 * foot, 20 * foot],
    uniform: [{ from: 0, to: 20 * foot, perMetre: 20 / foot }],
  };
  const EI = 29e6 * 0.293;
  const mostOf = (within: number, hang: number, stiffness = EI): number => {
    const found = lengthErrors(pipe, stiffness, within);
    return found.still ? Math.max(...found.cases.map(({ reactions }) => reactions[hang]!)) : Number.NaN;
  };
  reference({
    name: "29.5 lb an inch: half an inch either way puts 1 in between ends and middle",
    source: "R = 5wl/4 − 6EI/l³ × d (statics of two equal spans)",
    basis: "arithmetic",
    printed: [250 + 29.5, 75 + 29.5 / 2],
    within: 0.05,
    because: "29.5 lb an inch is printed to a tenth",
    got: () => [mostOf(0.5, 1), mostOf(0.5, 0)],
  });
  reference({
    name: "a hundred times as stiff the middle is slack at 0.085 in: the ends take half each, and the middle all at most",
    source: "slack at d = 5wl⁴/(24EI), all at wl⁴/(8EI) (statics)",
    basis: "arithmetic",
    printed: [200, 400],
    within: 0.5,
    because: "a stiff bar is balanced on the middle hang, and pulled the least bit by an end",
    got: () => [mostOf(0.1, 0, 100 * EI), mostOf(0.1, 1, 100 * EI)],
  });
  test("no error gives the level bar, any error no more than any balance", () => {
    expect(mostOf(0, 1)).toBeCloseTo(250, 6);
    for (const within of [0.01, 0.1, 1, 10])
      for (const hang of [0, 1, 2]) expect(mostOf(within, hang)).toBeLessThanOrEqual(worst(pipe)[hang]! + 1e-6);
  });
  test("every case balances the load, and no rope pushes", () => {
    const beam: Beam = { ...pipe, supports: [0, 60, 150, 240], points: [{ at: 200, load: 90 }] };
    const found = lengthErrors(beam, EI, 0.25);
    expect(found.still && found.cases.length).toBe(17);
    for (const { reactions } of found.still ? found.cases : []) {
      expect(Math.min(...reactions)).toBeGreaterThanOrEqual(0);
      expect(reactions.reduce((a, b) => a + b)).toBeCloseTo(totalLoad(beam), 6);
      const about = reactions.reduce((sum, each, hang) => sum + each * beam.supports[hang]!, 0);
      expect(about / totalLoad(beam)).toBeCloseTo(loadMiddle(beam), 6);
    }
  });
  test("with more hangs than are worth solving every balance counts", () => {
    const many = uniform(9);
    expect(lengthErrors(many, 1, 0.001)).toEqual(anyBalance(many));
  });
});
