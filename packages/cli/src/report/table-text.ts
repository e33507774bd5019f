import { columnHeading, type ScheduleTable } from "@plumbmark/core";
import stringWidth from "string-width";
import type { Colour } from "../terminal/context.js";
import { pad, plain } from "./lines.js";
import { palette } from "./palette.js";

const GAP = 2;

const widest = (texts: readonly string[]): number => Math.max(0, ...texts.map((text) => stringWidth(text)));

/**
 * Pieces a text may be broken into: at blanks and behind a hyphen, but neither between a number and its unit nor within
 * `2027-05-14`, `8-1/4 in` or `19 ft 8 in`.
 */
const piecesOf = (text: string): readonly string[] =>
  text.split(/(?<=[ -])(?<!\d-(?=\d))(?<!\d (?=(?:ft|in|mm|m|kg|lb|px|%)(?:[ ,;.]|$)))(?<!\d ft (?=\d))(?!×)/u);

/** No column of words is narrower than this to make a table fit: what stands in it could not be read. */
const LEAST_WORDS = 8;

/** A piece that is wider than its column is broken where the column ends, between the signs a reader sees. */
function broken(piece: string, width: number): readonly string[] {
  if (stringWidth(piece.trimEnd()) <= width) return [piece];
  const parts = [""];
  for (const { segment } of new Intl.Segmenter().segment(piece)) {
    const longer = (parts.at(-1) as string) + segment;
    if (parts.at(-1) === "" || stringWidth(longer.trimEnd()) <= width) parts[parts.length - 1] = longer;
    else parts.push(segment);
  }
  return parts;
}

/** A text in lines of at most `width` columns. */
function fold(text: string, width: number): readonly string[] {
  const lines = [""];
  for (const piece of piecesOf(text).flatMap((each) => broken(each, width))) {
    const longer = (lines.at(-1) as string) + piece;
    if (lines.at(-1) === "" || stringWidth(longer.trimEnd()) <= width) lines[lines.length - 1] = longer;
    else lines.push(piece);
  }
  return lines.map((line) => line.trimEnd());
}

/** The widest columns of words give way until the table fits, in the end within words; numbers are never broken. */
function widthsOf(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
  table: ScheduleTable,
  most: number,
): number[] {
  const column = (index: number): readonly string[] => rows.map((row) => row[index] ?? "");
  const heads = headings.map((text) => widest(piecesOf(text).map((piece) => piece.trim())));
  const least = heads.map((head, index) =>
    table.columns[index]?.numeric
      ? Math.max(head, widest(column(index)))
      : Math.max(head, widest(column(index).flatMap((text) => piecesOf(text).map((piece) => piece.trim())))),
  );
  const widths = heads.map((head, index) => Math.max(head, widest(column(index))));
  const total = (): number => widths.reduce((sum, each) => sum + each + GAP, -GAP);
  const narrow = (leasts: readonly number[]): void => {
    while (total() > most) {
      const free = widths.map((width, index) => (width > (leasts[index] ?? 0) ? width : 0));
      const broadest = Math.max(...free);
      if (broadest === 0) break;
      widths[free.indexOf(broadest)] = broadest - 1;
    }
  };
  narrow(least);
  narrow(least.map((width, index) => (table.columns[index]?.numeric ? width : Math.min(width, LEAST_WORDS))));
  return widths;
}

const right = (text: string, width: number): string => " ".repeat(Math.max(0, width - stringWidth(text))) + text;

/** The table without some of its columns. */
function without({ columns, rows, ...about }: ScheduleTable, gone: (index: number) => boolean): ScheduleTable {
  const kept = <Item>(items: readonly Item[]): readonly Item[] => items.filter((_, index) => !gone(index));
  return { ...about, columns: kept(columns), rows: rows.map((row) => kept(row)) };
}

const isWide = (table: ScheduleTable, most: number): boolean => {
  const headings = table.columns.map((column) => plain(columnHeading(column)));
  const rows = table.rows.map((row) => row.map(({ text }) => plain(text)));
  return widthsOf(headings, rows, table, most).reduce((sum, each) => sum + each + GAP, -GAP) > most;
};

/**
 * A schedule in aligned columns below its title; words that do not fit their column go on below. Of one that is too wide
 * all the same, columns that may stand aside are left to other forms, and a line says which.
 */
export function tableText(
  whole: ScheduleTable,
  { width, colour }: { readonly width: number; readonly colour: Colour },
): string {
  const aside = whole.columns.filter((column) => column.aside);
  const isCut = aside.length > 0 && isWide(whole, width);
  const table = isCut ? without(whole, (index) => whole.columns[index]?.aside === true) : whole;
  const headings = table.columns.map((column) => plain(columnHeading(column)));
  const rows = table.rows.map((row) => row.map(({ text }) => plain(text)));
  const widths = widthsOf(headings, rows, table, width);
  const lines = (row: readonly string[]): readonly string[] => {
    const cells = row.map((text, index) => fold(text, widths[index] ?? 0));
    return Array.from({ length: Math.max(1, ...cells.map((cell) => cell.length)) }, (_, line) =>
      cells
        .map((cell, index) => (table.columns[index]?.numeric ? right : pad)(cell[line] ?? "", widths[index] ?? 0))
        .join(" ".repeat(GAP))
        .trimEnd(),
    );
  };
  const ink = palette(colour);
  const head = lines(headings).map((line) => ink.strong(line));
  const body = rows.length === 0 ? ["Nothing is written down for it."] : rows.flatMap(lines);
  const more = isCut
    ? ["", ...fold(`Not shown for want of width: ${aside.map(({ name }) => name).join("; ")}.`, width)]
    : [];
  return [ink.strong(table.title), "", ...(rows.length === 0 ? [] : head), ...body, ...more, ""].join("\n");
}
