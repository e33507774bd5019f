import { columnHeading, type ScheduleTable } from "./table.js";

/** Everything Markdown would read as a mark is escaped, a line break becomes a blank. */
const inert = (text: string): string => text.replace(/\s+/gu, " ").replace(/[\\`*_{}[\]<>#|~&]|:(?=\/)/gu, "\\$&");

const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |\n`;

/** A schedule as a GFM table below a heading; numbers stand to the right. */
export const tableMarkdown = ({ title, columns, rows }: ScheduleTable): string =>
  [
    `## ${inert(title)}\n\n`,
    line(columns.map((column) => inert(columnHeading(column)))),
    line(columns.map(({ numeric }) => (numeric ? "---:" : "---"))),
    ...rows.map((row) => line(row.map(({ text }) => inert(text)))),
  ].join("");
