import { type Content, h } from "./html.js";

/** A column's title; figures stand at its right. */
export type TableColumn = string | { readonly title: string; readonly align: "right" };

/** A row with an id can be linked. */
export type Row = readonly Content[] | { readonly id: string; readonly cells: readonly Content[] };

export const titleOf = (column: TableColumn): string => (typeof column === "string" ? column : column.title);

const isPlain = (row: Row): row is readonly Content[] => Array.isArray(row);

/** A table that scrolls by itself where it is wider than the page; the first cell of a row names the row. */
export function table(caption: string, columns: readonly TableColumn[], rows: readonly Row[]) {
  const look = (index: number) => (typeof columns[index] === "object" ? { class: "at-right" } : {});
  const cell = (content: Content, index: number) =>
    index === 0 ? h("th", { scope: "row" }, content) : h("td", look(index), content);
  const line = (row: Row) => (isPlain(row) ? h("tr", row.map(cell)) : h("tr", { id: row.id }, row.cells.map(cell)));
  const head = columns.map((column, index) => h("th", { scope: "col", ...look(index) }, titleOf(column)));
  return h("section", { class: "wide", tabindex: 0, ariaLabel: caption }, [
    h("table", [h("caption", caption), h("thead", h("tr", head)), h("tbody", rows.map(line))]),
  ]);
}
