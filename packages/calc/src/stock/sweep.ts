/** A number of panels of one lot away from the shelf, both days included; `to` left out means they stay. */
export interface Booking {
  readonly lot: string;
  /** Whose it is, for the message. */
  readonly build: string;
  readonly count: number;
  /** `YYYY-MM-DD`. */
  readonly from: string;
  readonly to?: string;
}

/** The day on which most panels of a lot are away, the first such day, and the bookings of that day. */
export interface Peak {
  readonly lot: string;
  readonly count: number;
  readonly day: string;
  readonly bookings: readonly Booking[];
}

const away = (booking: Booking, day: string): boolean =>
  booking.from <= day && (booking.to === undefined || booking.to >= day);

/** A day that is no day would sort wrongly without a word; reading dates is done before. */
function requireDates(booking: Booking): void {
  for (const day of [booking.from, booking.to ?? booking.from]) {
    const read = new Date(`${day}T00:00:00Z`);
    if (!/^\d{4}-\d{2}-\d{2}$/u.test(day) || Number.isNaN(read.getTime()) || read.toISOString().slice(0, 10) !== day)
      throw new Error(`${day} is not a date`);
  }
  if (booking.to !== undefined && booking.to < booking.from) throw new Error(`${booking.to} is before ${booking.from}`);
}

function sweep(lot: string, bookings: readonly Booking[]): Peak {
  // Panels leave at the start of `from` and are back only after the whole of `to`: on one day, out before in.
  const events = bookings.flatMap((each) => [
    { day: each.from, order: 0, change: each.count },
    ...(each.to === undefined ? [] : [{ day: each.to, order: 1, change: -each.count }]),
  ]);
  events.sort((a, b) => (a.day === b.day ? a.order - b.order : a.day < b.day ? -1 : 1));
  let running = 0;
  let best = { count: 0, day: events[0]?.day ?? "" };
  for (const { day, change } of events) {
    running += change;
    if (running > best.count) best = { count: running, day };
  }
  return { lot, ...best, bookings: bookings.filter((each) => away(each, best.day)) };
}

/**
 * For every lot the largest number of panels in use on any day, by an interval sweep over the on-site days.
 * Throws on a date that is none or a stay that ends before it begins: those are found when the document is read.
 */
export function peakUse(bookings: readonly Booking[]): readonly Peak[] {
  bookings.forEach(requireDates);
  const lots = new Map<string, Booking[]>();
  for (const each of bookings) lots.set(each.lot, [...(lots.get(each.lot) ?? []), each]);
  return [...lots].map(([lot, booked]) => sweep(lot, booked));
}
