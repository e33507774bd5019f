import { h } from "hastscript";
import { type Content, flat } from "./page.js";

export interface Column {
  readonly title: string;
  readonly align?: "right";
}

/** A table that scrolls by itself where it is wider than the page; the first cell of a row names the row. */
export function table(caption: string, columns: readonly Column[], rows: readonly (readonly Content[])[]) {
  const look = (index: number) => (columns[index]?.align === "right" ? { class: "at-right" } : {});
  return h("section", { class: "wide", tabIndex: 0, ariaLabel: caption }, [
    h("table", [
      h("caption", caption),
      h(
        "thead",
        h(
          "tr",
          columns.map(({ title }, index) => h("th", { scope: "col", ...look(index) }, title)),
        ),
      ),
      h(
        "tbody",
        rows.map((row) =>
          h(
            "tr",
            row.map((cell, index) =>
              index === 0 ? h("th", { scope: "row" }, flat(cell)) : h("td", look(index), flat(cell)),
            ),
          ),
        ),
      ),
    ]),
  ]);
}
