import type { Element } from "hast";
import { s } from "hastscript";

/** A place on the paper, millimetres from its top left corner. */
export type Point = readonly [x: number, y: number];

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export type Shapes = readonly Element[];
type Look = Readonly<Record<string, string | number | boolean | undefined>>;

/** Hundredths of a millimetre are finer than any printer. */
export const num = (value: number): number => Math.round(value * 100) / 100 || 0;

const rounded = (look: Look): Look =>
  Object.fromEntries(
    Object.entries(look).map(([key, value]) => [
      key,
      typeof value === "number" && !key.startsWith("data") ? num(value) : value,
    ]),
  );

export const shape = (name: string, look: Look, children: Shapes = []): Element => s(name, rounded(look), ...children);

export const group = (look: Look, children: Shapes): Element => shape("g", look, children);

/** Line widths after ISO 128: a wide one for edges, a narrow one for everything that only explains. */
export const WIDE = 0.5;
export const NARROW = 0.25;

export const line = ([x1, y1]: Point, [x2, y2]: Point, look: Look = {}): Element =>
  shape("line", { x1, y1, x2, y2, stroke: "currentColor", strokeWidth: NARROW, ...look });

export const rect = ({ x, y, width, height }: Box, look: Look = {}): Element =>
  shape("rect", { x, y, width, height, fill: "none", stroke: "currentColor", strokeWidth: NARROW, ...look });

export const path = (d: string, look: Look = {}): Element =>
  shape("path", { d, fill: "none", stroke: "currentColor", strokeWidth: NARROW, ...look });

export const polyline = (points: readonly Point[], look: Look = {}): Element =>
  path(points.map(([x, y], index) => `${index === 0 ? "M" : "L"}${num(x)} ${num(y)}`).join(""), look);

export const polygon = (points: readonly Point[], look: Look = {}): Element =>
  shape("polygon", {
    points: points.map(([x, y]) => `${num(x)},${num(y)}`).join(" "),
    fill: "currentColor",
    stroke: "none",
    ...look,
  });

/** A surface of the paper's own colour, to write on over lines. */
export const paper = (box: Box, look: Look = {}): Element =>
  rect(box, { fill: "#fff", stroke: "none", className: "paper", ...look });
