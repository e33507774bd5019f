import { cellName } from "@plumbmark/core";
import type { GridCell } from "../search/grid.js";

/** Cells in cable order as a document writes them: `A1..A6, B6..B1`. */
export function cellsText(cells: readonly GridCell[]): string {
  const pieces: string[] = [];
  for (let at = 0; at < cells.length; ) {
    const first = cells[at] as GridCell;
    const next = cells[at + 1];
    let end = at;
    if (next) {
      const [down, across] = [next.row - first.row, next.column - first.column];
      if (Math.abs(down) + Math.abs(across) === 1)
        while (
          end + 1 < cells.length &&
          (cells[end + 1] as GridCell).row - (cells[end] as GridCell).row === down &&
          (cells[end + 1] as GridCell).column - (cells[end] as GridCell).column === across
        )
          end += 1;
    }
    const last = cells[end] as GridCell;
    pieces.push(end === at ? cellName(first) : `${cellName(first)}..${cellName(last)}`);
    at = end + 1;
  }
  return pieces.join(", ");
}
