import { dayAfter } from "../../document/days.js";
import type { DaysAway } from "../../repository/stock.js";
import type { Stay } from "../stock/bookings.js";

/** The days on site with those before and after on which everything is away already, or not back yet. */
export const withWay = ({ from, to }: Stay, { out, back }: DaysAway): Stay =>
  out === 0 && back === 0
    ? { from, ...(to === undefined ? {} : { to }) }
    : { from: dayAfter(from, -out), ...(to === undefined ? {} : { to: dayAfter(to, back) }) };

/** Days that belong to both; undefined when there is none. A stay without an end lasts. */
export function commonDays(one: Stay, other: Stay): Stay | undefined {
  const from = one.from > other.from ? one.from : other.from;
  const to = [one.to, other.to].filter((each) => each !== undefined).sort()[0];
  if (to === undefined) return { from };
  return to < from ? undefined : { from, to };
}
