import type { InspectionRecord } from "@plumbmark/core";
import type { Check, DocumentEntry } from "./form.js";
import { SAFETY } from "./form.js";
import { plain } from "./lines.js";
import { mendable } from "./mendable.js";

/** A comment of a review has to stay short; the record has the rest. */
const MOST = 20;

/** An author's text as plain text: nothing of it becomes a link, a table, HTML or a call of somebody's name. */
export const escaped = (text: string): string =>
  plain(text)
    .replace(/[\\`*_{}[\]()#+!|<>~&]/gu, "\\$&")
    .replace(/(^|[^\p{L}\p{N}])@(?=[\p{L}\p{N}])/gu, "$1@\u200b")
    .replace(/(https?):\/\//giu, "$1:\u200b//");

const code = (text: string): string => `\`${plain(text).replaceAll("`", "'")}\``;

const row = ({ file, title, build, verdict, counts }: DocumentEntry): string =>
  `| ${escaped(file)} | ${escaped(String(title ?? build ?? ""))} | ${verdict === "ready" ? "ready" : `**${verdict}**`} | ${counts.fails} | ${counts.open} | ${counts.waived} |`;

const RANK = { shall: 0, should: 1, note: 2 } as const;

const item = ({ level, rule, outcome, at, says, mend }: Check): string =>
  `- ${level} ${code(rule)}, line ${at.line}${outcome === "open" ? ", open" : ""}: ${escaped(says)}${mend ? ` *${escaped(mend)}*` : ""}`;

/** Open checks of a draft do not count, and there are many. */
const counts = (outcome: Check["outcome"], status: string | undefined): boolean =>
  outcome === "fails" || (outcome === "open" && status !== "draft");

function details({ file, status, checks }: DocumentEntry): readonly string[] {
  const told = checks
    .filter(({ outcome }) => counts(outcome, status))
    .sort((one, other) => RANK[one.level] - RANK[other.level]);
  if (told.length === 0) return [];
  const rest = told.length - MOST;
  return [
    "",
    `**${escaped(file)}**`,
    "",
    ...told.slice(0, MOST).map(item),
    ...(rest > 0 ? [`- and ${rest} more`] : []),
  ];
}

function* lines({ standard, documents, totals }: InspectionRecord): Iterable<string> {
  if (documents.length === 0) yield "No build document was touched, and none is concerned.";
  else {
    yield `${totals.ready} ready, ${totals.draft > 0 ? `${totals.draft} ${totals.draft === 1 ? "draft" : "drafts"}, ` : ""}${totals["not-ready"]} not ready, by ${escaped(standard)}.`;
    yield "";
    yield "| document | build | verdict | fails | open | waived |";
    yield "|---|---|---|--:|--:|--:|";
    for (const document of documents) yield row(document);
    for (const document of documents) yield* details(document);
    yield* mendable(documents, (text) => ["", text]);
  }
  yield "";
  yield `*${SAFETY}*`;
}

/** A summary for a comment in a review, in GitHub Flavored Markdown. */
export function* markdownPieces(record: InspectionRecord): Iterable<string> {
  for (const line of lines(record)) yield `${line}\n`;
}
