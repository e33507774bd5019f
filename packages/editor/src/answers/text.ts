import type { Place } from "@plumbmark/core";
import { linesOf } from "./zone.js";

/** What stands at a place of a text; lines and columns from 1. */
export function textIn(text: string, { line, column, endLine, endColumn }: Place): string {
  if (line === endLine) return (linesOf(text)[line - 1] ?? "").slice(column - 1, endColumn - 1);
  const ends = [0];
  for (const { index, 0: end } of text.matchAll(/\r\n|\n|\r/gu)) ends.push(index + end.length);
  const offset = (at: number, to: number): number => (ends[at - 1] ?? text.length) + to - 1;
  return text.slice(offset(line, column), offset(endLine, endColumn));
}

/** Takes out the entry a place is the key or the value of: its whole line, or its part of what stands in braces. */
export function frontMatterRange(
  text: string,
  { line, column, endLine, endColumn }: Place,
): { readonly place: Place; readonly text: string } | undefined {
  const whole = linesOf(text)[line - 1] ?? "";
  if (line !== endLine) return undefined;
  const alone = /^\s*[\w.-]+:\s+[^{[\s][^{}[\]]*$/u.test(whole);
  if (alone) return { place: { line, column: 1, endLine: line + 1, endColumn: 1 }, text: "" };
  const entries = [...whole.matchAll(/(?<=[{,])\s*[\w.-]+:\s+[^{}[\],]+(?=[,}])/gu)];
  const found = entries.find(({ index, 0: entry }) => index < endColumn && column - 1 < index + entry.length);
  if (!found) return undefined;
  const [from, to] = [found.index, found.index + found[0].length];
  // A comma goes with it: the one behind, or in front of the last.
  const [start, end] = whole[to] === "," ? [from, to + 1] : [whole[from - 1] === "," ? from - 1 : from, to];
  return { place: { line, column: start + 1, endLine: line, endColumn: end + 1 }, text: "" };
}
