import type { Known } from "../../formula/value.js";
import { printNumber } from "../../quantity/print.js";
import { type BarCase, loadMiddle } from "./balance.js";
import { type Beam, totalLoad } from "./beam.js";
import type { SolvedBeam } from "./solve.js";
import { spanTerms } from "./span-terms.js";
import { type LoadTerm, termsOf } from "./terms.js";
import { threeMomentEquations } from "./three-moment.js";

const POUND = 0.45359237;
const FOOT = 0.3048;

/** Pounds and feet, or kilograms and metres: one pair throughout, so that the arithmetic can be redone. */
interface Scale {
  readonly load: (kilograms: number) => string;
  readonly moment: (kilogramMetres: number, lengths?: number) => string;
  readonly length: (metres: number) => string;
}

const six = (value: number): string => printNumber(value, 6);

const scale = (us: boolean): Scale => ({
  load: (m) => (us ? `${six(m / POUND)} lb` : `${six(m)} kg`),
  moment: (m, lengths = 1) =>
    us
      ? `${six(m / POUND / FOOT ** lengths)} lb·ft${lengths === 2 ? "²" : ""}`
      : `${six(m)} kg·m${lengths === 2 ? "²" : ""}`,
  length: (m) => (us ? `${six(m / FOOT)} ft` : `${six(m)} m`),
});

/** A sum of loads times their arms from a place: `28.6 lb × 5.25 ft + …`. */
const turning = (terms: readonly LoadTerm[], about: number, { load, length }: Scale): string =>
  terms
    .map((each) => ({ ...each, arm: each.at - about }))
    .map(({ load: each, arm }, index) => {
      const sign = arm < 0 ? (index === 0 ? "−" : " − ") : index === 0 ? "" : " + ";
      return `${sign}${load(each)} × ${length(Math.abs(arm))}`;
    })
    .join("");

/** Moments about the other hang: the loads where they are, over the distance between the hangs. */
function lever(solved: SolvedBeam, index: number, units: Scale): string {
  const [left, right] = solved.beam.supports as [number, number];
  const terms = termsOf(solved.beam);
  // Arms count towards this hang, so that its reaction comes out with its sign.
  const about = index === 0 ? right : left;
  const seen = index === 0 ? terms.map((each) => ({ ...each, at: 2 * about - each.at })) : terms;
  return `(${turning(seen, about, units)}) ÷ ${units.length(right - left)}`;
}

/** Load of an overhang, outside the outermost supports; half a support's own point load is not split: it goes whole. */
function beyond(solved: SolvedBeam, index: number): number {
  const { beam } = solved;
  const place = beam.supports[index]!;
  const [first, last] = [index === 0, index === beam.supports.length - 1];
  const [low, high] = [first ? -1 : place, last ? beam.length + 1 : place];
  const spread = (beam.uniform ?? []).reduce(
    (sum, each) => sum + each.perMetre * Math.max(0, Math.min(each.to, high) - Math.max(each.from, low)),
    0,
  );
  return (beam.points ?? []).reduce((sum, { at, load }) => sum + (at >= low && at <= high ? load : 0), spread);
}

function equations(solved: SolvedBeam, names: readonly string[], { moment, length }: Scale): readonly string[] {
  return (threeMomentEquations(solved) ?? []).map(
    ({ support, moments: [a, b, c], left, right }) =>
      `${names[support] ?? `hang ${support + 1}`}: ${moment(a)} × ${length(left.length)} + 2 × ${moment(b)} × (${length(left.length)} + ${length(right.length)}) + ${moment(c)} × ${length(right.length)} = −${moment(left.aboutLeft, 2)} − ${moment(right.aboutRight, 2)}`,
  );
}

function endShears(solved: SolvedBeam, index: number, { load, moment, length }: Scale): string {
  const { supports } = solved.beam;
  const parts: string[] = [];
  const here = solved.supportMoments[index]!;
  for (const [other, side] of [
    [index - 1, "left"],
    [index + 1, "right"],
  ] as const) {
    if (supports[other] === undefined) continue;
    const terms = spanTerms(
      solved.beam,
      Math.min(supports[other]!, supports[index]!),
      Math.max(supports[other]!, supports[index]!),
    );
    const free = side === "left" ? terms.freeRight : terms.freeLeft;
    parts.push(
      `${load(free)} + (${moment(solved.supportMoments[other]!)} − ${moment(here)}) ÷ ${length(terms.length)}`,
    );
  }
  const own = beyond(solved, index);
  if (Math.abs(own) > 1e-9) parts.push(load(own));
  return parts.join(" + ");
}

/** Both balances with every reaction in: what anybody can check of a beam that statics alone do not solve. */
function balance(solved: SolvedBeam, names: readonly string[], units: Scale): readonly string[] {
  const { beam, reactions } = solved;
  const up = reactions.map((each, index) => ({ load: each, at: beam.supports[index]! }));
  const named = up.map(({ load }, index) => `${names[index] ?? `hang ${index + 1}`} ${units.load(load)}`);
  return [
    `check of forces: ${named.join(" + ")} = ${units.load(totalLoad(beam))}, all that hangs`,
    `check of moments about the left end: ${turning(up, 0, units)} = ${turning(termsOf(beam), 0, units)}`,
  ];
}

/**
 * What the symbols of the three-moment working stand for. The solver works by the stiffness method; its moments have to
 * satisfy these equations, which is how they can be checked by hand.
 */
export const THREE_MOMENT_WORDS =
  "M is the moment in the bar over a hang, negative where the bar is bent down beyond it on both sides; L1 and L2 are the spans left and right of an inner hang. A is the area of the moment diagram a span would have as a beam of its own, a1 the distance of its middle from the left end of the left span, b2 that from the right end of the right span. The free reaction is what the span would put on the hang as a beam of its own; what overhangs an outermost hang is added to it";

/**
 * The reaction of one support in words and numbers: moments about the other hang for two; three moments, and both
 * balances to check them by, for more. Loads in kg.
 */
export function reactionWorking(solved: SolvedBeam, index: number, us: boolean, names: readonly string[] = []): string {
  const units = scale(us);
  if (solved.beam.supports.length === 2) return lever(solved, index, units);
  // The checks come before the answer, so that the line ends in what it gives.
  return [
    ...equations(solved, names, units),
    ...balance(solved, names, units),
    `R = ${endShears(solved, index, units)}`,
  ].join("; ");
}

/** Names of the taut hangs from the left, and in which case they are: `with H2 slack: `. */
export interface HangWords {
  readonly names: readonly string[];
  readonly when: string;
}

/** The reaction of one taut hang as a value with its working. Loads of the beam have to be kilograms. */
export function reactionValue(
  solved: SolvedBeam,
  index: number,
  inputs: readonly Known[],
  { names, when }: HangWords = { names: [], when: "" },
): Known {
  const two = solved.beam.supports.length === 2;
  const rule = two
    ? "R = Σ(W × arm from the other hang) ÷ distance between the hangs"
    : "M1 × L1 + 2 × M2 × (L1 + L2) + M3 × L2 = −6 × A1 × a1 ÷ L1 − 6 × A2 × b2 ÷ L2 at each inner hang; R = free reaction + (M beside − M here) ÷ L, of each side";
  return {
    known: true,
    value: solved.reactions[index]!,
    kind: "mass",
    origin: {
      from: "step",
      step: {
        formula: rule,
        show: (print) => `${when}${reactionWorking(solved, index, /lb$/u.test(print(1, "mass")), names)}`,
        source: two ? "statics" : "three-moment",
        inputs,
      },
    },
  };
}

/** The place where all that hangs would balance, as a value. Loads of the beam have to be kilograms. */
export function loadMiddleValue(beam: Beam, inputs: readonly Known[]): Known<"length"> {
  const terms = termsOf(beam);
  return {
    known: true,
    value: loadMiddle(beam),
    kind: "length",
    origin: {
      from: "step",
      step: {
        formula: "xm = Σ(W × x) ÷ ΣW, x from the left end",
        show: (print) => {
          const units = scale(/lb$/u.test(print(1, "mass")));
          return `(${turning(terms, 0, units)}) ÷ ${units.load(totalLoad(beam))}`;
        },
        source: "statics",
        inputs,
      },
    },
  };
}

/** The reaction of one hang where ropes are off level, as a value, with what anybody can check of it: both balances. */
export function unlevelReaction(
  { reactions, taut, bent }: BarCase,
  hang: number,
  inputs: readonly Known[],
  names: readonly string[],
): Known<"mass"> {
  return {
    known: true,
    value: reactions[hang]!,
    kind: "mass",
    origin: {
      from: "step",
      step: {
        formula:
          "R = level share + E × I × (what the errors of length bend the bar by), hangs that would push left out",
        show: (print) => {
          const units = scale(/lb$/u.test(print(1, "mass")));
          const named = taut.map((each) => names[each] ?? `hang ${each + 1}`);
          const up = taut.map((each, index) => ({ load: reactions[each]!, at: bent.beam.supports[index]! }));
          const forces = up.map(({ load }, index) => `${named[index]} ${units.load(load)}`).join(" + ");
          return `check of forces: ${forces} = ${units.load(totalLoad(bent.beam))}, all that hangs; check of moments about the left end: ${turning(up, 0, units)} = ${turning(termsOf(bent.beam), 0, units)}; ${names[hang] ?? `hang ${hang + 1}`}: ${units.load(reactions[hang]!)}`;
        },
        source: "three-moment",
        inputs,
      },
    },
  };
}

/** The greatest shear of several cases, as a mass. Loads of the beam have to be kilograms. */
export function shearValue(cases: readonly BarCase[], inputs: readonly Known[]): Known<"mass"> {
  const worst = cases.reduce((best, each) =>
    each.bent.greatestShear.value > best.bent.greatestShear.value ? each : best,
  );
  const { at, value } = worst.bent.greatestShear;
  return {
    known: true,
    value,
    kind: "mass",
    origin: {
      from: "step",
      step: {
        formula: "V = the greatest of |ΣR − ΣW| on either side of a place",
        show: (print) => {
          const units = scale(/lb$/u.test(print(1, "mass")));
          return `${units.load(value)} at ${units.length(at)} from the left end`;
        },
        source: "statics",
        inputs,
      },
    },
  };
}
