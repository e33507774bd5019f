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
    build.reader.complain(
      path,
      match ? `There is no face \`${match[1]}\`.` : `\`${text}\` is no face and its cells.`,
      `Write a face and its cells in cable order, such as \`${known[0] ?? "banner"} A1..A6\`; the faces are ${known.map((each) => `\`${each}\``).join(", ")}.`,
    );
    return undefined;
  }
  const read = readCells(match[2] as string);
  if (!read.ok) {
    build.reader.complain(path, read.says, read.mend);
    return undefined;
  }
  const outside = read.cells.find((cell) => !face.has(cell));
  if (outside) {
    build.reader.complain(
      path,
      `The face ${face.name} has no panel at ${cellName(outside)}.`,
      `It has ${face.columns} columns and ${face.rows} rows; name only cells it has.`,
    );
    return undefined;
  }
  return read.cells.map((cell) => ({ face, cell, name: `${face.name} ${cellName(cell)}`, part: face.partAt(cell) }));
}
