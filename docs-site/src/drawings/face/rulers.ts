import { rowName } from "@plumbmark/core";
import { aboutMiddle, onPaper, SMALL } from "../shared/lettering.js";
import type { Shapes } from "../shared/svg.js";
import { roomIn, type View } from "./view.js";

const step = (size: number, needed: number): number =>
  [1, 2, 5, 10, 20, 50, 100, 200, 500].find((each) => each * size >= needed) ?? 1000;

const lettered = (words: string, x: number, y: number): Shapes =>
  onPaper(words, [x, y], { size: SMALL, anchor: "middle" });

/** Column numbers above and row letters beside a face whose cells are too small for their own names. */
export function rulers(view: View, side: "left" | "right"): Shapes {
  if (roomIn(view) === "name") return [];
  const { face, outline, cell } = view;
  const across = step(cell.width, 6);
  const down = step(cell.height, SMALL + 0.6);
  const columns = Array.from({ length: face.columns }, (_, column) => column).filter(
    (column) => column === 0 || (column + 1) % across === 0,
  );
  const rows = Array.from({ length: face.rows }, (_, row) => row).filter((row) => row % down === 0);
  const x = side === "left" ? outline.x - 3 : outline.x + outline.width + 3;
  return [
    ...columns.flatMap((column) => lettered(String(column + 1), view.centre({ row: 0, column })[0], outline.y - 1.2)),
    ...rows.flatMap((row) => lettered(rowName(row), x, aboutMiddle(view.centre({ row, column: 0 })[1]))),
  ];
}
