import { cssText } from "./css-text.js";

const NARROW = "@media screen and (max-width:42rem)";

/** Before each cell of a table in an element of class `name` the head of its column; the first column names the row. */
const labels = (name: string, heads: readonly string[]): string =>
  heads
    .slice(1)
    .map((head, index) => `.${name} td:nth-of-type(${index + 1})::before{content:${cssText(`${head} `)}}`)
    .join("");

/**
 * Where a screen is too narrow for a table, each of its rows is a block (`.rows` in style.ts), and every cell says of
 * what column it is. In the page itself that would stand again in every row.
 */
export const rowLabels = (tables: readonly (readonly [name: string, heads: readonly string[]])[]): string =>
  tables.length === 0 ? "" : `${NARROW}{${tables.map(([name, heads]) => labels(name, heads)).join("")}}\n`;
