import type { CheckEntry, DocumentEntry, InspectionRecord, SourceFile } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";

/** Lines as CommonMark 2.1 counts them: a line ends with a line feed, a carriage return, or both. */
export const linesOf = (text: string): readonly string[] => text.split(/\r\n|\n|\r/u);

export interface At {
  readonly line: number;
  readonly column: number;
  readonly endLine?: number;
  readonly endColumn?: number;
}

/** What is wrong with a place, or undefined when it lies inside the text. */
export function astray(at: At, text: string): string | undefined {
  const lines = linesOf(text);
  const { line, column, endLine = line, endColumn = column } = at;
  const inside = (row: number, place: number): boolean =>
    Number.isInteger(row) &&
    Number.isInteger(place) &&
    row >= 1 &&
    row <= lines.length &&
    place >= 1 &&
    place <= (lines[row - 1] as string).length + 1;
  if (!inside(line, column)) return `${line}:${column} is no place in the file`;
  if (!inside(endLine, endColumn)) return `the end ${endLine}:${endColumn} is no place in the file`;
  return endLine < line || (endLine === line && endColumn < column) ? "the end is before the beginning" : undefined;
}

/** Numbers a record cannot keep: JSON has no words for them. */
function unkept(value: unknown, path: string): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (typeof value !== "object" || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = unkept(inner, `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Words of the language the program is written in, unless the author wrote them. */
const slips = (says: string, text: string): boolean =>
  (/\b(?:undefined|NaN|Infinity)\b|\[object Object\]/u.exec(says) ?? []).some((word) => !text.includes(word));

const BUILT_IN = new Set(rules.map(({ id }) => id));

/** What does not hold says what to do about it; a rule of the house without code need not. */
const unsaid = ({ says, mend, outcome, rule }: CheckEntry, text: string): boolean =>
  says.trim() === "" ||
  slips(says, text) ||
  ((outcome === "fails" || outcome === "open") && BUILT_IN.has(rule) && (mend ?? "").trim() === "");

/** What is wrong with the entry of one file, whatever was written in it. `all` is every text that may be quoted. */
export function unsound(entry: DocumentEntry, text: string, all = text): readonly string[] {
  return entry.checks.flatMap((check) => {
    const wrong = [
      astray(check.at, text),
      unsaid(check, all) ? `it says \`${check.says}\`, mend \`${check.mend}\`` : undefined,
      unkept(check, "check"),
    ];
    return wrong.filter((each) => each !== undefined).map((each) => `${check.rule} at ${check.at.path}: ${each}`);
  });
}

/** @throws Error when something in a record cannot be right. `files` are all files that were inspected. */
export function refuseUnsound(record: InspectionRecord, files: readonly SourceFile[]): void {
  const texts = new Map(files.map(({ path, text }) => [path, text]));
  const all = files.map(({ text }) => text).join();
  const wrong = record.documents.flatMap((entry) => {
    const text = texts.get(entry.file);
    return text === undefined ? [`${entry.file} was not given`] : unsound(entry, text, all);
  });
  if (wrong.length > 0) throw new Error(`${wrong.length} wrong: ${wrong.slice(0, 5).join("; ")}`);
}
