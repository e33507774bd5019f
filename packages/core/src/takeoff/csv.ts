import { safeText } from "../document/safe-text.js";
import { columnHeading, NOT_STATED, type ScheduleCell, type ScheduleTable } from "./table.js";

/** Beginnings a spreadsheet takes for a formula, even inside quotes. */
const FORMULA = /^[=+\-@\t\r]/u;

/** Words that begin like a formula get an apostrophe in front, which makes a spreadsheet show them as they stand. */
const harmless = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);

/**
 * RFC 4180, section 2, 5 to 7: a field with a comma, a quote or a control stands in quotes, its quotes doubled. No
 * control moves the cursor of whoever looks at the file in a terminal.
 */
const field = (text: string): string => {
  const safe = safeText(text);
  return /[",\p{Cc}]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};

/** Digits and a point only: no sign of grouping, no power of ten. */
const plainNumber = (value: number): string =>
  /e/u.test(String(value)) ? value.toFixed(12).replace(/\.?0+$/u, "") : String(value);

const cell = ({ text, number }: ScheduleCell): string =>
  number === undefined ? field(harmless(text)) : plainNumber(number);

/** How sure the least sure of a row is: numbers stay numbers, so it stands in a column of its own. */
function sureOf(row: readonly ScheduleCell[]): string {
  if (row.some(({ stated }) => !stated)) return NOT_STATED;
  return (["guess", "bound", "assumed"] as const).find((sure) => row.some((each) => each.sure === sure)) ?? "stated";
}

/**
 * A schedule as CSV by RFC 4180: a header line, lines that end in CRLF, UTF-8 without a mark. Behind the columns of the
 * schedule stands `sure`.
 * @param verdict how the document was judged. It is the last column: a line before or after the table would break every
 *   reader that takes the first line for the heads (RFC 4180, section 2, 3 and 4), and is lost as soon as rows are
 *   sorted or copied.
 */
export const tableCsv = (table: ScheduleTable, verdict?: string): string => {
  const [head, own] = verdict === undefined ? [[], []] : [["Verdict"], [field(harmless(verdict))]];
  return [
    [...table.columns.map((column) => field(harmless(columnHeading(column)))), "sure", ...head],
    ...table.rows.map((row) => [...row.map(cell), sureOf(row), ...own]),
  ]
    .map((line) => `${line.join(",")}\r\n`)
    .join("");
};
