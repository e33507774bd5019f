import { mayHoldAddress } from "./gfm.js";

// Letters that begin or end nothing within a line, nor make it anything else than text; `*` and `_` mark emphasis at most.
const FREE = "[^\\\\`[\\]<>&~|\\t@]";
/** A link or the end of an image; its text holds no mark that could bind closer. */
const LINK = "\\[[^\\\\`[\\]<>&~|\\t@^]*\\]\\([^\\\\`[\\]<>&~|\\t@\\s()]*\\)";
const CODE = "`[^`[\\]|]+`(?!`)";
/** What a line of text begins with: no list, no heading, no line across, no fence. */
const BEGIN = `(?:\\*{1,2}|_{1,2})?(?:[^\\s\\d#=:+!*_\\-\\\\\`[\\]<>&~|@]|\\d+(?![\\d.)])|!?${LINK}|${CODE})`;
const REST = `(?:${FREE}|${LINK}|${CODE})*`;

const TEXT = new RegExp(`^ *${BEGIN}${REST}$`, "u");
const ITEM = new RegExp(`^(?:[-*+]|\\d{1,9}[.)]) (?:\\[[ xX]\\] )?${BEGIN}${REST}$`, "u");
const ROW = new RegExp(`^\\|(?:${FREE}|\\||${LINK}|${CODE})*$`, "u");
const HEADING = /^#{1,6} /u;
const LINKS = new RegExp(`!?${LINK}`, "gu");
const MARKER = /^(?:[-*+]|\d{1,9}[.)]) /u;
/** Items with different ones are of different lists, if the second is an item at all. */
const kindOf = (item: string): string => (MARKER.exec(item)?.[0] ?? "").replace(/\d/gu, "");

/** A pattern that goes through a longer line letter by letter takes more memory than it may. */
const LONG = 20_000;

const hasLink = (line: string): boolean => line.includes("](");

/** A line with the links of another at the same columns, and nothing else: `x` stands for everything between. */
function linksOf(line: string, from = 0): string {
  let short = line.slice(0, from);
  for (const { index, 0: link } of line.matchAll(LINKS)) short += "x".repeat(index - short.length) + link;
  return short;
}

const filled = (line: string): string =>
  hasLink(line) ? linksOf(line, line.search(/\S/u)) : "x".padStart(line.search(/\S/u) + 1);

/** Paragraphs and tables: as many lines, those with links among them. */
const shortText = (lines: readonly string[]): readonly string[] =>
  lines.some(hasLink) ? lines.map(filled) : lines.map((_, index) => (index === 0 ? "x" : ""));

/** Of a list the items with links, and the last, since it tells where what follows belongs. */
function shortList(lines: readonly string[]): readonly string[] {
  const starts = lines.flatMap((line, index) => (MARKER.test(line) ? [index] : []));
  return starts.flatMap((start, index) => {
    const [first, ...more] = lines.slice(start, starts[index + 1]) as [string, ...string[]];
    const linked = hasLink(first) || more.some(hasLink);
    if (!linked && index < starts.length - 1) return ["", ...more.map(() => "")];
    const marker = (MARKER.exec(first) as RegExpExecArray)[0];
    return [hasLink(first) ? linksOf(first, marker.length) : `${marker}x`, ...more.map(filled)];
  });
}

/** Lines without an empty one between; as they are unless every one of them is what it looks like. */
function shortBlock(lines: readonly string[]): readonly string[] {
  const [first, ...rest] = lines as [string, ...string[]];
  if (lines.some(({ length }) => length > LONG) || mayHoldAddress(lines.join("\n"))) return lines;
  if (lines.every((line) => ROW.test(line))) return shortText(lines);
  if (first.startsWith(" ")) return lines;
  const goesOn = (line: string): boolean =>
    line.startsWith(" ") ? TEXT.test(line) : ITEM.test(line) && kindOf(line) === kindOf(first);
  if (ITEM.test(first) && rest.every(goesOn)) return shortList(lines);
  return lines.every((line) => TEXT.test(line)) ? shortText(lines) : lines;
}

/** The same where headings may stand above. */
function shortened(lines: readonly string[]): readonly string[] {
  const headings = lines.findIndex((line) => !HEADING.test(line));
  return headings < 0 ? lines : [...lines.slice(0, headings), ...shortBlock(lines.slice(headings))];
}

/**
 * A body with the same headings and links at the same places as another, and little else: of what has neither, an `x` is
 * left. A Markdown parser has done with it in a third of the time. Tables become paragraphs, and tasks are left out.
 */
export function skeletonOf(body: string): string {
  if (body.includes("\r")) return body;
  const short: string[] = [];
  let chunk: string[] = [];
  const close = (): void => {
    if (chunk.length > 0) short.push(...shortened(chunk));
    chunk = [];
  };
  for (const line of body.split("\n")) {
    if (/[^ \t]/u.test(line)) chunk.push(line);
    else {
      close();
      short.push(line);
    }
  }
  close();
  return short.join("\n");
}
