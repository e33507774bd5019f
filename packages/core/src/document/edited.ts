import type { Edit, Mistake } from "./mistake.js";
import type { Place } from "./place.js";

/** Offsets at which the lines of a text begin. A line ends with a line feed, a carriage return or both. */
function startsOf(text: string): readonly number[] {
  const starts = [0];
  for (const { index, 0: end } of text.matchAll(/\r\n|\n|\r/gu)) starts.push(index + end.length);
  return starts;
}

/** Offsets of places in a text; lines and columns from 1. */
function offsetsIn(text: string): (line: number, column: number) => number {
  const starts = startsOf(text);
  return (line, column) => Math.min(text.length, (starts[line - 1] ?? text.length) + column - 1);
}

/** What stands at a place of a text. */
export function textAt(text: string, { line, column, endLine, endColumn }: Place): string {
  const offset = offsetsIn(text);
  return text.slice(offset(line, column), offset(endLine, endColumn));
}

/** The text with every edit made in it; of two that overlap the later one in the text is left out. */
export function edited(text: string, edits: readonly Edit[]): string {
  const offset = offsetsIn(text);
  const changes = edits
    .map(({ place, text: put }) => ({
      from: offset(place.line, place.column),
      to: offset(place.endLine, place.endColumn),
      put,
    }))
    .sort((one, other) => one.from - other.from);
  let made = "";
  let at = 0;
  for (const { from, to, put } of changes) {
    if (from < at) continue;
    // Where nothing is written, the value comes behind the colon of its key.
    const blank = from === to && text[from - 1] === ":" ? " " : "";
    made += text.slice(at, from) + blank + put;
    at = to;
  }
  return made + text.slice(at);
}

/** What would have to stand in place of mistakes for the rest to be judged; none where nobody can tell. */
export const editsOf = (mistakes: readonly Mistake[]): readonly Edit[] =>
  mistakes.flatMap(({ edit, standIn }) => edit ?? standIn ?? []);

/** One slip hides others behind it, so a text is read again a few times. */
const ROUNDS = 4;
/** More mistakes than this in one file are no slips. */
const MOST = 200;

/** The text as it was most likely meant, for telling what waits for its mistakes; the same text where nothing is known. */
export function asMeant(text: string, mistakesOf: (text: string) => readonly Mistake[]): string {
  let meant = text;
  for (let round = 0; round < ROUNDS; round += 1) {
    const mistakes = mistakesOf(meant);
    const edits = mistakes.length > MOST ? [] : editsOf(mistakes);
    if (edits.length === 0) break;
    meant = edited(meant, edits);
  }
  return meant;
}
