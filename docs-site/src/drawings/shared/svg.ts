import type { Element } from "hast";
import { num, s } from "../../html/html.js";

export { num } from "../../html/html.js";

/** A place on the paper, millimetres from its top left corner. */
export type PaperPoint = readonly [x: number, y: number];

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export type Shapes = readonly Element[];
type Look = Readonly<Record<string, string | number | boolean | undefined>>;

export const svgShape = (name: string, look: Look): Element => s(name, look);

export const group = (look: Look, children: Shapes): Element => s("g", look, children);

/** Line widths of ISO 128-2: a wide one for edges, a narrow one for what only explains, the finest for hatching. */
export const WIDE = 0.5;
export const NARROW = 0.25;
export const FINEST = 0.18;

const WIDTHS = [0.7, WIDE, 0.35, NARROW, FINEST];

/** The widest line of ISO 128-2 that is no wider than this. */
export const lineUpTo = (width: number): number => WIDTHS.find((each) => each <= width) ?? FINEST;

export const line = ([x1, y1]: PaperPoint, [x2, y2]: PaperPoint, look: Look = {}): Element =>
  svgShape("line", { x1, y1, x2, y2, stroke: "currentColor", ...look });

export const rect = ({ x, y, width, height }: Box, look: Look = {}): Element =>
  svgShape("rect", { x, y, width, height, fill: "none", stroke: "currentColor", ...look });

export const path = (d: string, look: Look = {}): Element =>
  svgShape("path", { d, fill: "none", stroke: "currentColor", ...look });

export const polyline = (points: readonly PaperPoint[], look: Look = {}): Element =>
  path(points.map(([x, y], index) => `${index === 0 ? "M" : "L"}${num(x)} ${num(y)}`).join(""), look);

export const polygon = (points: readonly PaperPoint[], look: Look = {}): Element =>
  svgShape("polygon", {
    points: points.map(([x, y]) => `${num(x)},${num(y)}`).join(" "),
    ...look,
  });

/** A surface of the paper's own colour, to write on over lines. */
export const paper = (box: Box, look: Look = {}): Element =>
  rect(box, { fill: "#fff", stroke: undefined, className: "paper", ...look });
