import { type Cell, cellName, type Face, type KindOfPanel } from "@plumbmark/core";
import type { DrawingSubject } from "../shared/drawing.js";
import { type Box, num, path, type Shapes, WIDE } from "../shared/svg.js";
import type { View } from "./view.js";

const rotated = ({ path: at }: Face, { build }: DrawingSubject): number =>
  Number(build.reader.data(`${at}.rotated`) ?? 0) || 0;

/** Where a bar begins and how long it is, as shares of the edge: clear of the cables, which cross it in the middle. */
const CLEAR = 0.58;
const LENGTH = 0.28;

/** A bar along the edge that is the panel's own top: `quarters` clockwise from the upper one. */
function edge({ x, y, width, height }: Box, quarters: number): string {
  const inset = Math.min(1, 0.1 * Math.min(width, height));
  const upright = quarters % 2 === 1;
  const length = LENGTH * (upright ? height : width);
  const at = [y + inset, x + width - inset, y + height - inset, x + inset][quarters] as number;
  return upright
    ? `M${num(at)} ${num(y + CLEAR * height)}v${num(length)}`
    : `M${num(x + CLEAR * width)} ${num(at)}h${num(length)}`;
}

/** The own top edge of every panel of a face whose panels are turned. From behind they turn the other way round. */
export function turnMarks(view: View, subject: DrawingSubject): Shapes {
  const degrees = rotated(view.face, subject);
  if (degrees === 0) return [];
  const quarters = ((view.rear ? 360 - degrees : degrees) / 90) % 4;
  const d = view.face.cells.map((cell) => edge(view.box(cell), quarters)).join("");
  return [path(d, { strokeWidth: 1, className: "own-top", dataTurned: degrees })];
}

export function turnNotes(face: Face, rear: boolean, subject: DrawingSubject): readonly string[] {
  const degrees = rotated(face, subject);
  if (degrees === 0) return [];
  const way = degrees === 180 ? "" : rear ? " anticlockwise as seen from here" : " clockwise as the audience sees it";
  return [`Every panel is turned by ${degrees}°${way}; the bar in each cell lies at its own top edge.`];
}

/** Kinds of panel other than the face's own that are in the catalogue, in the order they are written. */
const othersOf = (face: Face): readonly KindOfPanel[] =>
  face.otherPanels.length === 0 ? [] : face.kinds.filter(({ part }) => part !== undefined && part !== face.panel);

const cellsOf = (face: Face, { part }: KindOfPanel): readonly Cell[] =>
  face.cells.filter((cell) => face.partAt(cell) === part);

const CORNER = 1.6;

/** So many strokes across the lower right corner. */
function strokes({ x, y, width, height }: Box, count: number): string {
  const step = Math.min(CORNER, (0.45 * Math.min(width, height)) / (count + 1));
  return Array.from({ length: count }, (_, index) => {
    const reach = step * (index + 1.5);
    return `M${num(x + width)} ${num(y + height - reach)}l${num(-reach)} ${num(reach)}`;
  }).join("");
}

/** Cells that hold another kind of panel, marked at a corner: one stroke for the first kind, two for the second. */
export const kindMarks = (view: View): Shapes =>
  othersOf(view.face).map((kind, index) =>
    path(
      cellsOf(view.face, kind)
        .map((cell) => strokes(view.box(cell), index + 1))
        .join(""),
      { strokeWidth: WIDE, className: "other-kind", dataKind: kind.part?.name },
    ),
  );

export const kindNotes = (face: Face, some: (names: readonly string[]) => string): readonly string[] => [
  ...othersOf(face).map(
    (kind, index) =>
      `${index + 1} stroke${index === 0 ? "" : "s"} across the lower right corner of a cell: ${kind.part?.name ?? ""} instead of ${face.panel?.name ?? "the face's own panel"}, in ${some(cellsOf(face, kind).map(cellName))}.`,
  ),
  ...face.otherPanels
    .filter(({ part }) => part === undefined)
    .map(({ name }) => `Some cells hold ${name}, which is not in the catalogue.`),
];
