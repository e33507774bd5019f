import { tableMarkdown } from "@plumbmark/core";
import { buildableTable, type DraftRecord, lengthAsWritten, optionsTable, pairsTable } from "@plumbmark/draft";
import { SAFETY } from "../form.js";
import { conditionLines } from "./conditions.js";
import { fallenLines } from "./fallen.js";

/** Words of others as Markdown that does nothing. */
export const inert = (text: string): string => text.replace(/\s+/gu, " ").replace(/[\\`*_{}[\]<>#|~&]/gu, "\\$&");

const listed = (title: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : [`### ${title}`, "", ...lines.map((line) => `- ${inert(line)}`), ""];

/** What came of a wish, as Markdown for a message or a page. */
export function draftMarkdown(record: DraftRecord): string {
  const out = fallenLines(record);
  const { "can-build": can = [], pairs = [] } = record;
  return [
    ...(can.length > 0
      ? [tableMarkdown(buildableTable(record, (metres) => lengthAsWritten(metres, record.units)))]
      : []),
    ...(pairs.length > 0 ? [tableMarkdown(pairsTable(record))] : []),
    ...(record.options.length > 0
      ? [tableMarkdown(optionsTable(record))]
      : [`## ${inert(record.title)}`, "", "Nothing that is on offer meets this wish.", ""]),
    ...listed("Not said", record["not-said"]),
    ...listed(
      "What each trades",
      record.options.map(({ number, trades }) => `Option ${number}: ${trades}`),
    ),
    ...listed("Possible, if", conditionLines(record)),
    ...listed("What fell out, and why", out),
    ...listed("Not looked at", record["not-looked-at"]),
    `_${SAFETY}_`,
    "",
  ].join("\n");
}
