import type { Mistake } from "../mistake.js";

/** No paperwork is nested or marked like this; reading it would keep the author waiting for minutes, or for ever. */
const BOUNDS: readonly { readonly is: (line: string) => boolean; readonly says: string }[] = [
  {
    is: (line) => /^(?:[ \t]*(?:>|[-+*]|\d{1,9}[.)])(?=[ \t>]|$)){50}/u.test(line),
    says: "is nested more than 50 deep",
  },
  { is: (line) => /^[ \t]{200}[ \t]*\S/u.test(line), says: "is indented by more than 200 blanks" },
  {
    is: (line) => /([*_~[`])\1{499}/u.test(line) || /(?:!\[){100}/u.test(line),
    says: "has more than 500 of one mark in a row",
  },
];
const MOST_ROWS = 10_000;
const MOST_LINES = 20_000;
const MOST_MARKS = 20_000;

/** What may begin a link, emphasis, code, an entity or an address. */
const MARKS = /[[*_`<~&@]/gu;

/**
 * Tells where the Markdown is more than can be read in reasonable time; undefined where it is not.
 * @param front lines before the body, which are not counted
 */
export function tooDeep(text: string, front = 0): Mistake | undefined {
  const lines = text.split(/\r\n|\n|\r/u);
  let [rows, marks] = [0, 0];
  const made = (index: number, says: string): Mistake => {
    const line = index + 1;
    const place = { line, column: 1, endLine: line, endColumn: (lines[index] as string).length + 1 };
    const told = `The Markdown ${says} here; the body is not read.`;
    return { rule: "document.front-matter", path: "", place, says: told, mend: "Write it flatter, or split it." };
  };
  for (const [index, line] of lines.entries()) {
    const found = BOUNDS.find(({ is }) => is(line));
    if (found) return made(index, found.says);
    rows = line.trimStart().startsWith("|") ? rows + 1 : 0;
    if (rows > MOST_ROWS) return made(index, `has a table of more than ${MOST_ROWS} rows`);
    if (index < front) continue;
    if (index - front >= MOST_LINES) return made(index, `has more than ${MOST_LINES} lines`);
    marks += line.match(MARKS)?.length ?? 0;
    if (marks > MOST_MARKS) return made(index, `has more than ${MOST_MARKS} links and other marks`);
  }
  return undefined;
}
