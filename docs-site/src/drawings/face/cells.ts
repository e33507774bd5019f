import { type Cell, cellName } from "@plumbmark/core";
import type { Element } from "hast";
import { hatch } from "../shared/hatch.js";
import { lettering, SMALL, SMALLEST } from "../shared/lettering.js";
import { series } from "../shared/series.js";
import { type Box, FINEST, group, line, lineUpTo, NARROW, path, rect, type Shapes } from "../shared/svg.js";
import { countOf, type Strand, timesOn } from "./strand.js";
import { isLow, lineWeight, roomIn, type View } from "./view.js";

/** Cells of one look joined along rows: a face of thousands of panels has few strokes. */
function spans(view: View, cells: readonly Cell[]): readonly Box[] {
  const boxes = [...cells].sort((a, b) => a.row - b.row || a.column - b.column);
  const joined: { row: number; from: number; to: number }[] = [];
  for (const { row, column } of boxes) {
    const last = joined.at(-1);
    if (last && last.row === row && last.to === column - 1) last.to = column;
    else if (!last || last.row !== row || last.to !== column) joined.push({ row, from: column, to: column });
  }
  return joined.map(({ row, from, to }) => {
    const [one, other] = [view.box({ row, column: from }), view.box({ row, column: to })];
    const x = Math.min(one.x, other.x);
    return { x, y: one.y, width: Math.abs(one.x - other.x) + one.width, height: one.height };
  });
}

/** The hatch of everything on one circuit, or of one chain. */
export function groupHatches(view: View, strands: readonly Strand[]): Shapes {
  const groups = new Map<number, Cell[]>();
  for (const { cells, group: own } of strands)
    if (own !== undefined) groups.set(own, [...(groups.get(own) ?? []), ...(cells ?? [])]);
  return [...groups].map(([own, cells]) => {
    const { colour, className, hatch: kind } = series(own);
    const d = spans(view, cells)
      .map((box) => hatch(box, kind))
      .join("");
    return path(d, { stroke: colour, className: `hatch ${className}`, strokeWidth: FINEST, dataGroup: own });
  });
}

/** A panel that is on nothing, or on more than one thing, is framed: the eye finds it before the note does. */
function panel(view: View, cell: Cell, times: number): Element {
  const box = view.box(cell);
  const name = cellName(cell);
  const fine = lineWeight(view);
  const odd =
    times === 1
      ? { strokeWidth: lineUpTo(NARROW * fine) }
      : { strokeWidth: lineUpTo(0.7 * fine), strokeDasharray: `${2 * fine} ${fine}`, className: "unfed" };
  const words =
    roomIn(view) === "name"
      ? [lettering(name, [box.x + 0.9, box.y + SMALL], { size: isLow(view) ? SMALLEST : SMALL })]
      : [];
  return group({ dataCell: name }, [rect(box, odd), ...words]);
}

function leftOut(view: View, cell: Cell): Element {
  const { x, y, width, height } = view.box(cell);
  return group({ className: "left-out", dataLeftOut: cellName(cell) }, [
    rect({ x, y, width, height }, { strokeDasharray: "1 1", strokeWidth: FINEST }),
    line([x, y], [x + width, y + height], { strokeWidth: FINEST }),
    line([x + width, y], [x, y + height], { strokeWidth: FINEST }),
  ]);
}

/** Every cell of the face with its name where there is room, cells left out crossed. */
export function cellShapes(view: View, strands: readonly Strand[]): Shapes {
  const { face } = view;
  const times = timesOn(face, strands);
  const every = Array.from(
    { length: face.rows * face.columns },
    (_, index): Cell => ({
      row: Math.floor(index / face.columns),
      column: index % face.columns,
    }),
  );
  return every.map((cell) => (face.has(cell) ? panel(view, cell, countOf(times, cell)) : leftOut(view, cell)));
}
