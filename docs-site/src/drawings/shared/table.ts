import { fitted, lettering, measure, SMALL, wrapped } from "./lettering.js";
import { line, type PaperPoint, type Shapes, WIDE } from "./svg.js";

export interface DrawnCell {
  readonly words: string;
  readonly data?: Readonly<Record<string, string | number>>;
  /** On a line of its own under its row, over the whole width: what has to be said of a row and fits no column. */
  readonly below?: boolean;
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
  const columns = all.map((row) => row.filter(({ below }) => !below));
  const widths = widthsOf(columns, most);
  const lefts = widths.map((_, column) => x + widths.slice(0, column).reduce((a, b) => a + b, 0));
  let height = 0;
  const shapes = all.flatMap((row, index): Shapes => {
    const base = y + height + ROW * 0.75;
    const cells = (columns[index] ?? []).map(({ words, data }, column) =>
      lettering(fitted(words, (widths[column] as number) - 1, SMALL), [lefts[column] as number, base], {
        size: SMALL,
        bold: index === 0,
        data: data ?? {},
      }),
    );
    height += ROW;
    const under = row
      .filter(({ below }) => below)
      .flatMap(({ words, data }) =>
        wrapped(`Does not hold: ${words}`, (most - APART) / 1.1, SMALL).map((each, place) => {
          height += ROW;
          const at: PaperPoint = [x + APART, y + height - ROW * 0.25];
          return lettering(each, at, { size: SMALL, bold: true, data: place === 0 ? (data ?? {}) : {} });
        }),
      );
    return [...cells, ...under];
  });
  const width = widths.reduce((a, b) => a + b, 0);
  const rule = line([x, y + ROW * 1.05], [x + width, y + ROW * 1.05], { strokeWidth: WIDE });
  return { shapes: [...shapes, rule], height: height + 2, width };
}
