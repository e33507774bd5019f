import { distance, type GridCell, type Pitch } from "./grid.js";
import { shortestPath } from "./shortest-path.js";

/** An order in which a cable goes through cells, with what it asks of jumpers. */
export interface CableOrder {
  readonly cells: readonly GridCell[];
  /** The corner it begins in and whether it runs along rows or columns; undefined for a path of no such form. */
  readonly form: { readonly corner: Corner; readonly along: "rows" | "columns" } | undefined;
  /** Longest step between cell centres, in metres; 0 for one cell. */
  readonly longest: number;
  /** Steps of different length: kinds of jumper. */
  readonly lengths: number;
  /** All steps together, in metres. */
  readonly total: number;
}

export type Corner = "top-left" | "top-right" | "bottom-left" | "bottom-right";

const CORNERS: readonly Corner[] = ["top-left", "top-right", "bottom-left", "bottom-right"];

/** Steps that differ by less than a tenth of a millimetre take the same jumper. */
const SAME = 1e-4;

function measured(cells: readonly GridCell[], form: CableOrder["form"], pitch: Pitch): CableOrder {
  const steps = cells.slice(1).map((cell, index) => distance(cells[index] as GridCell, cell, pitch));
  return {
    cells,
    form,
    longest: Math.max(0, ...steps),
    lengths: new Set(steps.map((step) => Math.round(step / SAME))).size,
    total: steps.reduce((sum, step) => sum + step, 0),
  };
}

/** To and fro through the lines of a face, from one corner, leaving out what is not there. */
function serpentine(cells: readonly GridCell[], corner: Corner, along: "rows" | "columns"): readonly GridCell[] {
  const line = (cell: GridCell): number => (along === "rows" ? cell.row : cell.column);
  const place = (cell: GridCell): number => (along === "rows" ? cell.column : cell.row);
  const [fromBottom, fromRight] = [corner.startsWith("bottom"), corner.endsWith("right")];
  const [linesBack, placesBack] = along === "rows" ? [fromBottom, fromRight] : [fromRight, fromBottom];
  const lines = [...new Set(cells.map(line))].sort((a, b) => (linesBack ? b - a : a - b));
  return lines.flatMap((each, index) => {
    const back = placesBack !== (index % 2 === 1);
    return cells.filter((cell) => line(cell) === each).sort((a, b) => (back ? -1 : 1) * (place(a) - place(b)));
  });
}

/** Better first: the longest jumper, then fewer kinds of jumper, then less cable. */
export const byCable = (a: CableOrder, b: CableOrder): number =>
  Math.abs(a.longest - b.longest) > SAME
    ? a.longest - b.longest
    : a.lengths !== b.lengths
      ? a.lengths - b.lengths
      : Math.abs(a.total - b.total) > SAME
        ? a.total - b.total
        : 0;

const keyOf = (cells: readonly GridCell[]): string => cells.map(({ row, column }) => `${row}.${column}`).join(" ");

/**
 * Orders to choose from, the best first: serpentines from each corner along rows and columns; where cells are left out
 * and every serpentine has to jump over a gap, a path whose longest step is the least there can be as well.
 * @param cells those that are there
 * @param pitch in metres
 */
export function cableOrders(cells: readonly GridCell[], pitch: Pitch): readonly CableOrder[] {
  if (cells.length === 0) return [];
  const found = new Map<string, CableOrder>();
  for (const along of ["rows", "columns"] as const)
    for (const corner of CORNERS) {
      const order = serpentine(cells, corner, along);
      const key = keyOf(order);
      if (!found.has(key)) found.set(key, measured(order, { corner, along }, pitch));
    }
  const serpentines = [...found.values()].sort(byCable);
  const best = serpentines[0] as CableOrder;
  // No step can be shorter than that to a neighbour, so a serpentine without a jump cannot be bettered.
  if (best.longest <= Math.max(pitch.across, pitch.down) + SAME) return serpentines;
  const path = shortestPath(cells, pitch);
  if (!path) return serpentines;
  return [...serpentines, measured(path, undefined, pitch)].sort(byCable);
}
