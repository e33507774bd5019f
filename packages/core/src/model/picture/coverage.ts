import type { Cell } from "../faces/cells.js";
import { ALONG, cellsInWords, stretchInWords } from "../faces/stretch.js";
import type { Placement } from "./placement.js";

/** Some panels of a face. */
interface Named {
  readonly count: number;
  /** Their names: `columns 13 to 24`, or `A1, B1`. */
  readonly words: string;
}

/** Whether the parts of a folded face together are the face. */
export interface Coverage {
  /** Panels in no part. */
  readonly leftOut: Named;
  /** Panels in more than one part. */
  readonly twice: Named;
  /** Columns and rows that are written of a part and that the face does not have, in words. */
  readonly beyond: readonly string[];
}

function beyondOf({ face, parts }: Placement): readonly string[] {
  return parts.flatMap(({ cut }) =>
    ALONG.flatMap((along) => {
      const [stretch, count] = [cut?.[along], face[along]];
      return stretch && stretch.last >= count
        ? [stretchInWords({ first: Math.max(stretch.first, count), last: stretch.last }, along)]
        : [];
    }),
  );
}

/** How many parts each panel is in, row by row; the four corners of every part are counted, and then summed up. */
function timesOf({ face, parts }: Placement): (cell: Cell) => number {
  const wide = face.columns + 1;
  const sums = new Int32Array(wide * (face.rows + 1));
  const count = (row: number, column: number, by: number): void => {
    if (row <= face.rows && column <= face.columns) sums[row * wide + column] = (sums[row * wide + column] ?? 0) + by;
  };
  for (const { cut, isUnread } of parts) {
    if (isUnread) continue;
    const [left, right] = [cut?.columns?.first ?? 0, (cut?.columns?.last ?? face.columns - 1) + 1];
    const [top, bottom] = [cut?.rows?.first ?? 0, (cut?.rows?.last ?? face.rows - 1) + 1];
    count(top, left, 1);
    count(top, right, -1);
    count(bottom, left, -1);
    count(bottom, right, 1);
  }
  for (let at = 0; at < sums.length; at += 1) {
    const above = at < wide ? 0 : (sums[at - wide] ?? 0);
    const [before, corner] = at % wide === 0 ? [0, 0] : [sums[at - 1] ?? 0, at < wide ? 0 : (sums[at - wide - 1] ?? 0)];
    sums[at] = (sums[at] ?? 0) + above + before - corner;
  }
  return ({ row, column }) => sums[row * wide + column] ?? 0;
}

export function coverageOf(placement: Placement): Coverage {
  const { cells } = placement.face;
  const named = (some: readonly Cell[]): Named => ({ count: some.length, words: cellsInWords(some, cells) });
  const times = timesOf(placement);
  return {
    leftOut: named(cells.filter((cell) => times(cell) === 0)),
    twice: named(cells.filter((cell) => times(cell) > 1)),
    beyond: [...new Set(beyondOf(placement))],
  };
}
