import type { Brief } from "../brief.js";
import { type CableOrder, cableOrders } from "../search/cable-order.js";
import { cellsOf, type GridCell } from "../search/grid.js";
import type { Decision, Scheme } from "./decision.js";
import { sizeIn } from "./size.js";

/** The order cables go through the face in: no step is longer than to the next panel where that can be. */
export function ordered(brief: Brief, scheme: Scheme): { readonly order: CableOrder; readonly decision: Decision } {
  const { columns, rows } = scheme;
  const size = sizeIn(brief, scheme) ?? { width: 1, height: 1 };
  const [order] = cableOrders(cellsOf(columns, rows), { across: size.width, down: size.height });
  const best = order as CableOrder;
  const form = best.form;
  return {
    order: best,
    decision: {
      what: "cable order",
      why: form
        ? `To and fro along ${form.along} from the ${form.corner.replace("-", " ")}, seen from the audience: every jumper goes to the next panel.`
        : "The path whose longest step is the least there can be.",
      exact: true,
      figures: [],
    },
  };
}

/** Every other line of cells, or every other cell of one line, in two parts that lie between one another. */
export function interleaved(cells: readonly GridCell[], rows: number): readonly (readonly GridCell[])[] {
  const isFirst = ({ row, column }: GridCell): boolean => (rows > 1 ? row : column) % 2 === 0;
  const parts = [cells.filter(isFirst), cells.filter((cell) => !isFirst(cell))];
  return parts.map((part) => snaked(part));
}

/** Cells line by line, to and fro. */
function snaked(cells: readonly GridCell[]): readonly GridCell[] {
  const lines = [...new Set(cells.map(({ row }) => row))].sort((a, b) => a - b);
  return lines.flatMap((line, index) =>
    cells.filter(({ row }) => row === line).sort((a, b) => (index % 2 === 0 ? 1 : -1) * (a.column - b.column)),
  );
}
