import { counted, panelsMass, sum, type Value } from "@plumbmark/calc";
import { choices } from "../../document/nearest.js";
import type { Part } from "../../repository/parts.js";
import { partValue } from "../reading/reader.js";
import { type Cell, cellName, readCells } from "./cells.js";
import type { Face } from "./face.js";

/** One kind of panel of a face and how many of it stand in each column. */
export interface KindOfPanel {
  readonly part: Part | undefined;
  readonly count: number;
  /** Panels of this kind by column, 0 at the audience's left. */
  readonly perColumn: readonly number[];
}

/** Cells written for other kinds of panel; what cannot be read or is no cell of the face is told as a mistake. */
function cellsOf(face: Face, path: string, text: string): readonly Cell[] {
  const read = readCells(text);
  if (!read.ok) {
    face.reader.complain(path, read.says, read.mend);
    return [];
  }
  if (face.columns === 0 || face.rows === 0) return [];
  const outside = read.cells.find((cell) => !face.has(cell));
  if (outside)
    face.reader.complain(
      path,
      `The face ${face.name} has no panel at ${cellName(outside)}.`,
      `It has ${face.columns} columns and ${face.rows} rows; name only cells it has.`,
    );
  return read.cells.filter((cell) => face.has(cell));
}

/** What stands in the cells written under `other-panels`, by cell; a cell written twice is told as a mistake. */
export function othersOf(face: Face): ReadonlyMap<string, Part | undefined> {
  const taken = new Map<string, Part | undefined>();
  for (const { name, path, part, cells } of face.otherPanels) {
    const panels = [...face.reader.parts.values()].filter(({ kind }) => kind === "panel").map((each) => each.name);
    if (part?.kind !== "panel")
      face.reader.complain(
        path,
        part
          ? `The part \`${name}\` is of the kind ${part.kind}, not a panel.`
          : `The part \`${name}\` is not in the catalogue.`,
        choices(panels, name),
      );
    for (const cell of cellsOf(face, path, cells)) {
      if (taken.has(cellName(cell)))
        face.reader.complain(
          path,
          `${cellName(cell)} of face ${face.name} has two kinds of panel.`,
          "Name each cell under one kind only.",
        );
      taken.set(cellName(cell), part);
    }
  }
  return taken;
}

/** The kinds of panel of a face: those written under `other-panels` in their cells, its own in the rest. */
export function kindsOf(face: Face): readonly KindOfPanel[] {
  const kinds = new Map<Part | undefined, number[]>();
  for (const cell of face.cells) {
    const part = face.partAt(cell);
    const perColumn = kinds.get(part) ?? new Array<number>(face.columns).fill(0);
    perColumn[cell.column] = (perColumn[cell.column] ?? 0) + 1;
    kinds.set(part, perColumn);
  }
  return [...kinds].map(([part, perColumn]) => ({ part, perColumn, count: perColumn.reduce((a, b) => a + b, 0) }));
}

/** Mass of one panel of a kind. */
export const kindMass = (face: Face, { part }: KindOfPanel): Value<"mass"> =>
  partValue(part, "mass", "mass", "mass", face.named);

/** Mass of the panels in some columns of a face, each kind with its own. */
export function panelsMassOf(face: Face, columns: readonly number[]): Value<"mass"> {
  const parts = face.kinds.flatMap((kind) => {
    const count = columns.reduce((total, column) => total + (kind.perColumn[column] ?? 0), 0);
    const what =
      kind.part === face.panel || !kind.part ? `panels of ${face.name}` : `${kind.part.name} in ${face.name}`;
    return count > 0 ? [panelsMass.of({ n: counted(count, what), m: kindMass(face, kind) })] : [];
  });
  return parts.length === 1 ? (parts[0] as Value<"mass">) : sum(parts, "mass", "m");
}
