import type { Placed } from "../document/yaml/yaml.js";

/** A box of a task list, at the beginning of its line: `- [x] Bar hung`. */
const BOX = /^([ \t>]*(?:(?:[-*+]|\d{1,9}[.)])[ \t]+)+)\[[ xX]\](?=[ \t]|$)/u;

const withLineFeeds = (text: string): string => text.replace(/^\uFEFF/u, "").replace(/\r\n?/gu, "\n");

/** Lines of a body, whether their boxes are ticked or not. */
export const withoutTicks = (text: string): readonly string[] =>
  withLineFeeds(text)
    .split("\n")
    .map((line) => line.replace(BOX, "$1[ ]"));

/** The step from `for-build` to `as-built` is no other content: both are read as the first. */
function withoutStep(lines: string[], { data, places }: Placed): void {
  const status = (data as Readonly<Record<string, unknown>> | null)?.status;
  const place = places.get("status");
  if ((status !== "for-build" && status !== "as-built") || place?.line !== place?.endLine || !place) return;
  const line = lines[place.line - 1] ?? "";
  lines[place.line - 1] = `${line.slice(0, place.column - 1)}for-build${line.slice(place.endColumn - 1)}`;
}

/** Where the lines begin, to cut between two places. */
const offsetOf = (lines: readonly string[], line: number, column: number): number =>
  lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0) + column - 1;

/** Takes an entry of a mapping in braces out, with the comma that parts it from its neighbour. */
function cutBetween(text: string, from: number, to: number): string {
  const before = /,[ \t\n]*$/u.exec(text.slice(Math.max(0, from - 1000), from));
  if (before) return text.slice(0, from - before[0].length) + text.slice(to);
  const after = /^[ \t\n]*,[ \t\n]*/u.exec(text.slice(to, to + 1000));
  return text.slice(0, from) + text.slice(to + (after?.[0].length ?? 0));
}

function withoutApproval(lines: readonly string[], { keys, places }: Placed): string {
  const text = lines.join("\n");
  const key = keys.get("approved");
  if (!key) return text;
  const value = places.get("approved") ?? key;
  // At the margin it has lines of its own: those go, with whatever comment stands on them.
  if (key.column === 1) {
    const last = value.endColumn === 1 && value.endLine > key.line ? value.endLine - 1 : value.endLine;
    return [...lines.slice(0, key.line - 1), ...lines.slice(last)].join("\n");
  }
  return cutBetween(text, offsetOf(lines, key.line, key.column), offsetOf(lines, value.endLine, value.endColumn));
}

/**
 * The text of a document as an approval is of it: without the approval itself, whether boxes of tasks are ticked, the
 * step from `for-build` to `as-built`, ends of lines and a byte order mark.
 */
export function documentText(text: string, placed: Placed): string {
  const lines = [...withoutTicks(text)];
  withoutStep(lines, placed);
  return withoutApproval(lines, placed);
}
