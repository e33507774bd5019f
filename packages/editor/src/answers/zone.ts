/** Lines of a text without what ends them. A line ends with a line feed, a carriage return or both. */
export const linesOf = (text: string): readonly string[] => text.split(/\r\n|\n|\r/u);

/** What kind of file a text is, for what may stand in it. */
export type FileKind = "build" | "survey" | "parts" | "stock" | "house standard" | "wish";

/** The lines of a file that are YAML: all, or those of the front matter; from the first to before the last. */
export interface Zone {
  readonly from: number;
  readonly to: number;
}

const FENCE = /^---[ \t]*$/u;

/** Where the YAML stands, by line from 1; a front matter that nothing ends goes on as far as lines look like it. */
export function zoneOf(lines: readonly string[], kind: FileKind): Zone {
  if (kind !== "build" && kind !== "survey") return { from: 1, to: lines.length + 1 };
  if (!FENCE.test((lines[0] ?? "").replace(/^\uFEFF/u, ""))) return { from: 1, to: 1 };
  const end = lines.findIndex((line, index) => index > 0 && FENCE.test(line));
  if (end > 0) return { from: 2, to: end + 1 };
  const heading = lines.findIndex((line, index) => index > 0 && /^#{1,6} \S/u.test(line) && lines[index - 1] === "");
  return { from: 2, to: (heading < 0 ? lines.length : heading) + 1 };
}

export const isIn = ({ from, to }: Zone, line: number): boolean => line >= from && line < to;
