import stringWidth from "string-width";

/** Anything that would move a terminal's cursor, change its colour or turn its reading direction. */
const CONTROLS = /[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** An author's text as one harmless line. */
export const plain = (text: string): string => text.replace(/\s+/gu, " ").replace(CONTROLS, "\ufffd").trim();

/** ASCII, and the signs of a working that take one column each wherever they are shown. */
const PLAINEST = /^[ -~\u00b0-\u00ff\u2010-\u201f\u2026\u2032\u2033\u2212\u2248\u2264\u2265]*$/u;

/** Columns a text takes. In most of a report, looking at every character is time for nothing. */
const widthOf = (text: string): number => (PLAINEST.test(text) ? text.length : stringWidth(text));

/** Words, and what stands between two grave accents as one: `11 ft` is not broken where it can be helped. */
const wordsOf = (text: string): readonly string[] =>
  text.includes("`") ? (text.match(/[^\s`]*`[^`]{1,40}`[^\s`]*|\S+/gu) ?? []) : text.split(" ");

/** Breaks a text at spaces so that each line fits `width` columns; a longer word stands on a line of its own. */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  let wide = 0;
  for (const word of wordsOf(plain(text))) {
    const own = widthOf(word);
    if (line !== "" && wide + 1 + own > width) {
      lines.push(line);
      line = "";
    }
    wide = line === "" ? own : wide + 1 + own;
    line = line === "" ? word : `${line} ${word}`;
  }
  return line === "" ? lines : [...lines, line];
}

/** Adds spaces up to `width` columns. */
export const pad = (text: string, width: number): string => text + " ".repeat(Math.max(0, width - widthOf(text)));

/** A label and a text, the lines after the first under the text. */
export function labelled(
  label: string,
  text: string,
  indent: number,
  labelWidth: number,
  width: number,
): readonly string[] {
  const lines = wrap(text, Math.max(20, width - indent - labelWidth));
  return lines.map((line, index) => " ".repeat(indent) + pad(index === 0 ? label : "", labelWidth) + line);
}
