import type { CheckEntry } from "../inspection/record.js";
import type { Reader } from "../model/reading/reader.js";
import { isDay } from "../model/stock/bookings.js";

const FIELDS = ["rule", "because", "by", "until"] as const;

/** One waiver as it is written; what is left out is undefined. */
export interface Waiver {
  readonly path: string;
  readonly label: string;
  readonly rule?: string;
  /** Place it is for; the whole document when left out. */
  readonly where?: string;
  readonly because?: string;
  readonly by?: string;
  /** Its last day, `2027-06-30`; undefined too when what is written is no day. */
  readonly until?: string;
  /** Fields that have to be there and are not. */
  readonly absent: readonly (typeof FIELDS)[number][];
}

const textAt = (reader: Reader, path: string): string | undefined => {
  const text = reader.text(path)?.trim();
  return text === "" ? undefined : text;
};

/** Waivers of a document in the order they are written. */
export const waiversOf = (reader: Reader): readonly Waiver[] =>
  reader.list("waivers").map((_, index) => {
    const path = `waivers.${index + 1}`;
    const texts = [...FIELDS, "where"].flatMap((field) => {
      const text = textAt(reader, `${path}.${field}`);
      return text === undefined || (field === "until" && !isDay(text)) ? [] : [[field, text] as const];
    });
    const absent = FIELDS.filter((field) => textAt(reader, `${path}.${field}`) === undefined);
    return { path, label: `Waiver ${index + 1}`, ...Object.fromEntries(texts), absent };
  });

/** What a document says of itself cannot be waived, nor that a rule could not be run. */
export const UNWAIVABLE: readonly string[] = ["document.front-matter", "document.waivers", "plugin.failed"];

/** Whether a waiver is about a check, whatever its day. */
export const isAbout = ({ rule, where }: Waiver, check: Pick<CheckEntry, "rule" | "at">): boolean =>
  rule === check.rule &&
  !UNWAIVABLE.includes(check.rule) &&
  (where === undefined || check.at.path === where || check.at.path.startsWith(`${where}.`));
