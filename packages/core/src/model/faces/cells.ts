/** A panel's place in a face: row from the top (0 = A), column from the audience's left (0 = 1). */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/** 0 → A, 25 → Z, 26 → AA. */
export function rowName(row: number): string {
  return row < 26 ? String.fromCharCode(65 + row) : rowName(Math.floor(row / 26) - 1) + rowName(row % 26);
}

export const cellName = ({ row, column }: Cell): string => `${rowName(row)}${column + 1}`;

export function readCell(text: string): Cell | undefined {
  const match = /^([A-Z]{1,2})([1-9]\d{0,3})$/u.exec(text);
  if (!match) return undefined;
  const row = [...(match[1] as string)].reduce((total, letter) => total * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { row, column: Number(match[2]) - 1 };
}

export type CellsReading =
  | { readonly ok: true; readonly cells: readonly Cell[] }
  | { readonly ok: false; readonly says: string; readonly mend: string };

const FORM = "Write cells such as `A1`, or ranges along a row or a column such as `A1..A6`, separated by commas.";

/** Reads `A1..A6, B6..B1`: a range runs along a row or down a column, either way. */
export function readCells(text: string): CellsReading {
  const cells: Cell[] = [];
  for (const piece of text
    .split(",")
    .map((each) => each.trim())
    .filter((each) => each !== "")) {
    const [from, to, more] = piece.split("..").map((each) => readCell(each.trim()));
    if (!from || more !== undefined || (piece.includes("..") && !to))
      return { ok: false, says: `\`${piece}\` is no cell and no range of cells.`, mend: FORM };
    const end = to ?? from;
    if (from.row !== end.row && from.column !== end.column)
      return { ok: false, says: `The range \`${piece}\` runs along no row and no column.`, mend: FORM };
    const steps = Math.max(Math.abs(end.row - from.row), Math.abs(end.column - from.column));
    for (let step = 0; step <= steps; step += 1)
      cells.push({
        row: from.row + Math.sign(end.row - from.row) * step,
        column: from.column + Math.sign(end.column - from.column) * step,
      });
    if (cells.length > 20_000)
      return { ok: false, says: `\`${text.slice(0, 40)}\` names more than 20,000 cells.`, mend: FORM };
  }
  return cells.length > 0 ? { ok: true, cells } : { ok: false, says: "No cell is named.", mend: FORM };
}
