import { type Cell, cellName, readCell, rowName } from "./cells.js";

/** Neighbouring columns or rows of a face, from 0; both ends are among them. */
export interface FaceStretch {
  readonly first: number;
  readonly last: number;
}

export const ALONG = ["columns", "rows"] as const;
export type Along = (typeof ALONG)[number];

const FORM: Readonly<Record<Along, RegExp>> = {
  columns: /^([1-9]\d{0,3})(?:\.\.([1-9]\d{0,3}))?$/u,
  rows: /^([A-Z]{1,2})(?:\.\.([A-Z]{1,2}))?$/u,
};

const placeOf = (name: string, along: Along): number =>
  along === "columns" ? Number(name) - 1 : (readCell(`${name}1`)?.row ?? Number.NaN);

/** What a column or a row is called: columns have numbers, rows have letters, as the cells in them. */
const nameOf = (place: number, along: Along): string => (along === "columns" ? String(place + 1) : rowName(place));

/** Reads `1..12` or `13` as columns, `A..C` or `D` as rows; ends as they are written, undefined for anything else. */
export function readStretch(written: unknown, along: Along): FaceStretch | undefined {
  const match = FORM[along].exec(String(written ?? ""));
  if (!match) return undefined;
  const [first, last] = [match[1] as string, match[2] ?? (match[1] as string)].map((name) => placeOf(name, along));
  return { first: first as number, last: last as number };
}

/** As it is written in a document: `1..12`, `13`, `A..C`. */
export const stretchAsWritten = ({ first, last }: FaceStretch, along: Along): string =>
  first === last ? nameOf(first, along) : `${nameOf(first, along)}..${nameOf(last, along)}`;

/** In words: `columns 1 to 12`, `row D`, `columns 1 and 4 to 6`. */
export function stretchInWords(stretch: FaceStretch | readonly FaceStretch[], along: Along): string {
  const all = [stretch].flat() as readonly FaceStretch[];
  const names = all.map(({ first, last }) =>
    first === last ? nameOf(first, along) : `${nameOf(first, along)} to ${nameOf(last, along)}`,
  );
  const isOne = all.length === 1 && all[0]?.first === all[0]?.last;
  return `${isOne ? along.slice(0, -1) : along} ${names.join(", ").replace(/, ([^,]*)$/u, " and $1")}`;
}

export const lengthOfStretch = ({ first, last }: FaceStretch): number => last - first + 1;

export const isInStretch = (place: number, { first, last }: FaceStretch): boolean => place >= first && place <= last;

/** Places from 0 in any order as stretches: those next to each other in one. */
export function stretchesOf(places: Iterable<number>): readonly FaceStretch[] {
  const stretches: FaceStretch[] = [];
  for (const place of [...new Set(places)].sort((a, b) => a - b)) {
    const before = stretches.at(-1);
    if (before?.last === place - 1) stretches[stretches.length - 1] = { first: before.first, last: place };
    else stretches.push({ first: place, last: place });
  }
  return stretches;
}

/** More cells than these are counted instead of named. */
const NAMED = 6;

/** Some cells of a face in words: whole columns or whole rows by their names where they are no others, else one by one. */
export function cellsInWords(cells: readonly Cell[], all: readonly Cell[]): string {
  for (const along of ALONG) {
    const placeIn = (cell: Cell): number => (along === "columns" ? cell.column : cell.row);
    const places = new Set(cells.map(placeIn));
    if (all.filter((cell) => places.has(placeIn(cell))).length === cells.length)
      return stretchInWords(stretchesOf(places), along);
  }
  const more = cells.length > NAMED ? ` and ${cells.length - NAMED} more` : "";
  return `${cells.slice(0, NAMED).map(cellName).join(", ")}${more}`;
}
