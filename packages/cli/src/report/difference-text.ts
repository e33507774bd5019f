/** Lines before and behind a change that are shown with it. */
const AROUND = 3;

interface Span {
  from: number;
  to: number;
}

/** Lines with what ends them; the last may end in nothing. */
const linesOf = (text: string): readonly string[] => text.match(/[^\n]*\n|[^\n]+$/gu) ?? [];

const shown = (mark: string, line: string): string =>
  line.endsWith("\n") ? `${mark}${line}` : `${mark}${line}\n\\ No newline at end of file\n`;

function spansOf(was: readonly string[], is: readonly string[]): readonly Span[] {
  const spans: Span[] = [];
  for (const [index, line] of was.entries()) {
    if (line === is[index]) continue;
    const [from, to] = [Math.max(0, index - AROUND), Math.min(was.length, index + AROUND + 1)];
    const last = spans.at(-1);
    if (last && from <= last.to) last.to = to;
    else spans.push({ from, to });
  }
  return spans;
}

/** Lines that are the same, and between them what goes ahead of what comes. */
function bodyOf(was: readonly string[], is: readonly string[], { from, to }: Span): string {
  let [text, gone, come] = ["", "", ""];
  const flush = (): void => {
    text += gone + come;
    [gone, come] = ["", ""];
  };
  for (let index = from; index < to; index += 1) {
    const [before, after] = [was[index] as string, is[index] as string];
    if (before === after) {
      flush();
      text += shown(" ", before);
    } else {
      gone += shown("-", before);
      come += shown("+", after);
    }
  }
  flush();
  return text;
}

/**
 * The difference of two texts of as many lines, in the unified form of POSIX `diff -u`; empty where there is none.
 * @throws RangeError when they have not as many lines
 */
export function differenceText(path: string, before: string, after: string): string {
  const [was, is] = [linesOf(before), linesOf(after)];
  if (was.length !== is.length) throw new RangeError(`${path}: ${was.length} lines became ${is.length}`);
  const spans = spansOf(was, is);
  if (spans.length === 0) return "";
  const parts = spans.map((span) => {
    const range = `${span.from + 1},${span.to - span.from}`;
    return `@@ -${range} +${range} @@\n${bodyOf(was, is, span)}`;
  });
  return `--- a/${path}\n+++ b/${path}\n${parts.join("")}`;
}
