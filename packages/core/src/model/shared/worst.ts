import { peakUse } from "@plumbmark/calc";
import type { Stay } from "../stock/bookings.js";
import { commonDays } from "./days.js";
import type { Booked } from "./use.js";

/** Uses of one and the same piece as one: on the days any of them has it. */
export function onceEach(booked: readonly Booked[]): readonly Booked[] {
  const groups = new Map<string, Booked[]>();
  const single: Booked[] = [];
  for (const each of booked) {
    if (each.once === undefined || !each.stay) {
      single.push(each);
      continue;
    }
    const group = groups.get(each.once) ?? [];
    group.push(each);
    groups.set(each.once, group);
  }
  for (const group of groups.values()) {
    let open: Booked | undefined;
    for (const each of group.toSorted((a, b) => ((a.stay as Stay).from < (b.stay as Stay).from ? -1 : 1))) {
      const [before, stay] = [open?.stay, each.stay as Stay];
      if (open && before && (before.to === undefined || stay.from <= before.to)) {
        const ends = [before.to, stay.to];
        const to = ends.includes(undefined) ? undefined : ends.sort()[1];
        open = { ...open, stay: { from: before.from, ...(to === undefined ? {} : { to }) } };
      } else {
        if (open) single.push(open);
        open = each;
      }
    }
    if (open) single.push(open);
  }
  return single;
}

/** The day of some uses of one thing on which most of it is used, over the legs it has. */
export interface WorstUse {
  readonly day: string;
  readonly leg: string;
  readonly total: number;
  /** Who uses it then. */
  readonly by: readonly { readonly file: string; readonly path: string; readonly amount: number }[];
}

const THREE_LEGS = ["A", "B", "C"];

/**
 * The worst of the days on which one of several uses is there, from plain data as a record has it; undefined without
 * days.
 * @param own uses of one document, on the same days
 */
export function worstTogether(own: readonly Booked[], others: readonly Booked[]): WorstUse | undefined {
  const days = own[0]?.stay;
  if (!days) return undefined;
  const legs = [...new Set([...own, ...others].flatMap(({ amounts }) => Object.keys(amounts)))];
  const beside = Math.max(0, ...[...own, ...others].map((each) => each.beside ?? 0));
  const mine = new Set(own.flatMap(({ once }) => once ?? []));
  const rest = onceEach(others.filter(({ once }) => once === undefined || !mine.has(once)));
  const found = legs
    .filter((leg) => leg !== "I" || legs.length === 1)
    .map((leg): WorstUse => {
      const bookings = [...own, ...rest].flatMap((each) => {
        const common = each.stay && commonDays(days, each.stay);
        const amount = each.amounts[leg] ?? (THREE_LEGS.includes(leg) ? each.amounts.I : undefined);
        return amount === undefined || !common
          ? []
          : [{ ...each, lot: leg, build: each.file, count: amount, ...common }];
      });
      const peak = peakUse(bookings)[0];
      const there = (peak?.bookings ?? []) as typeof bookings;
      const by = there.map(({ file, path, count }) => ({ file, path, amount: count }));
      return { day: peak?.day ?? days.from, leg, total: (peak?.count ?? 0) + beside, by };
    });
  return found.reduce<WorstUse | undefined>(
    (most, each) => (most && most.total >= each.total ? most : each),
    undefined,
  );
}
