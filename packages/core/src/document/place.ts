/** A place in a file: lines and columns from 1, `endColumn` just after the last character (UTF-16 code units). */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export const START: Place = { line: 1, column: 1, endLine: 1, endColumn: 1 };

interface Point {
  readonly line: number;
  readonly column: number;
}

/** A node of the Markdown: one that was not read but made has no position. */
export interface Positioned {
  readonly position?: { readonly start: Point; readonly end: Point } | undefined;
}

/** Where a node stands; the file's start for one without a position. */
export const placeOfNode = ({ position }: Positioned): Place =>
  position
    ? {
        line: position.start.line,
        column: position.start.column,
        endLine: position.end.line,
        endColumn: position.end.column,
      }
    : START;

/** Turns offsets of a text into places. A line ends with a line feed, a carriage return or both, as in CommonMark 2.1. */
export function placer(text: string): (from: number, to: number) => Place {
  const starts = [0];
  const ends: number[] = [];
  for (const { index, 0: end } of text.matchAll(/\r\n|\n|\r/gu)) {
    ends.push(index);
    starts.push(index + end.length);
  }
  ends.push(text.length);
  const find = (offset: number): { line: number; column: number } => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((starts[middle] as number) <= offset) low = middle;
      else high = middle - 1;
    }
    // An offset between the two characters of a line end is the end of the line.
    return { line: low + 1, column: Math.min(offset, ends[low] as number) - (starts[low] as number) + 1 };
  };
  return (from, to) => {
    const start = find(from);
    const end = find(Math.max(from, to));
    return { line: start.line, column: start.column, endLine: end.line, endColumn: end.column };
  };
}
