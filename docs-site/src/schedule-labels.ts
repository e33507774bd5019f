import { heading, type Table, withoutEmpty } from "@plumbmark/core";
import { cssText } from "./css-text.js";
import type { Published } from "./documents.js";
import { filled } from "./schedules.js";

/** The first column names the row and needs no label; cells are counted from the one after it. */
const labels = (full: Table): readonly string[] =>
  withoutEmpty(full)
    .columns.slice(1)
    .map(
      (column, index) =>
        `.${full.name} td:nth-of-type(${index + 1})::before{content:${cssText(`${heading(column)} `)}}`,
    );

/**
 * Where a screen is too narrow for a table, each of its rows is a block, and every cell says of what column it is. Which
 * columns there are and in what units is another matter for each document. In the page itself it would stand again in
 * every row.
 */
export function scheduleLabels(document: Published): string {
  const all = filled(document).flatMap(([, full]) => labels(full));
  return all.length === 0 ? "" : `@media screen and (max-width:42rem){${all.join("")}}\n`;
}
