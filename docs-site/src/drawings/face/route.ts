import { type Cell, cellName } from "@plumbmark/core";
import type { Element } from "hast";
import { arrowHead } from "../shared/dimension.js";
import { lettering } from "../shared/lettering.js";
import { lineLook, series } from "../shared/series.js";
import { group, type PaperPoint, polyline, rect, type Shapes, svgShape } from "../shared/svg.js";
import type { Strand } from "./strand.js";
import { lineWeight, roomIn, type View } from "./view.js";

/** Arrow heads need not stand closer than this, millimetres. */
const APART = 14;

type Look = ReturnType<typeof lineLook>;

interface Stretch {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly hops: number;
}

const way = ([x1, y1]: PaperPoint, [x2, y2]: PaperPoint): number => Math.atan2(y2 - y1, x2 - x1);

/** Hops one after another in one direction, joined. */
function stretches(points: readonly PaperPoint[]): readonly Stretch[] {
  const joined: Stretch[] = [];
  for (const [index, to] of points.entries()) {
    const from = points[index - 1];
    if (!from) continue;
    const last = joined.at(-1);
    if (last && Math.abs(way(last.from, last.to) - way(from, to)) < 1e-6)
      joined[joined.length - 1] = { from: last.from, to, hops: last.hops + 1 };
    else joined.push({ from, to, hops: 1 });
  }
  return joined;
}

/** Between two panels, never on one: its number stands there. */
function heads({ from, to, hops }: Stretch, everyHop: boolean, size: number, look: Look): Shapes {
  const hop = Math.hypot(to[0] - from[0], to[1] - from[1]) / hops;
  const step = everyHop ? 1 : Math.max(1, Math.ceil(APART / hop));
  const direction = way(from, to);
  return Array.from({ length: Math.ceil(hops / step) }, (_, index) => {
    const share = (index * step + 0.5) / hops;
    const tip: PaperPoint = [
      from[0] + (to[0] - from[0]) * share + (size / 2) * Math.cos(direction),
      from[1] + (to[1] - from[1]) * share + (size / 2) * Math.sin(direction),
    ];
    return arrowHead(tip, direction, size, { fill: look.stroke, className: look.className }, 0.42);
  });
}

function node(view: View, strand: Strand, cell: Cell, order: number, look: Look): Element {
  const [x, y] = view.centre(cell);
  const large = roomIn(view) === "name";
  const size = large ? 2.7 : 1.9;
  const half = large ? 2.3 : 1.5;
  const words = String(order);
  const wide = half + (words.length > 2 ? size * 0.3 * (words.length - 2) : 0);
  const outline = { fill: "#fff", className: `node ${look.className}`, stroke: look.stroke, strokeWidth: 0.4 };
  const box = { x: x - wide, y: y - half, width: 2 * wide, height: 2 * half };
  // The first panel has a square node: there the feed goes in.
  const sign = order === 1 ? rect(box, { ...outline, strokeWidth: 0.8 }) : rect(box, { ...outline, rx: half });
  const marks = { dataStrand: strand.name, dataOrder: order, dataOn: cellName(cell) };
  return group({ className: "order" }, [
    sign,
    lettering(words, [x, y + size * 0.36], { size, anchor: "middle", bold: order === 1, data: marks }),
  ]);
}

/** The way of one run or chain over the face: its line, arrow heads along it, and the number of every panel. */
export function route(view: View, strand: Strand): Element | undefined {
  const { cells, number, name, sort } = strand;
  if (!cells) return undefined;
  const points = cells.map(view.centre);
  const fine = lineWeight(view);
  const look = { ...lineLook(series(number)), strokeWidth: 0.7 * fine };
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
