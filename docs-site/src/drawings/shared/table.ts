import { fitted, lettering, measure, SMALL } from "./lettering.js";
import { line, type Shapes, WIDE } from "./svg.js";

export interface DrawnCell {
  readonly words: string;
  readonly data?: Readonly<Record<string, string | number>>;
}

interface Placed {
  readonly shapes: Shapes;
  /** Height it takes, millimetres. */
  readonly height: number;
  readonly width: number;
}

const ROW = 4.6;
const APART = 3;

/** Columns as wide as their words; the widest give way until the whole fits. */
function widthsOf(rows: readonly (readonly DrawnCell[])[], most: number): readonly number[] {
  const count = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: count }, (_, column) =>
    Math.max(...rows.map((row, index) => measure(row[column]?.words ?? "", SMALL, index === 0) + APART)),
  );
  for (let excess = widths.reduce((a, b) => a + b, 0) - most; excess > 0.01; ) {
    const widest = widths.indexOf(Math.max(...widths));
    const next = Math.max(8, ...widths.filter((each) => each < (widths[widest] as number) - 0.01));
    const cut = Math.min(excess, Math.max(0.5, (widths[widest] as number) - next));
    widths[widest] = (widths[widest] as number) - cut;
    excess -= cut;
    if ((widths[widest] as number) <= 8) break;
  }
  return widths;
}

/** A plain table below a drawing: a heading row, a rule, one row a thing. */
export function drawnTable(
  header: readonly string[],
  rows: readonly (readonly DrawnCell[])[],
  [x, y]: readonly [number, number],
  most: number,
): Placed {
  const all = [header.map((words): DrawnCell => ({ words })), ...rows];
  const widths = widthsOf(all, most);
  const shapes = all.flatMap((row, index) => {
    let left = x;
    return row.map(({ words, data }, column) => {
      const at = left;
      const width = widths[column] as number;
      left += width;
      const bold = index === 0;
      return lettering(fitted(words, width - 1, SMALL), [at, y + ROW * (index + 0.75)], {
        size: SMALL,
        bold,
        data: data ?? {},
      });
    });
  });
  const width = widths.reduce((a, b) => a + b, 0);
  const rule = line([x, y + ROW * 1.05], [x + width, y + ROW * 1.05], { strokeWidth: WIDE });
  return { shapes: [...shapes, rule], height: all.length * ROW + 2, width };
}
