import { LARGE, LEADING, lettering, SMALL, wrapped } from "./lettering.js";
import type { Shapes } from "./svg.js";

interface Stacked {
  readonly shapes: Shapes;
  readonly height: number;
}

/** Lines of small lettering, one under another, wrapped to the width. */
export function notes(words: readonly string[], x: number, y: number, width: number): Stacked {
  const lines = words.flatMap((each) => wrapped(each, width, SMALL));
  const shapes = lines.map((each, index) => lettering(each, [x, y + LEADING * (index + 0.8)], { size: SMALL }));
  return { shapes, height: lines.length * LEADING };
}

/** Title and, smaller, what to know before reading the drawing. */
export function drawingHeading(title: string, below: readonly string[], width: number): Stacked {
  const lines = wrapped(title, width - 4, LARGE);
  const own = lines.map((each, index) => lettering(each, [2, 5 + index * 5], { size: LARGE, bold: true }));
  const rest = notes(below, 2, 3 + lines.length * 5, width - 4);
  return { shapes: [...own, ...rest.shapes], height: 3 + lines.length * 5 + rest.height };
}
