import { sum, type Value } from "@plumbmark/calc";
import type { Piece } from "../piece.js";
import { asWritten, type ColumnOf, NOT_STATED } from "../table.js";

/** Pieces of one part and length, whatever they are for. */
export interface PartLine {
  readonly first: Piece;
  readonly inUse: Value;
  readonly spares: Value;
  readonly total: Value;
  readonly mass: Value;
  readonly power: Value | undefined;
  readonly uses: string;
}

const keyOf = ({ name, kind, length }: Piece): string =>
  [name, kind, length?.known ? String(length.value) : ""].join("\u0000");

/** How many for each purpose, each purpose once: "run P1: 5; run P2: 5". */
function usesOf(pieces: readonly Piece[]): string {
  const counts = new Map<string, Value>();
  for (const { use, count } of pieces) {
    const before = counts.get(use);
    counts.set(use, before ? sum([before, count], "count") : count);
  }
  return [...counts].map(([use, count]) => `${use}: ${count.known ? count.value : NOT_STATED}`).join("; ");
}

const inAll = (pieces: readonly Piece[]): Value =>
  sum(
    pieces.map(({ count }) => count),
    "count",
    "n",
  );

const massOf = (pieces: readonly Piece[]): Value =>
  sum(
    pieces.map(({ mass }) => mass),
    "mass",
    "m",
  );

function lineOf(pieces: readonly Piece[]): PartLine {
  const powers = pieces.flatMap(({ power }) => (power ? [{ ...power, kind: "power" as const }] : []));
  return {
    first: pieces[0] as Piece,
    inUse: inAll(pieces.filter(({ spare }) => !spare)),
    spares: inAll(pieces.filter(({ spare }) => spare)),
    total: inAll(pieces),
    mass: massOf(pieces),
    power: powers.length > 0 ? sum(powers, "power", "P") : undefined,
    uses: usesOf(pieces),
  };
}

/** The parts list: one line for each part, of cables and bars for each length. */
export function partLines(pieces: readonly Piece[]): readonly PartLine[] {
  const groups = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const group = groups.get(keyOf(piece));
    if (group) group.push(piece);
    else groups.set(keyOf(piece), [piece]);
  }
  return [...groups.values()].map(lineOf);
}

/** What is asked for first stands first: a phone shows the first columns only, until they are moved aside. */
export const partColumns: readonly ColumnOf<PartLine>[] = [
  { name: "Part", of: ({ first }) => first.name },
  { name: "In all", kind: "count", of: ({ total }) => total },
  { name: "As written", of: ({ first }) => asWritten(first.length) },
  { name: "Description", of: ({ first }) => first.describes },
  { name: "In use", kind: "count", of: ({ inUse }) => inUse },
  { name: "Spares", kind: "count", of: ({ first, spares }) => (first.kind === "panel" ? spares : undefined) },
  { name: "Kind", of: ({ first }) => first.kind },
  { name: "Length", kind: "length", of: ({ first }) => first.length },
  { name: "Mass in all", kind: "mass", of: ({ mass }) => mass },
  { name: "Most power in use", kind: "power", of: ({ power }) => power },
  { name: "For", of: ({ uses }) => uses },
];
