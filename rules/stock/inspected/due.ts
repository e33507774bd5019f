import { monthsAfter } from "@plumbmark/kit";

const DAY_MS = 86_400_000;

/** The first day on which an inspection reaches a later one: a month that is shorter may end before it. */
export function earliestFor(until: string, months: number): string {
  for (let day = monthsAfter(until, -months); ; day = dayAfter(day)) if (monthsAfter(day, months) >= until) return day;
}

const dayAfter = (day: string): string => new Date(Date.parse(day) + DAY_MS).toISOString().slice(0, 10);
