import type { Beam } from "./beam.js";
import { momentAt, type SolvedBeam, shearAt } from "./solve.js";

/** What one span puts into the equation of the support at its left or right: 6 A a ÷ L of the free moment diagram. */
export interface SpanTerms {
  readonly length: number;
  /** 6 A a ÷ L taken about its left end: belongs to the support at its right. */
  readonly aboutLeft: number;
  /** 6 A b ÷ L taken about its right end: belongs to the support at its left. */
  readonly aboutRight: number;
  /** Reactions of the span as if it were simply supported. */
  readonly freeLeft: number;
  readonly freeRight: number;
}

/** Handbook load terms of a uniform load between d and e, measured from the end the moment is taken about. */
const uniformTerm = (w: number, d: number, e: number, l: number): number =>
  (w / (4 * l)) * (e ** 2 - d ** 2) * (2 * l ** 2 - e ** 2 - d ** 2);
const pointTerm = (p: number, a: number, l: number): number => (p * a * (l ** 2 - a ** 2)) / l;

export function spanTerms(beam: Beam, left: number, right: number): SpanTerms {
  const length = right - left;
  let [aboutLeft, aboutRight, freeRight, total] = [0, 0, 0, 0];
  for (const each of beam.uniform ?? []) {
    const [d, e] = [Math.max(each.from, left) - left, Math.min(each.to, right) - left];
    if (e <= d) continue;
    aboutLeft += uniformTerm(each.perMetre, d, e, length);
    aboutRight += uniformTerm(each.perMetre, length - e, length - d, length);
    total += each.perMetre * (e - d);
    freeRight += (each.perMetre * (e ** 2 - d ** 2)) / (2 * length);
  }
  for (const { at, load } of beam.points ?? []) {
    const a = at - left;
    if (a <= 0 || a >= length) continue;
    aboutLeft += pointTerm(load, a, length);
    aboutRight += pointTerm(load, length - a, length);
    total += load;
    freeRight += (load * a) / length;
  }
  return { length, aboutLeft, aboutRight, freeRight, freeLeft: total - freeRight };
}

/** The equation of one inner support: M1 L1 + 2 M2 (L1 + L2) + M3 L2 = −(left term) − (right term). */
export interface ThreeMomentEquation {
  readonly support: number;
  readonly moments: readonly [number, number, number];
  readonly left: SpanTerms;
  readonly right: SpanTerms;
  /** Left side minus right side: zero when the moments are right. */
  readonly remains: number;
}

/** Every inner support's equation with the solved moments put in. Couples are not covered: undefined then. */
export function threeMomentEquations(solved: SolvedBeam): readonly ThreeMomentEquation[] | undefined {
  if ((solved.beam.couples ?? []).length > 0) return undefined;
  const { supports } = solved.beam;
  return supports.slice(1, -1).map((place, index) => {
    const moments = solved.supportMoments.slice(index, index + 3) as [number, number, number];
    const left = spanTerms(solved.beam, supports[index]!, place);
    const right = spanTerms(solved.beam, place, supports[index + 2]!);
    const sides = moments[0] * left.length + 2 * moments[1] * (left.length + right.length) + moments[2] * right.length;
    return { support: index + 1, moments, left, right, remains: sides + left.aboutLeft + right.aboutRight };
  });
}

/** Shear just left and right of a support; their difference is its reaction. */
export function shearsBeside(solved: SolvedBeam, support: number): readonly [number, number] {
  const place = solved.beam.supports[support]!;
  const before = solved.stretches.find((each) => Math.abs(each.to - place) < 1e-5);
  const after = solved.stretches.find((each) => Math.abs(each.from - place) < 1e-5);
  const right = after ? after.shear : 0;
  return [before ? shearAt(before, before.to) : 0, right];
}

/** Moment at any place on the beam. */
export const beamMomentAt = (solved: SolvedBeam, x: number): number =>
  momentAt(solved.stretches.find((each) => x <= each.to) ?? solved.stretches.at(-1)!, x);
