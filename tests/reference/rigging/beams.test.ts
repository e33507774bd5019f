import { type Beam, deepest, hangBeam, solveBeam } from "@plumbmark/calc";
import { describe } from "vitest";
import { reference } from "../check.js";

const spans = (lengths: readonly number[]): number[] =>
  lengths.reduce<number[]>((places, l) => places.concat(places.at(-1)! + l), [0]);

/** Every span under 1 per metre, or only the spans whose load is given. */
function continuous(lengths: readonly number[], loads: readonly number[] = lengths.map(() => 1)): Beam {
  const supports = spans(lengths);
  const uniform = loads.map((perMetre, i) => ({ from: supports[i]!, to: supports[i + 1]!, perMetre }));
  return { length: supports.at(-1)!, supports, uniform };
}

const AISC = "AISC Steel Construction Manual, Table 3-23";

describe("single spans", () => {
  const even = solveBeam(continuous([1]));
  reference({
    name: "uniform: reactions and moment",
    source: `${AISC} case 1`,
    basis: "published",
    printed: [0.5, 0.5, 0.125, 0.5],
    within: 1e-9,
    got: () => [...even.reactions, even.greatestMoment.value, even.greatestMoment.at],
  });
  reference({
    name: "uniform: 5wl⁴/384EI",
    source: `${AISC} case 1`,
    basis: "published",
    printed: 5 / 384,
    within: 1e-9,
    got: () => deepest(even).value,
  });
  const middle = solveBeam({ length: 60, supports: [0, 60], points: [{ at: 30, load: 200 }] });
  reference({
    name: "200 lb at mid span of 60 in",
    source: `${AISC} case 7`,
    basis: "published",
    printed: [100, 100, 3000],
    within: 1e-6,
    got: () => [...middle.reactions, middle.greatestMoment.value],
  });
  reference({
    name: "Pl³/48EI",
    source: `${AISC} case 7`,
    basis: "published",
    printed: (200 * 60 ** 3) / 48,
    within: 1e-3,
    because: "a millionth of the value",
    got: () => deepest(middle).value,
  });
  reference({
    name: "100 lb at 17.5 ft and 200 lb at 5 ft from the right hang, 20 ft",
    source: "D. Hall, Rigging Math (Made Simple), lesson 9",
    basis: "published",
    printed: [137.5, 162.5],
    within: 0.05,
    got: () =>
      solveBeam({
        length: 20,
        supports: [0, 20],
        points: [
          { at: 2.5, load: 100 },
          { at: 15, load: 200 },
        ],
      }).reactions,
  });
});

describe("overhangs", () => {
  const l10a3 = solveBeam({ length: 13, supports: [0, 10], uniform: [{ from: 0, to: 13, perMetre: 1 }] });
  reference({
    name: "uniform over span 10 and overhang 3",
    source: "piping-designer.com 2378 (AISC case 24 from memory)",
    basis: "published",
    printed: [4.55, 8.45, -4.5],
    within: 1e-9,
    got: () => [...l10a3.reactions, l10a3.supportMoments[1]!],
  });
  reference({
    name: "its moment between the supports and where",
    source: "piping-designer.com 2378",
    basis: "published",
    printed: [(13 ** 2 * 7 ** 2) / 800, 5 * (1 - 0.09)],
    within: 1e-9,
    got: () => [l10a3.greatestMoment.value, l10a3.greatestMoment.at],
  });
  const tip = solveBeam({ length: 13, supports: [0, 10], uniform: [{ from: 10, to: 13, perMetre: 1 }] });
  reference({
    name: "uniform on the overhang only",
    source: "piping-designer.com 2382 (AISC case 25 from memory)",
    basis: "published",
    printed: [-0.45, 3.45, -4.5, (27 * 49) / 24],
    within: 1e-9,
    got: () => [...tip.reactions, tip.leastMoment.value, deepest(tip).value],
  });
  const end = solveBeam({ length: 13, supports: [0, 10], points: [{ at: 13, load: 2 }] });
  reference({
    name: "2 at the end of an overhang of 3",
    source: "tquigley.com T310 (AISC case 26 from memory)",
    basis: "published",
    printed: [-0.6, 2.6, -6, (2 * 9 * 13) / 3],
    within: 1e-9,
    got: () => [...end.reactions, end.leastMoment.value, deepest(end).value],
  });
  const both = solveBeam({ length: 16, supports: [2, 12], uniform: [{ from: 0, to: 16, perMetre: 1 }] });
  reference({
    name: "overhangs 2 and 4, span 10",
    source: "piping-designer.com 2379",
    basis: "published",
    printed: [6.4, 9.6, -2, -8, 6.4 * (3.2 - 2)],
    within: 1e-9,
    got: () => [...both.reactions, ...both.supportMoments, both.greatestMoment.value],
  });
});

const HICKS = "T. G. Hicks, Civil Engineering Formulas, Table 2.1, p. 50";
const equal: readonly [number, readonly number[], number][] = [
  [2, [3, 10, 3], 8],
  [3, [4, 11, 11, 4], 10],
  [4, [11, 32, 26, 32, 11], 28],
  [5, [15, 43, 37, 37, 43, 15], 38],
  [6, [41, 118, 100, 106, 100, 118, 41], 104],
  [7, [56, 161, 137, 143, 143, 137, 161, 56], 142],
];
const moments: Readonly<Record<number, readonly number[]>> = {
  2: [-1 / 8],
  3: [-1 / 10, -1 / 10],
  4: [-3 / 28, -1 / 14, -3 / 28],
  5: [-2 / 19, -3 / 38, -3 / 38, -2 / 19],
  6: [-11 / 104, -8 / 104, -9 / 104, -8 / 104, -11 / 104],
  7: [-15 / 142, -11 / 142, -12 / 142, -12 / 142, -11 / 142, -15 / 142],
};
const largest: Readonly<Record<number, number>> = { 2: 9 / 128, 3: 2 / 25, 4: 121 / 1568, 5: 225 / 2888 };

describe("equal spans, all loaded", () => {
  for (const [count, tops, below] of equal) {
    const solved = solveBeam(continuous(new Array(count).fill(1)));
    reference({
      name: `${count} spans: reactions`,
      source: HICKS,
      basis: "published",
      printed: tops.map((top) => top / below),
      within: 1e-9,
      got: () => solved.reactions,
    });
    reference({
      name: `${count} spans: support moments`,
      source: HICKS,
      basis: "published",
      printed: moments[count]!,
      within: 1e-9,
      got: () => solved.supportMoments.slice(1, -1),
    });
    if (largest[count])
      reference({
        name: `${count} spans: greatest moment`,
        source: HICKS,
        basis: "published",
        printed: largest[count]!,
        within: 1e-9,
        got: () => solved.greatestMoment.value,
      });
  }
  const sag: readonly [number, number][] = [
    [2, (39 + 55 * Math.sqrt(33)) / 65536],
    [3, 0.006884],
    [4, 0.00646],
  ];
  for (const [count, printed] of sag)
    reference({
      name: `${count} spans: deflection`,
      source: "statics; handbook 0.0054, 0.0069, 0.0065 from memory",
      basis: "arithmetic",
      printed,
      within: printed * 0.005,
      because: "0.5 % for the printed digits",
      got: () => deepest(solveBeam(continuous(new Array(count).fill(1)))).value,
    });
});

describe("loads that lift a support", () => {
  reference({
    name: "two spans, one loaded",
    source: "statics (AISC case 29, numbers from memory)",
    basis: "arithmetic",
    printed: [7 / 16, 5 / 8, -1 / 16],
    within: 1e-9,
    got: () => solveBeam(continuous([1, 1], [1, 0])).reactions,
  });
  const points = (places: readonly number[], count: number): readonly number[] =>
    solveBeam({
      length: count,
      supports: spans(new Array(count).fill(1)),
      points: places.map((at) => ({ at, load: 1 })),
    }).reactions;
  reference({
    name: "two spans, P mid of one",
    source: "statics (AISC case 30, numbers from memory)",
    basis: "arithmetic",
    printed: [13 / 32, 11 / 16, -3 / 32],
    within: 1e-9,
    got: () => points([0.5], 2),
  });
  reference({
    name: "two spans, P mid of both",
    source: "statics",
    basis: "arithmetic",
    printed: [5 / 16, 11 / 8, 5 / 16],
    within: 1e-9,
    got: () => points([0.5, 1.5], 2),
  });
  reference({
    name: "three spans, P mid of all",
    source: "statics",
    basis: "arithmetic",
    printed: [7 / 20, 23 / 20, 23 / 20, 7 / 20],
    within: 1e-9,
    got: () => points([0.5, 1.5, 2.5], 3),
  });
  const hung = hangBeam(continuous([1, 1], [1, 0]));
  reference({
    name: "the lifted hang is slack and the other two share by the lever",
    source: "statics",
    basis: "arithmetic",
    printed: [0.5, 0.5, 0],
    within: 1e-9,
    got: () => (hung.stable ? hung.reactions : []),
  });
  reference({
    name: "a load past the last hang tips the bar",
    source: "statics",
    basis: "arithmetic",
    printed: false,
    got: () => hangBeam({ length: 13, supports: [0, 10], points: [{ at: 13, load: 2 }] }).stable,
  });
});

describe("worked examples", () => {
  reference({
    name: "unequal spans 3 and 5",
    source: "AF&PA/AWC Design Aid 6 (2005), figure 31 (formula from memory)",
    basis: "arithmetic",
    printed: [17 / 24, 79 / 15, 81 / 40, -19 / 8],
    within: 1e-9,
    got: () => {
      const s = solveBeam(continuous([3, 5]));
      return [...s.reactions, s.supportMoments[1]!];
    },
  });
  const p1: readonly [number, number, readonly number[]][] = [
    [1, 1, [-1 / 10, 11 / 10, 11 / 10, -1 / 10]],
    [2, 1, [-3 / 92, 91 / 92, 53 / 46, -5 / 46]],
    [1.5, 0.5, [-1 / 21, 41 / 42, 19 / 14, -2 / 7]],
  ];
  for (const [a, b, printed] of p1) {
    const solved = solveBeam(continuous([2 * a, 2, 2 * b], [0, 1, 0]));
    const below = 4 * (1 + a) * (1 + b) - 1;
    reference({
      name: `middle span only, a=${a} b=${b}: reactions`,
      source: "mathalino.com problem 822",
      basis: "arithmetic",
      printed,
      within: 1e-9,
      got: () => solved.reactions,
    });
    reference({
      name: `middle span only, a=${a} b=${b}: moments`,
      source: "mathalino.com problem 822",
      basis: "published",
      printed: [-(1 + 2 * b) / below, -(1 + 2 * a) / below],
      within: 1e-9,
      got: () => solved.supportMoments.slice(1, 3),
    });
  }
  const x = 1.3194;
  reference({
    name: "overhangs that make all three reactions equal",
    source: "mathalino.com three-moment situation",
    basis: "published",
    printed: [863.88, 863.88, 863.88],
    within: 0.1,
    because: "x is given to 0.1 mm",
    got: () =>
      solveBeam({
        length: 6 + 2 * x,
        supports: [x, x + 3, x + 6],
        uniform: [{ from: 0, to: 6 + 2 * x, perMetre: 300 }],
      }).reactions,
  });
  const p3 = solveBeam({ ...continuous([3, 3], [40, 0]), points: [{ at: 4.5, load: 120 }] });
  reference({
    name: "40 kN/m on AB, 120 kN mid BC",
    source: "NPTEL 105101085, Module 5 Lecture 4, example 5.22",
    basis: "published",
    printed: [41.25, 157.5, 41.25, -56.25],
    within: 0.01,
    got: () => [...p3.reactions, p3.supportMoments[1]!],
  });
  const p4 = solveBeam({
    length: 11,
    supports: [0, 4, 8, 11],
    uniform: [{ from: 4, to: 8, perMetre: 2 }],
    points: [{ at: 9, load: 6 }],
    couples: [{ at: 2, moment: 8 }],
  });
  reference({
    name: "couple, uniform and point on spans 4, 4, 3",
    source: "mathalino.com problem 826",
    basis: "published",
    printed: [-22 / 13, -42 / 13],
    within: 1e-3,
    got: () => p4.supportMoments.slice(1, 3),
  });
  const p5 = solveBeam({ ...continuous([4, 2, 4], [2, 0, 2]), points: [{ at: 5, load: 10 }] });
  reference({
    name: "spans 4, 2, 4",
    source: "mathalino.com problem 824 (inputs published)",
    basis: "arithmetic",
    printed: [177 / 56, 551 / 56, 551 / 56, 177 / 56],
    within: 0.001,
    got: () => p5.reactions,
  });
});

describe("three and four hangs", () => {
  const share = (hangs: number): readonly number[] => {
    const places = Array.from({ length: hangs }, (_, i) => (i * 12) / (hangs - 1));
    return solveBeam({ length: 12, supports: places, uniform: [{ from: 0, to: 12, perMetre: 1300 / 12 }] }).reactions;
  };
  reference({
    name: "1300 kg on 3",
    source: "hipswing.co.uk, Weighting on truss",
    basis: "published",
    printed: [247, 806, 247],
    within: 19.5,
    because: "printed from whole per cents: 1.5 % of the total",
    got: () => share(3),
  });
  reference({
    name: "1300 kg on 3, unrounded",
    source: "statics",
    basis: "arithmetic",
    printed: [243.75, 812.5, 243.75],
    within: 1e-6,
    got: () => share(3),
  });
  reference({
    name: "1300 kg on 4",
    source: "hipswing.co.uk, Weighting on truss",
    basis: "published",
    printed: [169, 481, 481, 169],
    within: 19.5,
    because: "printed from whole per cents: 1.5 % of the total",
    got: () => share(4),
  });
  const uneven = hangBeam(continuous([1, 1], [1, 0]), [2]);
  reference({
    name: "two hangs with the middle of the load between them hang still, right under one they do not",
    source: "statics",
    basis: "arithmetic",
    printed: "still, balanced",
    got: () =>
      [uneven, hangBeam({ length: 4, supports: [0, 2], points: [{ at: 2, load: 5 }] })]
        .map((each) => (each.stable ? (each.neutral ? "balanced" : "still") : "tips"))
        .join(", "),
  });
});
