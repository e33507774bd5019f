import { momentAt, type SolvedBeam, shearAt } from "./solve.js";
import { type SpanTerms, spanTerms } from "./span-terms.js";

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
