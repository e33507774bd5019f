import { inverse, Matrix } from "ml-matrix";
import { anyBalance, type Balances, type BarCase, caseOn } from "./balance.js";
import type { Beam } from "./beam.js";
import { solveBeam } from "./solve.js";

/** More hangs make more sets of signs than are worth solving: their worst is that of any balance, the safe side. */
const MOST_HANGS = 8;

/** Force and moment at both ends of a piece of beam for a unit of each displacement, EI = 1: the textbook matrix. */
const pieceOf = (l: number): readonly (readonly number[])[] => [
  [12 / l ** 3, 6 / l ** 2, -12 / l ** 3, 6 / l ** 2],
  [6 / l ** 2, 4 / l, -6 / l ** 2, 2 / l],
  [-12 / l ** 3, -6 / l ** 2, 12 / l ** 3, -6 / l ** 2],
  [6 / l ** 2, 2 / l, -6 / l ** 2, 4 / l],
];

/** What reaction of each support a unit rise of each asks for, EI = 1: the turns of the supports are worked out of it. */
function stiffnessOf(supports: readonly number[]): Matrix {
  const n = supports.length;
  const whole = Matrix.zeros(2 * n, 2 * n);
  for (let node = 0; node + 1 < n; node += 1) {
    const piece = pieceOf(supports[node + 1]! - supports[node]!);
    for (let i = 0; i < 4; i += 1)
      for (let j = 0; j < 4; j += 1)
        whole.set(2 * node + i, 2 * node + j, whole.get(2 * node + i, 2 * node + j) + piece[i]![j]!);
  }
  const rises = supports.map((_, index) => 2 * index);
  const turns = rises.map((row) => row + 1);
  const across = whole.selection(rises, turns);
  const turned = across.mmul(inverse(whole.selection(turns, turns))).mmul(across.transpose());
  return Matrix.sub(whole.selection(rises, rises), turned);
}

/** Reactions of ropes that only pull when their ends are off level; undefined when no set of taut hangs is found. */
function pulled(level: readonly number[], stiffness: Matrix, errors: readonly number[]): readonly number[] | undefined {
  const n = level.length;
  const near = 1e-9 * level.reduce((sum, each) => sum + Math.abs(each), 0);
  const slack = new Set<number>();
  for (let round = 0; round < 4 * n + 4; round += 1) {
    const free = [...slack].sort((a, b) => a - b);
    const rise = [...errors];
    if (free.length > 0) {
      // A slack hang's end of the bar is where its reaction comes out as nothing.
      const wanted = free.map((row) => {
        const own = errors.reduce((sum, each, column) => sum + stiffness.get(row, column) * each, 0);
        return -(level[row]! + own);
      });
      const gaps = inverse(stiffness.selection(free, free)).mmul(Matrix.columnVector(wanted));
      free.forEach((row, index) => {
        rise[row]! += gaps.get(index, 0);
      });
      const tautAgain = free.find((row) => rise[row]! < errors[row]! - 1e-12);
      if (tautAgain !== undefined) {
        slack.delete(tautAgain);
        continue;
      }
    }
    const reactions = level.map((each, row) =>
      slack.has(row) ? 0 : each + rise.reduce((sum, lift, column) => sum + stiffness.get(row, column) * lift, 0),
    );
    const least = reactions.reduce((best, each, index) => (each < reactions[best]! ? index : best), 0);
    if (reactions[least]! >= -near) return reactions.map((each) => (Math.abs(each) <= near ? 0 : each));
    if (n - slack.size <= 2) return undefined;
    slack.add(least);
  }
  return undefined;
}

/** Every choice of plus or minus for n ropes. */
const signs = (n: number): readonly (readonly number[])[] =>
  Array.from({ length: 2 ** n }, (_, bits) => Array.from({ length: n }, (__, index) => ((bits >> index) & 1 ? 1 : -1)));

/**
 * A bar of known stiffness on ropes that only pull, each of which may be off level by as much as `within`, either way:
 * all sets of signs, and the level bar. Ropes are taken not to stretch, which shares the load less evenly: the safe
 * side. Where a set has no solution, or with more than eight hangs, every balance counts instead.
 * @param stiffness E × I in the unit of the loads × m²
 * @param within metres
 */
export function lengthErrors(beam: Beam, stiffness: number, within: number): Balances {
  const any = anyBalance(beam);
  if (!any.still || beam.supports.length < 3 || beam.supports.length > MOST_HANGS) return any;
  const level = solveBeam(beam).reactions;
  const held = Matrix.mul(stiffnessOf(beam.supports), stiffness);
  const cases: BarCase[] = [];
  for (const errors of [
    beam.supports.map(() => 0),
    ...signs(beam.supports.length).map((set) => set.map((s) => s * within)),
  ]) {
    const reactions = pulled(level, held, errors);
    if (!reactions) return any;
    const taut = reactions.flatMap((each, index) => (each > 0 ? [index] : []));
    cases.push({ ...caseOn(beam, reactions, taut), errors });
  }
  return { still: true, cases };
}
