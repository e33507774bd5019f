import type { Stay } from "../stock/bookings.js";
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
