/** One line of block style, or the beginning of what stands over several lines. Offsets count in the whole file. */
export interface BlockLine {
  /** Number of blanks before it; a tab counts as one. */
  readonly indent: number;
  /** What stands in front of the content. */
  readonly lead: string;
  /** Where the content begins. */
  readonly from: number;
  /** The content up to its comment, without blanks at the end. */
  readonly content: string;
}

/** A quote, brace or bracket that a later line shows to be open still. */
export interface LeftOpen {
  readonly mark: string;
  readonly from: number;
  /** Where its own line ends, comment left out. */
  readonly lineEnd: number;
  /** Everything that is open there, the innermost first, as the marks that close it. */
  readonly closes: string;
  /** What stands behind a number sign on its line and was most likely meant to be read: a comment has a blank there. */
  readonly cut?: CutOff;
}

export interface CutOff {
  readonly from: number;
  readonly text: string;
}

export interface Scanned {
  readonly lines: readonly BlockLine[];
  readonly leftOpen?: LeftOpen;
  /** A closing mark without its opening one. */
  readonly closesNothing?: { readonly mark: string; readonly from: number };
}

const CLOSES: Readonly<Record<string, string>> = { "{": "}", "[": "]", '"': '"', "'": "'" };
const KEY_LINE = /^(?:- +)?["']?[A-Za-z][\w.-]*["']?\s*:(?:\s|$)/u;
const BLOCK_TEXT = /:\s+[|>][+-]?\d?$/u;

interface Opened {
  readonly mark: string;
  readonly from: number;
  readonly indent: number;
  lineEnd: number;
  cut?: CutOff;
}

/** Where a comment begins on a line, seen from `from`; the line's end without one. */
function scanLine(line: string, offset: number, indent: number, open: Opened[]): { end: number; bad?: number } {
  let fresh = true;
  for (let index = 0; index < line.length; index += 1) {
    const letter = line[index] as string;
    const top = open.at(-1);
    if (top?.mark === '"' || top?.mark === "'") {
      if (top.mark === '"' && letter === "\\") index += 1;
      else if (letter === top.mark) {
        if (letter === "'" && line[index + 1] === "'") index += 1;
        else open.pop();
      }
      continue;
    }
    if (letter === "#" && (index === 0 || /\s/u.test(line[index - 1] as string))) return { end: index };
    if (/\s/u.test(letter)) continue;
    const opens: boolean = letter in CLOSES && (fresh || (top !== undefined && /[{[]/u.test(letter)));
    if (opens) open.push({ mark: letter, from: offset + index, indent, lineEnd: 0 });
    else if (/[}\]]/u.test(letter) && top && letter === CLOSES[top.mark]) open.pop();
    else if (/[}\]]/u.test(letter) && fresh) return { end: line.length, bad: index };
    const isMark: boolean = /[,{[]/u.test(letter) && (top !== undefined || opens);
    fresh = isMark || ((letter === ":" || letter === "-") && /^\s/u.test(line.slice(index + 1)));
  }
  return { end: line.length };
}

/** Takes YAML apart into lines as people see them, with no more of its grammar than where texts and groups end. */
export function scanLines(text: string, from: number, to: number): Scanned {
  const lines: BlockLine[] = [];
  const open: Opened[] = [];
  let blockText: number | undefined;
  const told = (top: Opened): Scanned => ({
    lines,
    leftOpen: {
      mark: top.mark,
      from: top.from,
      lineEnd: top.lineEnd,
      closes: open
        .toReversed()
        .map(({ mark }) => CLOSES[mark])
        .join(""),
      ...(top.cut ? { cut: top.cut } : {}),
    },
  });
  for (const match of text.slice(from, to).matchAll(/[^\r\n]+/gu)) {
    const whole = match[0];
    const lead = /^\s*/u.exec(whole)?.[0] ?? "";
    const body = whole.slice(lead.length);
    if (body === "") continue;
    if (blockText !== undefined && lead.length > blockText) continue;
    blockText = undefined;
    const start = from + match.index + lead.length;
    const top = open[0];
    // A key that stands no deeper than the line something was opened on belongs to something else.
    if (top && lead.length <= top.indent && KEY_LINE.test(body)) return told(open.at(-1) as Opened);
    const wasOpen = open.length;
    const { end, bad } = scanLine(body, start, lead.length, open);
    const content = body.slice(0, end).trimEnd();
    const cut = /^#[^\s#]/u.test(body.slice(end)) ? { from: start + end, text: body.slice(end) } : undefined;
    for (const each of open) {
      if (each.lineEnd !== 0) continue;
      each.lineEnd = start + content.length;
      if (cut) each.cut = cut;
    }
    if (bad !== undefined) return { lines, closesNothing: { mark: body[bad] as string, from: start + bad } };
    if (wasOpen > 0 || content === "") continue;
    lines.push({ indent: lead.length, lead, from: start, content });
    if (BLOCK_TEXT.test(content)) blockText = lead.length;
  }
  return open.length > 0 ? told(open.at(-1) as Opened) : { lines };
}
