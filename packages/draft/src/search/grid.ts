/** A cell of a face: row from the top and column from the audience's left, both from 0. */
export interface GridCell {
  readonly row: number;
  readonly column: number;
}

/** Distance of neighbouring cells' centres, in metres. */
export interface Pitch {
  readonly across: number;
  readonly down: number;
}

/** Straight distance between the centres of two cells, in metres. */
export const distance = (from: GridCell, to: GridCell, pitch: Pitch): number =>
  Math.hypot((to.column - from.column) * pitch.across, (to.row - from.row) * pitch.down);

/** Every cell of a face but those left out, row by row from the top left. */
export function cellsOf(columns: number, rows: number, omitted: readonly GridCell[] = []): readonly GridCell[] {
  const gone = new Set(omitted.map(({ row, column }) => row * columns + column));
  return Array.from({ length: columns * rows }, (_, index) => index)
    .filter((index) => !gone.has(index))
    .map((index) => ({ row: Math.floor(index / columns), column: index % columns }));
}
