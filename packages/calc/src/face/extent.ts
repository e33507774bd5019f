import { formula } from "../formula/formula.js";
import { fromMillimetres, inMillimetres } from "./millimetres.js";

const columns = { kind: "count", is: "number of columns", least: 1 } as const;
const rows = { kind: "count", is: "number of rows", least: 1 } as const;
const panels = { kind: "count", is: "number of panels", least: 0 } as const;

/** Width of a face in metres, left-out cells inside the rectangle included. */
export const faceWidth = formula({
  id: "face.width",
  title: "Width of a face",
  symbol: "W",
  kind: "length",
  inputs: { c: columns, w: { kind: "length", is: "panel width", above: 0 } },
  expression: "c × w",
  source: "geometry",
  validity: "panels of one width, edge to edge",
  example: { given: { c: 6, w: 0.5 }, gives: 3, within: 1e-12, from: "6 × 500 mm" },
  compute: ({ c, w }) => c * w,
  show: ({ c, w }, print) =>
    `${print(c.value, c.kind)} × ${inMillimetres(w, print)}${fromMillimetres(c.value * w.value, print)}`,
});

/** Height of a face in metres. */
export const faceHeight = formula({
  id: "face.height",
  title: "Height of a face",
  symbol: "H",
  kind: "length",
  inputs: { r: rows, h: { kind: "length", is: "panel height", above: 0 } },
  expression: "r × h",
  source: "geometry",
  validity: "panels of one height, edge to edge",
  example: { given: { r: 3, h: 0.5 }, gives: 1.5, within: 1e-12, from: "3 × 500 mm" },
  compute: ({ r, h }) => r * h,
  show: ({ r, h }, print) =>
    `${print(r.value, r.kind)} × ${inMillimetres(h, print)}${fromMillimetres(r.value * h.value, print)}`,
});

/** Lit area in square metres: the panels that are there. */
export const faceArea = formula({
  id: "face.area",
  title: "Area of a face",
  symbol: "A",
  kind: "area",
  inputs: {
    n: panels,
    w: { kind: "length", is: "panel width", above: 0 },
    h: { kind: "length", is: "panel height", above: 0 },
  },
  expression: "n × w × h",
  source: "geometry",
  validity: "panels of one size; cells left out are not counted",
  example: { given: { n: 6, w: 0.5, h: 0.5 }, gives: 1.5, within: 1e-12, from: "six quarter square metres" },
  compute: ({ n, w, h }) => n * w * h,
  show: ({ n, w, h }, print) => {
    const square = /ft²$/u.test(print(n.value * w.value * h.value, "area")) ? " ÷ 92,903.04 mm²/ft²" : "";
    return `${print(n.value, n.kind)} × ${inMillimetres(w, print)} × ${inMillimetres(h, print)}${square}`;
  },
});

/** Pixels along one side of the bounding rectangle. */
export const facePixelsAlong = formula({
  id: "face.pixels-along",
  title: "Pixels along a side of a face",
  symbol: "N",
  kind: "pixels",
  inputs: {
    k: { kind: "count", is: "number of panels along the side", least: 1 },
    p: { kind: "pixels", is: "pixels of a panel along that side", least: 1 },
  },
  expression: "k × p",
  source: "arithmetic",
  validity: "panels of one kind",
  example: { given: { k: 6, p: 160 }, gives: 960, within: 0, from: "6 tiles of 160 pixels" },
  compute: ({ k, p }) => k * p,
});

/** Pixels of a number of panels: of a face, a chain or a port. */
export const panelPixels = formula({
  id: "face.pixels",
  title: "Pixels of panels",
  symbol: "N",
  kind: "pixels",
  inputs: {
    n: panels,
    x: { kind: "pixels", is: "pixels of a panel across", least: 1 },
    y: { kind: "pixels", is: "pixels of a panel down", least: 1 },
  },
  expression: "n × x × y",
  source: "arithmetic",
  validity: "panels of one kind; cells left out are not counted",
  example: { given: { n: 6, x: 160, y: 160 }, gives: 153_600, within: 0, from: "960 × 160" },
  compute: ({ n, x, y }) => n * x * y,
});

/** Mass in kilograms of a number of panels. */
export const panelsMass = formula({
  id: "face.panels-mass",
  title: "Mass of panels",
  symbol: "M",
  kind: "mass",
  inputs: { n: panels, m: { kind: "mass", is: "mass of a panel", above: 0 } },
  expression: "n × m",
  source: "arithmetic",
  validity: "panels of one kind",
  example: { given: { n: 6, m: 7.9 }, gives: 47.4, within: 1e-9, from: "6 × 7.9 kg" },
  compute: ({ n, m }) => n * m,
});
