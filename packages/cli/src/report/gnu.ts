import type { InspectionRecord } from "@plumbmark/core";
import type { Check } from "./form.js";
import { plain } from "./lines.js";

const line = (file: string, { at, level, outcome, rule, says }: Check): string =>
  `${plain(file)}:${at.line}:${at.column}: ${level} ${rule} ${outcome}: ${plain(says)}`;

/** One line a check, `file:line:column: message`, as the GNU Coding Standards have it ("Formatting Error Messages"). */
export function* gnuPieces({ documents }: InspectionRecord): Iterable<string> {
  for (const { file, checks } of documents) for (const check of checks) yield `${line(file, check)}\n`;
}
