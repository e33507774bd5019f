import type { System } from "@plumbmark/calc";
import type { Build } from "@plumbmark/core";
import type { Element } from "hast";
import { toHtml } from "hast-util-to-html";
import { s } from "hastscript";
import { num, paper, type Shapes } from "./svg.js";
import { fitForXml } from "./text.js";

/** What a drawing is made from. */
export interface Subject {
  readonly build: Build;
  readonly system: System;
}

/** One drawing, in millimetres of paper. */
export interface Drawing {
  /** Name of its file and of links to it: `hang-plot-header`. */
  readonly name: string;
  readonly title: string;
  /** What it shows, for whoever cannot see it. */
  readonly description: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: Shapes;
}

/** Width between the margins of A4 and of Letter, millimetres. */
export const SHEET_WIDTH = 178;

/** The drawing as an element. `id` is its own on the page; colours are attributes, so that a file needs nothing else. */
export function svg(drawing: Drawing, id: string, more: Readonly<Record<string, string>> = {}): Element {
  const { title, description, shapes } = drawing;
  const [width, height] = [num(drawing.width), num(drawing.height)];
  return s(
    "svg",
    {
      ...more,
      className: ["drawing"],
      viewBox: `0 0 ${width} ${height}`,
      width: `${width}mm`,
      height: `${height}mm`,
      role: "img",
      ariaLabelledBy: `${id}-title ${id}-text`,
      fontFamily: "system-ui, sans-serif",
      color: "#111",
    },
    s("title", { id: `${id}-title` }, fitForXml(title)),
    s("desc", { id: `${id}-text` }, fitForXml(description)),
    paper({ x: 0, y: 0, width, height }),
    ...shapes,
  );
}

/** The drawing as a file of its own, well-formed XML. */
export const svgFile = (drawing: Drawing): string => {
  const root = svg(drawing, "Drawing", { xmlns: "http://www.w3.org/2000/svg" });
  return `<?xml version="1.0" encoding="UTF-8"?>\n${toHtml(root, { space: "svg", closeEmptyElements: true })}\n`;
};
