/** What is wrong with a day or with days on site, what to write, and, where only one thing can be meant, that thing. */
export interface DaysAdvice {
  readonly says: string;
  readonly mend: string;
  /** Never written without asking: a day is a promise to somebody. */
  readonly better?: string;
}

const DAY = /\d{4}-\d{2}-\d{2}/gu;

const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

const isLeap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** Whether a text is a real day of the Gregorian calendar, written `2027-01-31` (ISO 8601). */
export function isDay(text: string): boolean {
  const read = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(text);
  if (!read) return false;
  const [year, month, day] = read.slice(1).map(Number) as [number, number, number];
  const length = (LENGTHS[month - 1] ?? 0) + (month === 2 && isLeap(year) ? 1 : 0);
  return day >= 1 && day <= length;
}

const DAY_MS = 86_400_000;

/** A day so many days later, or earlier. */
export const dayAfter = (day: string, days = 1): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);

/**
 * Whether a day is still to come. Where a day ends depends on where one stands: the morrow of one place is today in
 * another.
 */
export const isToCome = (day: string, today: string): boolean => day > dayAfter(today);

const two = (text: string): string => text.padStart(2, "0");

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

/** `12 November 2026` and `November 12, 2026`. */
function ofMonth(text: string): string | undefined {
  const [, day, name, year] =
    /^(\d{1,2})(?:st|nd|rd|th)?\.?\s+([a-z]{3,9})\.?,?\s+(\d{4})$/iu.exec(text) ??
    (/^([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})$/iu.exec(text) ?? []).map((part, at, all) =>
      at === 1 ? (all[2] as string) : at === 2 ? (all[1] as string) : part,
    );
  const month = name === undefined ? -1 : MONTHS.indexOf(name.slice(0, 3).toLowerCase());
  return month < 0 ? undefined : `${year}-${two(String(month + 1))}-${two(day as string)}`;
}

/** A day in another form as ISO 8601 has it; undefined where day and month cannot be told apart. */
function isoOf(text: string): string | undefined {
  const named = ofMonth(text);
  if (named !== undefined) return named;
  const first = /^(\d{4})[./](\d{1,2})[./](\d{1,2})$/u.exec(text);
  if (first) return `${first[1]}-${two(first[2] as string)}-${two(first[3] as string)}`;
  // With points between, the day stands first (DIN 5008 and its like); with strokes either may.
  const last = /^(\d{1,2})([./-])(\d{1,2})[./-](\d{4})$/u.exec(text);
  if (!last) return undefined;
  const [, one, mark, other, year] = last as unknown as [string, string, string, string, string];
  if (mark === "." || Number(one) > 12) return `${year}-${two(other)}-${two(one)}`;
  if (Number(other) > 12 || one === other) return `${year}-${two(one)}-${two(other)}`;
  return undefined;
}

/** Whole days in ISO 8601 in place of the days of a text in another form; undefined where one of them cannot be told. */
function rewritten(text: string): string | undefined {
  const parts = text.trim().split(/(\s+(?:to|until|bis|–|-)\s+|^from\s+|\s*–\s*)/u);
  const made = parts.map((part) => {
    if (isDay(part)) return part;
    if (/^\s*$/u.test(part) || part === "from ") return part;
    if (/^\s*(?:to|until|bis|–|-)\s*$/u.test(part)) return " to ";
    const iso = isoOf(part.trim());
    return iso !== undefined && isDay(iso) ? iso : undefined;
  });
  return made.includes(undefined) ? undefined : made.join("");
}

const FORM = "`2027-03-05 to 2027-03-08`, or `from 2027-03-05` for a build that stays";

/** Looks at a day, or at the days on site. @returns undefined where nothing is wrong */
export function adviceForDays(text: string, form: "day" | "stay"): DaysAdvice | undefined {
  const wanted = form === "day" ? "a day such as `2027-03-05`" : FORM;
  const shape =
    form === "day"
      ? /^\d{4}-\d{2}-\d{2}$/u
      : /^(?:\d{4}-\d{2}-\d{2} to \d{4}-\d{2}-\d{2}|from \d{4}-\d{2}-\d{2}|\d{4}-\d{2}-\d{2})$/u;
  if (!shape.test(text)) {
    const better = rewritten(text);
    return better !== undefined && shape.test(better)
      ? { says: `is \`${text}\``, mend: `Write \`${better}\`: year, month, day.`, better }
      : { says: `is \`${text.slice(0, 60)}\``, mend: `Write ${wanted}: year, month, day.` };
  }
  const days = text.match(DAY) ?? [];
  const bad = days.find((day) => !isDay(day));
  if (bad !== undefined)
    return { says: `is \`${text}\`, and ${bad} is in no calendar`, mend: "Write days that are in the calendar." };
  const [first, last] = days;
  if (first !== undefined && last !== undefined && last < first) {
    const better = `${last} to ${first}`;
    return { says: `is \`${text}\`: the last day is before the first`, mend: `Write \`${better}\`.`, better };
  }
  return undefined;
}
