import { dayAfter, monthsAfter } from "@plumbmark/kit";

/** The first day on which an inspection reaches a later one: a month that is shorter may end before it. */
export function earliestFor(until: string, months: number): string {
  for (let day = monthsAfter(until, -months); ; day = dayAfter(day)) if (monthsAfter(day, months) >= until) return day;
}
