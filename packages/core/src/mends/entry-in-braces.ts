import type { Place } from "../document/place.js";

/**
 * The place of an entry that stands in braces on one line, with the comma that goes with it; undefined where it has
 * lines of its own.
 * @param line the whole line, without what ends it
 */
export function entryInBraces(line: string, key: Place, value: Place): Place | undefined {
  if (key.line !== value.line || key.line !== value.endLine) return undefined;
  const before = /[{,]\s*$/u.exec(line.slice(0, key.column - 1));
  const behind = /^\s*([,}])\s*/u.exec(line.slice(value.endColumn - 1));
  if (!before || !behind) return undefined;
  const at = (column: number, endColumn: number): Place => ({ line: key.line, column, endLine: key.line, endColumn });
  // The comma behind it, or that in front of the last; of the only one the braces stay.
  if (behind[1] === ",") return at(key.column, value.endColumn + behind[0].length);
  return before[0].startsWith(",") ? at(before.index + 1, value.endColumn) : at(key.column, value.endColumn);
}
