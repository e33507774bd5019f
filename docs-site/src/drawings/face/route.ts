import { type Cell, cellName } from "@plumbmark/core";
import type { Element } from "hast";
import { arrowHead } from "../shared/dimension.js";
import { aboutMiddle, lettering, SMALLEST } from "../shared/lettering.js";
import { lineLook, series } from "../shared/series.js";
import { group, lineUpTo, type PaperPoint, polyline, rect, type Shapes, svgShape } from "../shared/svg.js";
import type { Strand } from "./strand.js";
import { lineWeight, roomIn, type View } from "./view.js";

/** Arrow heads need not stand closer than this, millimetres. */
const APART = 14;

type Look = ReturnType<typeof lineLook>;

interface Stretch {
  readonly from: PaperPoint;
  /** From one panel to the next. */
  readonly hop: PaperPoint;
  readonly hops: number;
}

const hopOf = ([x1, y1]: PaperPoint, [x2, y2]: PaperPoint): PaperPoint => [x2 - x1, y2 - y1];

/** Hops one after another in one direction and as far each, joined. */
function stretches(points: readonly PaperPoint[]): readonly Stretch[] {
  const joined: Stretch[] = [];
  for (const [index, to] of points.entries()) {
    const from = points[index - 1];
    if (!from) continue;
    const last = joined.at(-1);
    const hop = hopOf(from, to);
    if (last && Math.hypot(last.hop[0] - hop[0], last.hop[1] - hop[1]) < 1e-6)
      joined[joined.length - 1] = { from: last.from, hop, hops: last.hops + 1 };
    else joined.push({ from, hop, hops: 1 });
  }
  return joined;
}

/** Between two panels, never on one: its number stands there. */
function heads({ from, hop, hops }: Stretch, everyHop: boolean, size: number, look: Look): Shapes {
  const long = Math.hypot(...hop);
  const step = everyHop ? 1 : Math.ceil(APART / long);
  const direction = Math.atan2(hop[1], hop[0]);
  return Array.from({ length: Math.ceil(hops / step) }, (_, index) => {
    const share = index * step + 0.5 + size / 2 / long;
    const tip: PaperPoint = [from[0] + hop[0] * share, from[1] + hop[1] * share];
    return arrowHead(tip, direction, size, { fill: look.stroke, className: look.className }, 0.42);
  });
}

function node(view: View, strand: Strand, cell: Cell, order: number, look: Look): Element {
  const [x, y] = view.centre(cell);
  const large = roomIn(view) === "name";
  const size = large ? SMALLEST : 1.94;
  const half = large ? 2.3 : 1.5;
  const words = String(order);
  const wide = half + (words.length > 2 ? size * 0.3 * (words.length - 2) : 0);
  const outline = { fill: "#fff", className: `node ${look.className}`, stroke: look.stroke, strokeWidth: 0.35 };
  const box = { x: x - wide, y: y - half, width: 2 * wide, height: 2 * half };
  // The first panel has a square node: there the feed goes in.
  const sign = order === 1 ? rect(box, { ...outline, strokeWidth: 0.7 }) : rect(box, { ...outline, rx: half });
  const marks = { dataStrand: strand.name, dataOrder: order, dataOn: cellName(cell) };
  return group({ className: "order" }, [
    sign,
    lettering(words, [x, aboutMiddle(y, size)], { size, anchor: "middle", bold: order === 1, data: marks }),
  ]);
}

/** The way of one run or chain over the face: its line, arrow heads along it, and the number of every panel. */
export function route(view: View, strand: Strand): Element | undefined {
  const { cells, number, name, sort } = strand;
  if (!cells) return undefined;
  const points = cells.map(view.centre);
  const fine = lineWeight(view);
  const look = { ...lineLook(series(number)), strokeWidth: lineUpTo(0.7 * fine) };
  const room = roomIn(view);
  const size = room === "name" ? 3.2 : room === "number" ? 1.8 : 2.4 * fine;
  const ends = room === "nothing" ? [endMark(points[0], look, 1.1 * fine)] : [];
  const nodes = room === "nothing" ? [] : cells.map((cell, index) => node(view, strand, cell, index + 1, look));
  return group(
    {
      className: `route ${look.className}`,
      [sort === "run" ? "dataRun" : "dataChain"]: name,
      dataPanels: cells.length,
    },
    [
      ...(points.length > 1
        ? [polyline(points, { ...look, className: `way ${look.className}`, strokeLinejoin: "round" })]
        : []),
      ...stretches(points).flatMap((each) => heads(each, room === "name", size, look)),
      ...nodes,
      ...ends.filter((each) => each !== undefined),
    ],
  );
}

const endMark = (at: PaperPoint | undefined, look: Look, half: number): Element | undefined =>
  at &&
  svgShape("rect", {
    x: at[0] - half,
    y: at[1] - half,
    width: 2 * half,
    height: 2 * half,
    fill: look.stroke,
    stroke: "none",
    className: `dot ${look.className}`,
  });
