import type { Known } from "../../formula/value.js";
import { printNumber } from "../../quantity/print.js";
import { loadMomentAbout, totalLoad } from "./beam.js";
import type { SolvedBeam } from "./solve.js";
import { spanTerms } from "./span-terms.js";
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

function lever(solved: SolvedBeam, index: number, { load, moment, length }: Scale): string {
  const [left, right] = solved.beam.supports as [number, number];
  const about = index === 0 ? right : left;
  const turning = Math.abs(loadMomentAbout(solved.beam, about));
  const arm = turning / Math.abs(totalLoad(solved.beam) || 1);
  return `load ${load(totalLoad(solved.beam))} × ${length(arm)} from the other hang = ${moment(turning)}; ÷ ${length(right - left)} between the hangs = ${load(solved.reactions[index]!)}`;
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

function equations(solved: SolvedBeam, { moment, length }: Scale): readonly string[] {
  return (threeMomentEquations(solved) ?? []).map(
    ({ support, moments: [a, b, c], left, right }) =>
      `hang ${support + 1}: ${moment(a)} × ${length(left.length)} + 2 × ${moment(b)} × (${length(left.length)} + ${length(right.length)}) + ${moment(c)} × ${length(right.length)} = −${moment(left.aboutLeft, 2)} − ${moment(right.aboutRight, 2)}`,
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
  return `${parts.join(" + ")} = ${load(solved.reactions[index]!)}`;
}

/** The reaction of one support in words and numbers: the lever rule for two, three moments for more. Loads in kg. */
export function reactionWorking(solved: SolvedBeam, index: number, us: boolean): string {
  const units = scale(us);
  if (solved.beam.supports.length === 2) return lever(solved, index, units);
  return [...equations(solved, units), endShears(solved, index, units)].join("; ");
}

/** The reaction of one taut hang as a value with its working. Loads of the beam have to be kilograms. */
export function reactionValue(solved: SolvedBeam, index: number, inputs: readonly Known[]): Known {
  const two = solved.beam.supports.length === 2;
  return {
    known: true,
    value: solved.reactions[index]!,
    kind: "mass",
    origin: {
      from: "step",
      step: {
        formula: two
          ? "R = ΣW × arm ÷ span"
          : "M1 × L1 + 2 × M2 × (L1 + L2) + M3 × L2 = −6A1a1 ÷ L1 − 6A2b2 ÷ L2; R = free reaction + (M beside − M here) ÷ L, each side",
        show: (print) => reactionWorking(solved, index, /lb$/u.test(print(1, "mass"))),
        source: two ? "statics" : "three-moment",
        inputs,
      },
    },
  };
}
