import { Matrix, solve } from "ml-matrix";
import { type Beam, loadMomentAbout, SAME_PLACE, samePlace, totalLoad } from "./beam.js";
import { spanTerms } from "./span-terms.js";

/** The places where something begins, ends, acts or supports: between two of them the load is uniform. */
export function nodesOf(beam: Beam): readonly number[] {
  const places = [
    0,
    beam.length,
    ...beam.supports,
    ...(beam.uniform ?? []).flatMap((each) => [each.from, each.to]),
    ...(beam.points ?? []).map((each) => each.at),
    ...(beam.couples ?? []).map((each) => each.at),
  ].sort((a, b) => a - b);
  return places.filter((place, index) => index === 0 || place - places[index - 1]! >= SAME_PLACE);
}

/** Load per metre between two neighbouring nodes. */
export const loadBetween = (beam: Beam, left: number, right: number): number => {
  const middle = (left + right) / 2;
  return (beam.uniform ?? []).reduce(
    (sum, { from, to, perMetre }) => sum + (middle > from && middle < to ? perMetre : 0),
    0,
  );
};

/**
 * What turns of one at either end of a piece ask of it with EI = 1: force and moment at its left end, then at its right.
 * These are the textbook matrix's columns of the turns; the ends do not move, so the others are not wanted.
 */
function pieceStiffness(l: number): readonly (readonly [number, number])[] {
  const [b, c, d] = [6 / l ** 2, 4 / l, 2 / l];
  return [
    [b, b],
    [c, d],
    [-b, -b],
    [d, c],
  ];
}

/** What stands outside the outermost supports, or right on a support: it acts on that support directly. */
function directLoads(beam: Beam, support: number): { force: number; moment: number } {
  const place = beam.supports[support]!;
  const last = beam.supports.length - 1;
  const here = (at: number): boolean =>
    samePlace(at, place) || (support === 0 && at < place) || (support === last && at > place);
  const cut = (beam.uniform ?? []).flatMap((each) => [
    ...(support === 0 ? [{ ...each, to: Math.min(each.to, place) }] : []),
    ...(support === last ? [{ ...each, from: Math.max(each.from, place) }] : []),
  ]);
  const apart: Beam = {
    ...beam,
    uniform: cut.filter((each) => each.to > each.from),
    points: (beam.points ?? []).filter((each) => here(each.at)),
    couples: (beam.couples ?? []).filter((each) => here(each.at)),
  };
  return { force: totalLoad(apart), moment: loadMomentAbout(apart, place) };
}

/**
 * Nodes stand on the supports only: loads close together would make pieces too short to keep the digits. Each has two
 * rows, force and moment, and one column, its turn.
 */
function assemble(beam: Beam): { stiffness: Matrix; loads: number[] } {
  const size = beam.supports.length * 2;
  const stiffness = Matrix.zeros(size, beam.supports.length);
  const loads: number[] = new Array(size).fill(0);
  for (let node = 0; node * 2 < size; node += 1) {
    const direct = directLoads(beam, node);
    loads[node * 2]! -= direct.force;
    loads[node * 2 + 1]! -= direct.moment;
    const right = beam.supports[node + 1];
    if (right === undefined) break;
    const { length: l, ...terms } = spanTerms(beam, beam.supports[node]!, right);
    // Moments of the span with both ends held, from its load terms; sagging positive.
    const heldLeft = (terms.aboutLeft - 2 * terms.aboutRight) / (3 * l);
    const heldRight = (terms.aboutRight - 2 * terms.aboutLeft) / (3 * l);
    const tilt = (heldRight - heldLeft) / l;
    const spread = [-(terms.freeLeft + tilt), heldLeft, -(terms.freeRight - tilt), -heldRight];
    const piece = pieceStiffness(l);
    for (let i = 0; i < 4; i += 1) {
      loads[node * 2 + i]! += spread[i]!;
      for (const j of [0, 1])
        stiffness.set(node * 2 + i, node + j, stiffness.get(node * 2 + i, node + j) + piece[i]![j]!);
    }
  }
  return { stiffness, loads };
}

export interface Displacements {
  /** Reaction of every support. */
  readonly reactions: readonly number[];
  /** EI × slope at the first support, anticlockwise positive; its deflection is zero. */
  readonly firstTurn: number;
}

/**
 * Direct stiffness method with EI = 1 for the whole bar: the share of the supports does not depend on EI when it
 * is constant. The supports do not move, so their turns are the unknowns.
 */
export function displacements(beam: Beam): Displacements {
  const { stiffness, loads } = assemble(beam);
  const held = beam.supports.map((_, support) => support * 2);
  const free = held.map((row) => row + 1);
  const turns = solve(stiffness.subMatrixRow(free), Matrix.columnVector(free.map((row) => loads[row]!)));
  const forces = stiffness.subMatrixRow(held).mmul(turns);
  return { reactions: held.map((row, i) => forces.get(i, 0) - loads[row]!), firstTurn: turns.get(0, 0) };
}
