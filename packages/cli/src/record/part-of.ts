import { type InspectionRecord, totalsOf } from "@plumbmark/core";
import type { DocumentEntry } from "../report/form.js";
import type { Unreadable } from "../repository/read-files.js";

const START = { line: 1, column: 1 };

/** A file that could not be read, as an entry of the record: it is not ready. */
const entryOf = ({ path, says, mend, at = START }: Unreadable): DocumentEntry => ({
  file: path,
  verdict: "not ready",
  counts: { checks: 1, holds: 0, fails: 1, open: 0, waived: 0 },
  checks: [
    {
      rule: "document.front-matter",
      level: "shall",
      outcome: "fails",
      at: { path: "", line: at.line, column: at.column, endLine: at.line, endColumn: at.column },
      says,
      mend,
      sources: [],
    },
  ],
});

/** The record with the files that could not be read, and without the documents that were not asked for. */
export function partOf(
  record: InspectionRecord,
  unreadable: readonly Unreadable[],
  wants: (file: string) => boolean,
): InspectionRecord {
  const documents = [...record.documents, ...unreadable.map(entryOf)]
    .filter(({ file }) => wants(file))
    .sort((one, other) => (one.file < other.file ? -1 : one.file > other.file ? 1 : 0));
  return { ...record, documents, totals: totalsOf(documents) };
}
