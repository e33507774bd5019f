import type { Item } from "../../repository/items.js";
import { placeNaming } from "../reading/parts-used.js";
import { itemsNeeded } from "../shared/item-uses.js";
import type { SharedDesign } from "../shared/shared-design.js";
import { stayOf } from "./bookings.js";

/** What bears a load and wears: the holdings have to say when it was last inspected. */
const LIFTING = ["rope", "hardware", "attachment"];

/** A part that is taken along, and when those on the shelf were last inspected. */
export interface InspectedItem {
  /** Where the document names it. */
  readonly path: string;
  /** The part in words. */
  readonly label: string;
  /** The part by its name in the catalogue. */
  readonly name: string;
  /** Ropes, hardware and attachments; bars and the rest are not. */
  readonly isGear: boolean;
  /** Undefined where the holdings do not list it. */
  readonly item: Item | undefined;
  /** How many are needed; undefined where it cannot be told. */
  readonly count: number | undefined;
}

/** Days on which those of an item that can be taken were last inspected; undefined for each of which nothing is written. */
export const inspectionDays = ({ inspected, serials }: Item): readonly (string | undefined)[] =>
  serials ? serials.filter(({ fault }) => fault === undefined).map((each) => each.inspected ?? inspected) : [inspected];

const saysWhen = (item: Item | undefined): boolean =>
  item !== undefined && inspectionDays(item).some((day) => day !== undefined);

/** Lifting gear the build takes along, bars, and of the rest what the holdings know a day of. */
export function inspectedItems(build: SharedDesign): readonly InspectedItem[] {
  const { items } = build.context.stock;
  const needed = itemsNeeded(build);
  return [...new Set(needed.map(({ name }) => name))].flatMap((name) => {
    const own = needed.filter((each) => each.name === name);
    const { parts } = build.reader;
    const kind = parts.get(name)?.kind ?? own[0]?.kind ?? "";
    const item = items.get(name);
    const isGear = LIFTING.includes(kind);
    if (!isGear && kind !== "bar" && !saysWhen(item)) return [];
    const counts = own.map(({ count }) => (count.known ? count.value : undefined));
    const count = counts.includes(undefined) ? undefined : counts.reduce<number>((sum, each) => sum + (each ?? 0), 0);
    return [{ path: placeNaming(build.reader, name), label: `Part ${name}`, name, isGear, item, count }];
  });
}

/** The day up to which an inspection has to be good: the last on site; of a build that stays today, or its first day. */
export function inspectedUntil(build: SharedDesign): string | undefined {
  const stay = stayOf(build.reader.data("on-site"));
  const { today } = build.context;
  return stay && (stay.to ?? (stay.from > today ? stay.from : today));
}

/** The same day so many months later; of a month that is shorter its last day. */
export function monthsAfter(day: string, months: number): string {
  const [year, month, date] = day.split("-").map(Number) as [number, number, number];
  const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate();
  return new Date(Date.UTC(year, month - 1 + months, Math.min(date, last))).toISOString().slice(0, 10);
}
