import type { Method } from "../../register/method.js";

/** A row of a truss maker's load table: what a simple span of this length may carry. */
export interface LoadRow {
  /** Metres. */
  readonly span: number;
  /** Uniform load, kg/m. */
  readonly uniform: number;
  /** One load in the middle, kg. */
  readonly centre: number;
}

/** What a row proves a span may be asked for. */
export interface SpanLimits {
  /** The row that is used: its own span, metres. */
  readonly row: number;
  /** kg·m */
  readonly moment: number;
  /** kg */
  readonly shear: number;
}

/**
 * The loads of the next longer row, put on the span that is wanted: linear interpolation of a falling convex curve lies
 * above it, so it is not safe. Of the moments of uniform and centre load the lesser is the limit, since a row does not
 * say whether bending, shear or deflection governs it; of the end shears the greater, since the maker lets the truss
 * carry either. Undefined beyond the longest row: that is for the maker to say.
 */
export function spanLimits(rows: readonly LoadRow[], span: number): SpanLimits | undefined {
  const row = [...rows].sort((a, b) => a.span - b.span).find((each) => each.span >= span - 1e-9);
  if (!row) return undefined;
  return {
    row: row.span,
    moment: Math.min((row.uniform * span ** 2) / 8, (row.centre * span) / 4),
    shear: Math.max((row.uniform * span) / 2, row.centre / 2),
  };
}

export const loadTableMethods: readonly Method[] = [
  {
    name: "spanLimits",
    title: "Moment and shear a truss maker's load table lets a simple span carry",
    of: spanLimits,
    units: "rows of m, kg/m and kg; m → kg·m, kg",
    sources: ["truss-tables", "statics"],
    validity:
      "one span on two hangs at its ends, loads at the nodes and on the centre line; other cases are the maker's",
    example: {
      asks: "9 m by a table of 8 m and 10 m whose uniform load falls with 1 ÷ span²: its own would be 1/81",
      got: () => {
        const rows = [8, 10].map((span) => ({ span, uniform: 1 / span ** 2, centre: 1 }));
        return ((spanLimits(rows, 9)?.moment ?? 0) * 8) / 9 ** 2;
      },
      gives: 0.01,
      from: "the row of 10 m: 1/100, where a straight line between the rows gives 0.0128125",
    },
  },
];
