import type { Cell } from "./cells.js";
import type { Face } from "./face.js";

/** Rows from where a face is held: from the top where it hangs, from the bottom where it stands; none of any other. */
function rowsFrom({ support, rows }: Face): readonly number[] {
  const down = Array.from({ length: rows }, (_, row) => row);
  if (support === "flown") return down;
  return support === "stacked" || support === "deck" ? down.reverse() : [];
}

/** Panels with a gap between them and the edge their face is held at: nothing in their own column holds them. */
export function unheldOf(face: Face): readonly Cell[] {
  const rows = rowsFrom(face);
  return Array.from({ length: face.columns }, (_, column) => column).flatMap((column) => {
    const gap = rows.findIndex((row) => !face.has({ row, column }));
    return gap < 0 ? [] : rows.slice(gap).flatMap((row) => (face.has({ row, column }) ? [{ row, column }] : []));
  });
}

/**
 * Panels one end panel of each column holds, itself included. Panels beyond a gap hang on the columns beside them; which
 * one is not known, so the nearest column without a gap on either side is taken to hold them all.
 */
export function heldPerColumn(face: Face): readonly number[] {
  const own = new Array<number>(face.columns).fill(0);
  for (const { column } of face.cells) own[column] = (own[column] ?? 0) + 1;
  const beyond = new Array<number>(face.columns).fill(0);
  for (const { column } of unheldOf(face)) beyond[column] = (beyond[column] ?? 0) + 1;
  const held = own.map((count, column) => count - (beyond[column] ?? 0));
  for (const step of [1, -1]) {
    let carried = 0;
    for (let column = step === 1 ? 0 : face.columns - 1; column >= 0 && column < face.columns; column += step) {
      if ((beyond[column] ?? 0) > 0) carried += beyond[column] ?? 0;
      else {
        held[column] = (held[column] ?? 0) + carried;
        carried = 0;
      }
    }
  }
  return held;
}
