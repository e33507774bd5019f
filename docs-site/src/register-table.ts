import { h } from "hastscript";
import { type Content, flat } from "./page.js";

/** A table of the register; the first cell of a row names it. */
export const registerTable = (
  caption: string,
  head: readonly string[],
  rows: readonly { readonly id: string; readonly cells: readonly Content[] }[],
): Content =>
  h(
    "section",
    { class: "wide", tabIndex: 0, ariaLabel: caption },
    h("table", [
      h("caption", caption),
      h(
        "thead",
        h(
          "tr",
          head.map((each) => h("th", { scope: "col" }, each)),
        ),
      ),
      h(
        "tbody",
        rows.map(({ id, cells: [first, ...rest] }) =>
          h("tr", { id }, [h("th", { scope: "row" }, flat(first)), ...rest.map((each) => h("td", flat(each)))]),
        ),
      ),
    ]),
  );
