import { Matrix, solve } from "ml-matrix";
import { type Beam, SAME_PLACE, samePlace } from "./beam.js";

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

/** Stiffness of one piece with EI = 1 (deflection and turn at each end), the textbook matrix. */
function pieceStiffness(l: number): readonly (readonly number[])[] {
  const [a, b, c, d] = [12 / l ** 3, 6 / l ** 2, 4 / l, 2 / l];
  return [
    [a, b, -a, b],
    [b, c, -b, d],
    [-a, -b, a, -b],
    [b, d, -b, c],
  ];
}

function assemble(beam: Beam, nodes: readonly number[]): { stiffness: Matrix; loads: number[] } {
  const stiffness = Matrix.zeros(nodes.length * 2, nodes.length * 2);
  const loads: number[] = new Array(nodes.length * 2).fill(0);
  for (let node = 0; node + 1 < nodes.length; node += 1) {
    const [left, right] = [nodes[node]!, nodes[node + 1]!];
    const l = right - left;
    const piece = pieceStiffness(l);
    const w = loadBetween(beam, left, right);
    const spread = [-(w * l) / 2, -(w * l * l) / 12, -(w * l) / 2, (w * l * l) / 12];
    for (let i = 0; i < 4; i += 1) {
      loads[node * 2 + i]! += spread[i]!;
      for (let j = 0; j < 4; j += 1)
        stiffness.set(node * 2 + i, node * 2 + j, stiffness.get(node * 2 + i, node * 2 + j) + piece[i]![j]!);
    }
  }
  const nodeAt = (place: number): number => nodes.findIndex((node) => samePlace(node, place));
  for (const { at, load } of beam.points ?? []) loads[nodeAt(at) * 2]! -= load;
  for (const { at, moment } of beam.couples ?? []) loads[nodeAt(at) * 2 + 1]! -= moment;
  return { stiffness, loads };
}

export interface Displacements {
  readonly nodes: readonly number[];
  /** EI × deflection at every node, up positive. */
  readonly lift: readonly number[];
  /** EI × slope at every node, anticlockwise positive. */
  readonly turn: readonly number[];
  /** Reaction of every support. */
  readonly reactions: readonly number[];
}

/**
 * Direct stiffness method with EI = 1 for the whole bar: the share of the supports does not depend on EI when it
 * is constant. Needs at least two supports; ml-matrix throws on a singular system.
 */
export function displacements(beam: Beam): Displacements {
  const nodes = nodesOf(beam);
  const { stiffness, loads } = assemble(beam, nodes);
  const held = beam.supports.map((place) => nodes.findIndex((node) => samePlace(node, place)) * 2);
  const free = loads.map((_, index) => index).filter((index) => !held.includes(index));
  const solved = solve(stiffness.selection(free, free), Matrix.columnVector(free.map((index) => loads[index]!)));
  const moved: number[] = new Array(loads.length).fill(0);
  for (const [row, index] of free.entries()) moved[index] = solved.get(row, 0);
  const force = (row: number): number =>
    moved.reduce((sum, each, column) => sum + each * stiffness.get(row, column), 0);
  return {
    nodes,
    lift: nodes.map((_, node) => moved[node * 2]!),
    turn: nodes.map((_, node) => moved[node * 2 + 1]!),
    reactions: held.map((row) => force(row) - loads[row]!),
  };
}
