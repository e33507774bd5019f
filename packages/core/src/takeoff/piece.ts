import { counted, type Known, lineMass, missing, partsMass, type Value } from "@plumbmark/calc";
import { partValue } from "../model/reading/reader.js";
import type { Part } from "../repository/parts.js";

/** Some pieces of one part, all for one purpose. */
export interface Piece {
  readonly name: string;
  readonly kind: string;
  readonly describes: string;
  readonly count: Value<"count">;
  /** Of a cable or a bar. */
  readonly length?: Value<"length">;
  /** Of all of them together. */
  readonly mass: Value<"mass">;
  /** Most that all of them draw, W or VA; undefined for what draws nothing. */
  readonly power?: Value;
  /** What they are for: "face banner", "run P1". */
  readonly use: string;
  /** They lie in the case. */
  readonly spare?: true;
}

/** What a piece is made from; `part` is undefined where the catalogue does not have it. */
export interface Ordered {
  readonly name: string;
  readonly part: Part | undefined;
  readonly kind?: string;
  readonly count: Value<"count">;
  readonly use: string;
  readonly spare?: true;
}

const about = ({ name, part, kind, count, use, spare }: Ordered) => ({
  name,
  kind: part?.kind ?? kind ?? "not in the catalogue",
  describes: typeof part?.data.describes === "string" ? part.data.describes : "",
  count,
  use,
  ...(spare ? { spare } : {}),
});

/**
 * The mass of a part as the kind it is counted by. A cable is weighed by its length and a tile is not: whoever writes
 * the one as if it were the other has not written what it weighs.
 */
function massOf<const K extends "mass" | "mass-per-length">({ part, name, use }: Ordered, kind: K): Value<K> {
  const what = kind === "mass" ? "mass" : "mass per length";
  const found = partValue(part, "mass", kind, what, name);
  if (!found.known || found.kind === kind) return found;
  const because =
    kind === "mass"
      ? `${name} (${use}) is weighed by its length, and no length is written down for it.`
      : `${name} (${use}) is weighed by the piece, and a length is written down for it.`;
  return missing(kind, { path: "", what, of: name, because });
}

/** Pieces that are each weighed whole. */
export const wholePiece = (ordered: Ordered, power?: Value): Piece => {
  const mass = massOf(ordered, "mass");
  return { ...about(ordered), mass: partsMass.of({ n: ordered.count, p: mass }), ...(power ? { power } : {}) };
};

/** Pieces that are weighed by their length. */
export const byLength = (
  ordered: Ordered,
  length: Value<"length">,
  massPerLength?: Value<"mass-per-length">,
): Piece => {
  const rate = massPerLength ?? massOf(ordered, "mass-per-length");
  return { ...about(ordered), length, mass: lineMass.of({ ρ: rate, L: length, n: ordered.count }) };
};

/** Something with a mass of its own that is no part of the catalogue, such as ballast. */
export const weighedPiece = (name: string, kind: string, mass: Value<"mass">, use: string): Piece => ({
  name,
  kind,
  describes: "",
  count: counted(1, name),
  mass,
  use,
});

export const number = (count: number, what: string): Known<"count"> => counted(count, what);
export const notCounted = (path: string, what: string, of: string): Value<"count"> =>
  missing("count", { path, what, of });
