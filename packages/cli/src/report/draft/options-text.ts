import type { ScheduleTable } from "@plumbmark/core";
import { buildableTable, comparedOptions, type DraftRecord, lengthAsWritten, pairsTable } from "@plumbmark/draft";
import type { Colour } from "../../terminal/context.js";
import { SAFETY } from "../form.js";
import { plain, wrap } from "../lines.js";
import { palette } from "../palette.js";
import { tableText } from "../table-text.js";
import { conditionLines } from "./conditions.js";
import { fallenLines } from "./fallen.js";

const heading = (text: string, { colour }: { readonly colour: Colour }): string => `${palette(colour).strong(text)}\n`;

type Around = { readonly width: number; readonly colour: Colour };

/** Lines of a list, each begun with a mark and folded below it. */
const list = (lines: readonly string[], { width }: Around): string =>
  lines
    .map(
      (line) =>
        `${wrap(plain(line), width - 4)
          .map((each, index) => `${index === 0 ? "  - " : "    "}${each}`)
          .join("\n")}\n`,
    )
    .join("");

const lengthIn =
  (units: DraftRecord["units"]) =>
  (metres: number): string =>
    lengthAsWritten(metres, units);

/** A table of one row with its columns one below the other: so many side by side fit no terminal. */
const upright = ({ columns, rows: [row = []], ...rest }: ScheduleTable): ScheduleTable => ({
  ...rest,
  columns: [columns[0]?.name ?? "", row[0]?.text ?? ""].map((name) => ({ name, numeric: false })),
  rows: columns.slice(1).flatMap(({ name }, at) => {
    const found = row[at + 1];
    return found ? [[{ text: name, stated: true }, found]] : [];
  }),
});

/** What came of a wish, for a terminal: what was not said, the options in a table, what each trades, why others fell out. */
export function draftText(record: DraftRecord, around: Around): string {
  const pieces: string[] = [];
  const { options } = record;
  if (record["not-said"].length > 0) pieces.push(heading("Not said", around) + list(record["not-said"], around));
  const { "can-build": can = [], pairs = [] } = record;
  if (can.length > 0) pieces.push(tableText(buildableTable(record, lengthIn(record.units)), around));
  if (pairs.length > 0)
    pieces.push(
      tableText(pairsTable(record), around),
      `${wrap("Each face was looked at by itself; whether circuits and structure take both at once is told once both are drafted.", around.width).join("\n")}\n`,
    );
  if (options.length > 0) {
    const { table, alike } = comparedOptions(record);
    // Where options differ in nothing that is counted, what each trades tells them apart.
    if (table.columns.length > 1) pieces.push(tableText(options.length === 1 ? upright(table) : table, around));
    else pieces.push(`${plain(record.title)}: ${options.length} options\n`);
    if (alike !== undefined) pieces.push(`${wrap(plain(alike), around.width).join("\n")}\n`);
    pieces.push(
      heading("What each trades", around) +
        list(
          options.map(({ number, trades }) => `Option ${number}: ${trades}`),
          around,
        ),
    );
    const conditions = conditionLines(record);
    if (conditions.length > 0) pieces.push(heading("Possible, if", around) + list(conditions, around));
  } else pieces.push(`${plain(record.title)}: nothing that is on offer meets this wish.\n`);
  const out = fallenLines(record);
  if (out.length > 0)
    pieces.push(
      heading(options.length > 0 ? "What fell out, and why" : "What is in the way", around) + list(out, around),
    );
  const { nearest } = record;
  if (nearest)
    pieces.push(
      list(
        [
          `The nearest that can be made is ${lengthIn(record.units)(nearest.width)} × ${lengthIn(record.units)(nearest.height)}, of ${nearest.panel}.`,
        ],
        around,
      ),
    );
  if (record["not-looked-at"].length > 0)
    pieces.push(heading("Not looked at", around) + list(record["not-looked-at"], around));
  if (options.length > 0)
    pieces.push(
      `Write one with \`--option NUMBER --to builds/NAME.md\`; it is a draft, and lists what is still to be found out.\n`,
    );
  pieces.push(`${wrap(SAFETY, around.width).join("\n")}\n`);
  return pieces.join("\n");
}
