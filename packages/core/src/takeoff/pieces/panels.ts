import { missing, times, type Value } from "@plumbmark/calc";
import type { Design } from "../../model/design.js";
import { readCells } from "../../model/faces/cells.js";
import type { Face } from "../../model/faces/face.js";
import { partValue } from "../../model/reading/reader.js";
import type { Part } from "../../repository/parts.js";
import { notCounted, number, type Piece, wholePiece } from "../piece.js";
import { NOT_STATED } from "../table.js";

const draws = (part: Part | undefined, count: Value, of: string): Value => {
  const each = partValue(part, "power.maximum", "power", "maximum power", of);
  return count.known ? times(each, count.value) : missing("power", ...count.gaps);
};

const panelName = (face: Face): string => face.panel?.name ?? face.reader.text(`${face.path}.panel`) ?? NOT_STATED;

/** Cells of another kind of panel, as many as the face really has. */
const othersOf = (face: Face) =>
  face.otherPanels.map(({ name, path, part, cells }) => {
    const read = readCells(cells);
    if (!read.ok) return { name, part, count: notCounted(path, "cells", face.label) };
    return { name, part, count: number(read.cells.filter((cell) => face.has(cell)).length, `${name} in ${face.name}`) };
  });

/** Panels of a face that are in place; cells of another kind are taken off its own. */
function standing(face: Face): readonly Piece[] {
  const use = `face ${face.name}`;
  const others = othersOf(face);
  const all = face.panelCount;
  const unknown = others.find(({ count }) => !count.known);
  const taken = others.reduce((total, { count }) => total + (count.known ? count.value : 0), 0);
  const own = all.known ? (unknown?.count ?? number(all.value - taken, `panels of ${face.name}`)) : all;
  return [{ name: panelName(face), part: face.panel, count: own }, ...others].map((each) =>
    wholePiece({ ...each, kind: "panel", use }, draws(each.part, each.count, use)),
  );
}

/** Spare panels, told by the lot they come from. A number that is not written down stays unknown. */
function sparesOf(face: Face): readonly Piece[] {
  if (face.spares === 0) return [];
  const lots = face.lots.length === 0 ? `a lot ${NOT_STATED}` : face.lots.join(" and ");
  const count =
    face.spares === undefined
      ? notCounted(`${face.path}.spares`, "number of spares", face.label)
      : number(face.spares, `spares of ${face.name}`);
  return [
    wholePiece({
      name: panelName(face),
      part: face.panel,
      kind: "panel",
      count,
      use: `spares of ${lots}`,
      spare: true,
    }),
  ];
}

/** What hangs its columns from the bar. */
function attachmentsOf({ hungBy, name }: Face): readonly Piece[] {
  if (!hungBy) return [];
  return [wholePiece({ name: hungBy.name, part: hungBy.part, count: hungBy.count, use: `face ${name}` })];
}

/** Other parts the face carries. */
const extrasOf = (face: Face): readonly Piece[] =>
  face.reader.keys(`${face.path}.extras`).map((name) => {
    const path = `${face.path}.extras.${name}`;
    const written = face.reader.count(path, Number.MAX_SAFE_INTEGER);
    const count = written === 0 ? notCounted(path, "number of them", face.label) : number(written, name);
    return wholePiece({ name, part: face.reader.parts.get(name), count, use: `face ${face.name}` });
  });

export const facePieces = ({ faces }: Design): readonly Piece[] =>
  faces.flatMap((face) => [...standing(face), ...sparesOf(face), ...attachmentsOf(face), ...extrasOf(face)]);
