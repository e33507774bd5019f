/** A place in a file: lines and columns from 1, `endColumn` just after the last character (UTF-16 code units). */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export const START: Place = { line: 1, column: 1, endLine: 1, endColumn: 1 };

/** Turns offsets of a text into places. */
export function placer(text: string): (from: number, to: number) => Place {
  const starts = [0];
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  const find = (offset: number): { line: number; column: number } => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((starts[middle] as number) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - (starts[low] as number) + 1 };
  };
  return (from, to) => {
    const start = find(from);
    const end = find(Math.max(from, to));
    return { line: start.line, column: start.column, endLine: end.line, endColumn: end.column };
  };
}
