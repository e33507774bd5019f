import { type Cell, cellName } from "@plumbmark/core";

const step = (from: Cell, to: Cell): readonly [number, number] => [to.row - from.row, to.column - from.column];

/** Cells in cable order as a document writes them: `A1..A6, B6..B1`. */
export function cellRanges(cells: readonly Cell[]): string {
  const ranges: { from: Cell; to: Cell; way: readonly [number, number] | undefined }[] = [];
  for (const cell of cells) {
    const last = ranges.at(-1);
    const [down, across] = last ? step(last.to, cell) : [9, 9];
    const goesOn =
      Math.abs(down) + Math.abs(across) === 1 && (!last?.way || (last.way[0] === down && last.way[1] === across));
    if (last && goesOn) Object.assign(last, { to: cell, way: [down, across] });
    else ranges.push({ from: cell, to: cell, way: undefined });
  }
  return ranges.map(({ from, to, way }) => (way ? `${cellName(from)}..${cellName(to)}` : cellName(from))).join(", ");
}
