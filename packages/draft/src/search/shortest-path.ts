import { distance, type GridCell, type Pitch } from "./grid.js";

/** More cells than this are not searched for the shortest path: the table grows with two to their number. */
export const MOST_CELLS_EXACT = 14;

/**
 * The path through all cells whose longest step is least and, among those, whose length is least, by the table of
 * Held and Karp (“A dynamic programming approach to sequencing problems”, 1962) over sets of cells visited.
 * @param pitch in metres
 * @returns the cells in order; undefined when there are more than are searched exactly
 */
export function shortestPath(cells: readonly GridCell[], pitch: Pitch): readonly GridCell[] | undefined {
  const count = cells.length;
  if (count > MOST_CELLS_EXACT) return undefined;
  if (count < 2) return cells;
  const steps = cells.map((from) => cells.map((to) => distance(from, to, pitch)));
  const limits = [...new Set(steps.flat())].sort((a, b) => a - b).filter((step) => step > 0);
  // Whether a path exists grows with the longest step allowed, so the least such step is found by halving.
  let [low, high] = [0, limits.length - 1];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (pathWithin(steps, limits[middle] as number)) high = middle;
    else low = middle + 1;
  }
  const path = pathWithin(steps, limits[low] as number);
  return path?.map((index) => cells[index] as GridCell);
}

/** The shortest path of steps no longer than `limit`; undefined when there is none. */
function pathWithin(steps: readonly (readonly number[])[], limit: number): readonly number[] | undefined {
  const count = steps.length;
  const sets = 1 << count;
  const least = new Float64Array(sets * count).fill(Number.POSITIVE_INFINITY);
  const before = new Int8Array(sets * count).fill(-1);
  for (let cell = 0; cell < count; cell += 1) least[(1 << cell) * count + cell] = 0;
  for (let set = 1; set < sets; set += 1)
    for (let last = 0; last < count; last += 1) {
      const here = least[set * count + last] as number;
      if (!Number.isFinite(here)) continue;
      const row = steps[last] as readonly number[];
      for (let next = 0; next < count; next += 1) {
        const step = row[next] as number;
        if (set & (1 << next) || step > limit + 1e-9) continue;
        const at = (set | (1 << next)) * count + next;
        if (here + step < (least[at] as number) - 1e-12) {
          least[at] = here + step;
          before[at] = last;
        }
      }
    }
  const whole = sets - 1;
  let last = 0;
  for (let cell = 1; cell < count; cell += 1)
    if ((least[whole * count + cell] as number) < (least[whole * count + last] as number) - 1e-12) last = cell;
  if (!Number.isFinite(least[whole * count + last] as number)) return undefined;
  const path: number[] = [];
  for (let set = whole; last >= 0; ) {
    path.push(last);
    const previous = before[set * count + last] as number;
    set &= ~(1 << last);
    last = previous;
  }
  return path.reverse();
}
