import { nearest } from "../../document/nearest.js";
import type { Part } from "../../repository/parts.js";
import { type Cell, cellName, readCells } from "./cells.js";
import type { Face } from "./face.js";
import type { FacesDesign } from "./faces-design.js";

/** One panel of a face, as it stands on a run or chain. */
export interface Panel {
  /** The face it is in. */
  readonly face: Face;
  /** Its cell. */
  readonly cell: Cell;
  /** Its name on runs and chains: `banner A1`. */
  readonly name: string;
  /** What stands there; undefined when its part is not known. */
  readonly part: Part | undefined;
}

const allOf = (face: Face): string => `${face.name} ${face.cells.map(cellName).join(", ")}`;

/**
 * Panels in cable order from a text such as `banner A1..A6, B6..B1`. Undefined when nothing is written or it cannot
 * be read; what is wrong is told as a mistake with its place.
 */
export function panelsAt(build: FacesDesign, path: string): readonly Panel[] | undefined {
  const text = build.reader.text(path);
  if (text === undefined) return undefined;
  const match = /^\s*([A-Za-z0-9][\w-]*)\s+(.+)$/u.exec(text);
  const face = match ? build.faces.find((each) => each.name === match[1]) : undefined;
  if (!match || !face) {
    const known = build.faces.map((each) => each.name);
    const near = match && nearest(match[1] as string, known);
    const form = `Write a face and its cells in cable order, such as \`${known[0] ?? "banner"} A1..A6\``;
    const [first] = build.faces;
    build.reader.complain(
      path,
      match ? `There is no face \`${match[1]}\`.` : `\`${text}\` is no face and its cells.`,
      near === undefined ? `${form}. The face is one of: ${known.join(", ")}.` : `Write \`${near} ${match?.[2]}\`.`,
      near === undefined ? (first ? { standIn: allOf(first) } : {}) : { edit: `${near} ${match?.[2]}` },
    );
    return undefined;
  }
  const read = readCells(match[2] as string);
  if (!read.ok) {
    build.reader.complain(path, read.says, read.mend, { standIn: allOf(face) });
    return undefined;
  }
  // Of a face without a size nobody can tell which cells it has.
  if (face.columns === 0 || face.rows === 0) return undefined;
  const outside = read.cells.find((cell) => !face.has(cell));
  if (outside) {
    build.reader.complain(
      path,
      `The face ${face.name} has no panel at ${cellName(outside)}.`,
      `Write cells it has, from \`A1\` to \`${cellName({ row: face.rows - 1, column: face.columns - 1 })}\`.`,
      { standIn: allOf(face) },
    );
    return undefined;
  }
  return read.cells.map((cell) => ({ face, cell, name: `${face.name} ${cellName(cell)}`, part: face.partAt(cell) }));
}
