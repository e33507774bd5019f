import type { Method } from "../../register/method.js";
import { anyBalance, caseOn, heaviestCase, loadMiddle, mostBentCase } from "./balance.js";
import type { Beam } from "./beam.js";
import { bentUnder } from "./bent.js";
import { lengthErrors } from "./length-error.js";
import { lostHang } from "./lost.js";
import { momentExtremes, stretchesUnder } from "./solve.js";
import { loadMiddleValue, shearValue, unlevelReaction } from "./working.js";

const bar = "a straight bar on upright ropes that pull and never push, loads fixed on it, at rest";
const units = "loads and m → loads, load × m";

/** Three hangs of a bar of 2 under 1 a metre: all of it on the middle one, or half on each outer one. */
const three: Beam = { length: 2, supports: [0, 1, 2], uniform: [{ from: 0, to: 2, perMetre: 1 }] };
/** Four hangs, alike spaced, under 1 in all. */
const four = (): Beam => ({ length: 3, supports: [0, 1, 2, 3], uniform: [{ from: 0, to: 3, perMetre: 1 / 3 }] });
const casesOf = (beam: Beam) => {
  const found = anyBalance(beam);
  return found.still ? found.cases : [];
};
const worstOf = (beam: Beam): readonly number[] =>
  beam.supports.map((_, hang) => heaviestCase(casesOf(beam), hang).reactions[hang]!);

export const balanceMethods: readonly Method[] = [
  {
    name: "anyBalance",
    title: "Every way a bar can hang, whatever its stiffness and level",
    of: anyBalance,
    units,
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "three hangs alike, 1 a metre over 2 m: worst of each",
      got: () => worstOf(three),
      gives: [1, 2, 1],
      from: "the pair of outer hangs shares the load, the middle one may take it all (by hand)",
    },
  },
  {
    name: "heaviestCase",
    title: "The case in which a hang carries most",
    of: heaviestCase,
    units,
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "four hangs alike under 1: worst of each",
      got: () => worstOf(four()),
      gives: [1 / 2, 3 / 4, 3 / 4, 1 / 2],
      from: "the partner is the outer hang of the other side: 1.5 ÷ 2 for an inner one (by hand)",
    },
  },
  {
    name: "mostBentCase",
    title: "The case in which a bar is bent most",
    of: mostBentCase,
    units,
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "three hangs alike, 1 a metre over 2 m, on the outer two or on the middle one",
      got: () => {
        const { bent } = mostBentCase(casesOf(three));
        return Math.max(bent.greatestMoment.value, -bent.leastMoment.value);
      },
      gives: 0.5,
      from: "wL² ÷ 8 sagging on the outer two, w(L ÷ 2)² ÷ 2 hogging on the middle one: the same",
    },
  },
  {
    name: "loadMiddle",
    title: "Place where all that hangs would balance",
    of: loadMiddle,
    units: "loads and m → m",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "10 lb/ft over 16 ft and 100 lb at 4 ft",
      got: () =>
        loadMiddle({
          length: 16,
          supports: [1, 15],
          uniform: [{ from: 0, to: 16, perMetre: 10 }],
          points: [{ at: 4, load: 100 }],
        }),
      gives: 84 / 13,
      from: "(160 × 8 + 100 × 4) ÷ 260",
    },
  },
  {
    name: "loadMiddleValue",
    title: "The same place with its working",
    of: loadMiddleValue,
    units: "kg and m → m",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "2 m at 1 a metre",
      got: () => loadMiddleValue(three, []).value,
      gives: 1,
      from: "in its middle",
    },
  },
  {
    name: "unlevelReaction",
    title: "What a hang carries with the ropes off level, with both balances",
    of: unlevelReaction,
    units: "kg and m → kg",
    sources: ["three-moment"],
    validity: "as lengthErrors",
    example: {
      asks: "two spans of 1 m at 1 a metre, EI 1, the middle 2 mm high of the ends",
      got: () => {
        const found = lengthErrors(three, 1, 0.001);
        return found.still ? unlevelReaction(heaviestCase(found.cases, 1), 1, [], []).value : undefined;
      },
      gives: 1.262,
      within: 1e-9,
      from: "5wl ÷ 4 + 6EI ÷ l³ × 2 mm (statics)",
    },
  },
  {
    name: "shearValue",
    title: "Greatest shear of several cases",
    of: shearValue,
    units: "kg and m → kg",
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "2 m at 1 a metre on three hangs, in every balance",
      got: () => shearValue(casesOf(three), []).value,
      gives: 1,
      from: "wL ÷ 2, on the outer two or on the middle one",
    },
  },
  {
    name: "caseOn",
    title: "A bar on some of its hangs",
    of: caseOn,
    units,
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "2 m at 1 a metre on the outer two of three hangs: sag",
      got: () => caseOn(three, [1, 0, 1], [0, 2]).bent.greatestMoment.value,
      gives: 0.5,
      from: "wL² ÷ 8",
    },
  },
  {
    name: "bentUnder",
    title: "Moments and shears of a bar whose reactions are known",
    of: bentUnder,
    units,
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "2 m at 1 a metre, all of it on the middle: hogging, and shear beside it",
      got: () => {
        const bent = bentUnder({ ...three, supports: [1] }, [2]);
        return [bent.leastMoment.value, bent.greatestShear.value];
      },
      gives: [-0.5, 1],
      from: "w(L ÷ 2)² ÷ 2 and wL ÷ 2",
    },
  },
  {
    name: "stretchesUnder",
    title: "Stretches of a beam under known reactions",
    of: stretchesUnder,
    units,
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "2 m at 1 a metre on three hangs with 3/8, 5/4, 3/8: moment over the middle",
      got: () => stretchesUnder(three, [3 / 8, 5 / 4, 3 / 8]).over[1],
      gives: -1 / 8,
      from: "two equal spans: −wl² ÷ 8 over the middle support",
    },
  },
  {
    name: "momentExtremes",
    title: "Most sagging and most hogging moment",
    of: momentExtremes,
    units,
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "the same: greatest and least",
      got: () => {
        const { greatestMoment, leastMoment } = momentExtremes(stretchesUnder(three, [3 / 8, 5 / 4, 3 / 8]).stretches);
        return [greatestMoment.value, leastMoment.value];
      },
      gives: [9 / 128, -1 / 8],
      from: "two equal spans: 9wl² ÷ 128 in the span, −wl² ÷ 8 over the support",
    },
  },
  {
    name: "lengthErrors",
    title: "Worst of a bar whose ropes are off level by as much as is written",
    of: lengthErrors,
    units: "loads and m; E × I in load × m²; m → loads",
    sources: ["three-moment", "statics"],
    validity: "constant EI, ropes that do not stretch, up to eight hangs; else every balance counts",
    example: {
      asks: "two spans of 1 m at 1 a metre, EI 1, 1 mm either way: the middle hang at most",
      got: () => {
        const found = lengthErrors(three, 1, 0.001);
        return found.still ? heaviestCase(found.cases, 1).reactions[1] : undefined;
      },
      // 5/4 − 6EI/l³ × d with the ends 2 mm lower: 1.25 + 0.012.
      gives: 1.262,
      within: 1e-9,
      from: "R = 5wl ÷ 4 − 6EI ÷ l³ × d, d the middle's place below the ends: −2 mm (statics)",
    },
  },
  {
    name: "lostHang",
    title: "What becomes of a bar that loses one hang",
    of: lostHang,
    units,
    sources: ["statics"],
    validity: bar,
    example: {
      asks: "four hangs alike under 1, the second lost: what is left, level",
      got: () => {
        const found = lostHang(four(), 1);
        return found.tips ? undefined : found.after.reactions;
      },
      gives: [13 / 48, 0, 11 / 16, 1 / 24],
      within: 1e-9,
      from: "two spans of 2 and 1 under 1/3 a metre: three moments, M = −(8 + 1) ÷ (8 × 3) ÷ 3",
    },
  },
];
