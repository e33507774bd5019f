import {
  assumedIn,
  fromKept,
  guessesIn,
  type Kind,
  type Known,
  printNumber,
  type System,
  type Unit,
  unitFor,
  type Value,
} from "@plumbmark/calc";

/** One column of a schedule; `unit` as it is printed, the same for every row. */
export interface ScheduleColumn {
  readonly name: string;
  readonly unit?: string;
  readonly numeric: boolean;
  /** It gives way first where a table is too wide. */
  readonly aside?: true;
}

/** One entry of a schedule: what is printed, and the number behind it in the unit of its column. */
export interface ScheduleCell {
  readonly text: string;
  readonly number?: number;
  /** False where something is not written down: never an empty entry, never nought. */
  readonly stated: boolean;
  /** How sure it is, where it is less than stated. */
  readonly sure?: "guess" | "bound" | "assumed";
}

/** A schedule as plain data, for any surface to render. */
export interface ScheduleTable {
  readonly name: string;
  readonly title: string;
  readonly columns: readonly ScheduleColumn[];
  readonly rows: readonly (readonly ScheduleCell[])[];
}

/** Words, a plain number, a value, or undefined where the column does not apply to the row. */
export type ScheduleEntry = string | number | Value | undefined;

export interface ColumnOf<Row> {
  readonly name: string;
  /** Kind of the quantity; words when left out. */
  readonly kind?: Kind;
  readonly of: (row: Row) => ScheduleEntry;
  /** It gives way first where a table is too wide. */
  readonly aside?: true;
}

export const NOT_STATED = "not stated";

const words = (text: string): ScheduleCell => ({ text, stated: true });

/** Counts and pixels in full, everything else to four digits, as in a working; the number keeps six. */
function numberCell(value: number, kind: Kind): ScheduleCell {
  const whole = (kind === "count" || kind === "pixels") && Number.isInteger(value);
  return {
    text: printNumber(value, whole ? 16 : 4),
    number: whole ? value : Number(value.toPrecision(6)),
    stated: true,
  };
}

/** `3 ft 10 in` as its author wrote it: a tape is read in feet and inches, not in tenths of a foot. */
const feetAndInches = ({ origin, kind }: Extract<Value, { readonly known: true }>): string | undefined =>
  kind === "length" && origin.from === "written" && /^\s*\d+\s*(?:ft|')\s*\d/u.test(origin.text)
    ? origin.text.trim()
    : undefined;

/** A guess has its sign behind it wherever it is printed; a bound its words in front, and so has what is assumed. */
function sureness(value: Known, text: string): Partial<ScheduleCell> {
  if (guessesIn(value).size > 0) return { text: `${text} ?`, sure: "guess" };
  if (assumedIn(value).size > 0) return { text: `assumed ${text}`, sure: "assumed" };
  return value.sure === undefined ? {} : { text: `${value.sure} ${text}`, sure: "bound" };
}

function cellOf(entry: ScheduleEntry, kind: Kind | undefined, unit: Unit | undefined): ScheduleCell {
  if (entry === undefined) return words("");
  if (typeof entry === "string") return words(entry);
  if (typeof entry === "number") return numberCell(entry, "count");
  if (!entry.known) return { text: NOT_STATED, stated: false };
  const cell = numberCell(unit ? fromKept(entry.value, unit) : entry.value, kind ?? entry.kind);
  const own = feetAndInches(entry);
  return { ...cell, ...(own === undefined ? {} : { text: own }), ...sureness(entry, own ?? cell.text) };
}

/** Fills a schedule; a column of a quantity has one unit, the document's own. */
export function tableOf<Row>(
  about: { readonly name: string; readonly title: string },
  columns: readonly ColumnOf<Row>[],
  rows: readonly Row[],
  system: System,
): ScheduleTable {
  const units = columns.map(({ kind }) => (kind ? unitFor(1, kind, system) : undefined));
  return {
    ...about,
    columns: columns.map(({ name, kind, aside }, index) => {
      const unit = units[index]?.print ?? "";
      return { name, ...(unit === "" ? {} : { unit }), numeric: kind !== undefined, ...(aside ? { aside } : {}) };
    }),
    rows: rows.map((row) => columns.map(({ of, kind }, index) => cellOf(of(row), kind, units[index]))),
  };
}

/** Name and unit as the head of a column: `Length (ft)`. */
export const columnHeading = ({ name, unit }: ScheduleColumn): string =>
  unit === undefined ? name : `${name} (${unit})`;

/** A quantity in the words of its author; empty where it is computed or missing. */
export const asWritten = (value: Value | undefined): string =>
  value?.known && value.origin.from === "written" ? value.origin.text : "";

/** Without the columns that say nothing in any row. */
export function withoutEmpty(table: ScheduleTable): ScheduleTable {
  const says = table.columns.map((_, index) => table.rows.some((row) => row[index]?.text !== ""));
  const kept = <Item>(items: readonly Item[]): readonly Item[] => items.filter((_, index) => says[index]);
  return table.rows.length === 0
    ? table
    : { ...table, columns: kept(table.columns), rows: table.rows.map((row) => kept(row)) };
}
