import {
  type Booking,
  counted,
  type Kind,
  missing,
  peakUse,
  printQuantity,
  type System,
  type Value,
} from "@plumbmark/calc";
import type { Build } from "../../model/build.js";
import { systemOf } from "../../model/reading/system.js";
import { commonDays, withWay } from "../../model/shared/days.js";
import { itemsNeeded, type NeededItem } from "../../model/shared/item-uses.js";
import type { Ledger } from "../../model/shared/ledger.js";
import { sharedKey } from "../../model/shared/use.js";
import { onceEach } from "../../model/shared/worst.js";
import type { Promised, Stay } from "../../model/stock/bookings.js";
import { type Stock, soundIn } from "../../repository/stock.js";
import { type ColumnOf, NOT_STATED, type ScheduleTable, tableOf } from "../../takeoff/table.js";

/** What a shortfall is worked out from. */
export interface ShortfallSource {
  readonly stock: Stock;
  readonly promises: readonly Promised[];
  readonly ledger: Ledger;
  /** The build of a document. */
  readonly designOf: (path: string) => Build;
}

/** Something that builds need and that is not free on their days. */
export interface ShortLine {
  /** A part, or `panels of lot-2431`. */
  readonly name: string;
  /** Its length, or which of several it is. */
  readonly which: string;
  /** What the builds need of it on their fullest day; undefined where one of them does not say. */
  readonly needed: number | undefined;
  /** What others take on that day. */
  readonly taken: number;
  /** Undefined where the holdings do not list it. */
  readonly owned: number | undefined;
  /** What has to be bought or hired; undefined where it cannot be told. */
  readonly short: number | undefined;
  readonly day: string | undefined;
  /** What has to be minded: of which batch, what could stand in. */
  readonly note: string;
}

type Share = { readonly file: string; readonly count: number; readonly stay: Stay | undefined; readonly own: boolean };

interface Peak {
  readonly needed: number;
  readonly taken: number;
  readonly day: string | undefined;
}

/** The day of the builds on which most is away. A build without days is there on every day. */
function peakOf(shares: readonly Share[]): Peak {
  let worst: Peak = { needed: 0, taken: 0, day: undefined };
  for (const own of shares.filter((each) => each.own)) {
    const bookings = shares.flatMap((each): readonly (Booking & Share)[] => {
      const stay = !own.stay ? (each.stay ?? ALWAYS) : each.stay ? commonDays(own.stay, each.stay) : own.stay;
      return stay ? [{ ...each, lot: "", build: each.file, ...stay }] : [];
    });
    const peak = peakUse(bookings)[0];
    if (!peak) continue;
    const there = peak.bookings as typeof bookings;
    const of = (mine: boolean): number =>
      there.filter((each) => each.own === mine).reduce((sum, { count }) => sum + count, 0);
    if (of(true) + of(false) > worst.needed + worst.taken)
      worst = { needed: of(true), taken: of(false), day: own.stay ? peak.day : undefined };
  }
  return worst;
}

const ALWAYS: Stay = { from: "0001-01-01" };

/** What the builds take of each lot, against the panels that are sound. */
function lotLines(files: ReadonlySet<string>, { promises, stock }: ShortfallSource): readonly ShortLine[] {
  const lots = new Set(promises.flatMap(({ file, lot }) => (files.has(file) ? [lot] : [])));
  return [...lots].map((name) => {
    const lot = stock.lots.get(name);
    const claims = promises.filter(
      (each) => each.lot === name && (files.has(each.file) || (!each.draft && each.stay !== undefined)),
    );
    const shares = claims.flatMap(({ file, count, stay }): readonly Share[] =>
      count === undefined ? [] : [{ file, count, stay: stay && withWay(stay, stock.days), own: files.has(file) }],
    );
    const unknown = claims.some(({ file, count }) => count === undefined && files.has(file));
    const { needed, taken, day } = peakOf(shares);
    const owned = lot && soundIn(lot);
    const batch = lot?.batch === undefined ? "its own batch" : `batch ${lot.batch}`;
    return {
      ...{ name: `panels of ${name}`, which: lot?.panel ?? "", taken, owned, day },
      needed: unknown ? undefined : needed,
      short: unknown ? undefined : Math.max(0, needed + taken - (owned ?? 0)),
      note: lot ? `of ${batch} only: another does not fill up a face` : "the holdings do not have this lot",
    };
  });
}

/** What the builds take of the items the holdings list. */
function listedLines(paths: ReadonlySet<string>, source: ShortfallSource): readonly ShortLine[] {
  const { ledger, stock } = source;
  const own = [...paths].flatMap((path) => ledger.of(path)).filter(({ of }) => of === "item");
  const keys = new Map(own.map((each) => [sharedKey(each), each]));
  return [...keys].map(([key, { name, which = "", allowed = 0 }]) => {
    const mine = own.filter((each) => sharedKey(each) === key);
    const others = ledger
      .on(key, undefined, "")
      .filter((each) => !paths.has(each.file) && !each.draft && each.stay !== undefined);
    const unknown = mine.some(({ amounts }) => amounts.n === undefined);
    const shares = onceEach([...mine, ...others]).map(
      ({ file, amounts, stay }): Share => ({ file, count: amounts.n ?? 0, stay, own: paths.has(file) }),
    );
    const { needed, taken, day } = peakOf(shares);
    const known = unknown ? undefined : needed;
    const short = unknown ? undefined : Math.max(0, needed + taken - allowed);
    return {
      name,
      which,
      needed: known,
      taken,
      owned: allowed,
      short,
      day,
      note: insteadOf(name, which, short, stock),
    };
  });
}

/** Longer pieces of the same part that are owned: who packs may take one of them. */
function insteadOf(name: string, which: string, short: number | undefined, { items }: Stock): string {
  const item = items.get(name);
  if (!item?.lengths || short === 0) return "";
  const own = item.lengths.find(({ text }) => text === which)?.length;
  const longer = item.lengths.filter(({ length, count }) => own !== undefined && length > own && count > 0);
  return longer.length === 0
    ? ""
    : `longer ones are owned: ${longer.map(({ text, count }) => `${count} of ${text}`).join(", ")}`;
}

interface Unlisted {
  readonly need: NeededItem;
  /** Its length, in the units its first build is written in. */
  readonly which: string;
  readonly shares: Share[];
  unknown: boolean;
}

/** A length as it is written, else in the unit of what it follows from, else in those its author writes in. */
function lengthText(length: Value<"length"> | undefined, { reader, practice }: Build): string {
  if (!length?.known) return "";
  const { value, unit, origin } = length;
  return origin.from === "written"
    ? origin.text.trim()
    : printQuantity(value, "length", systemOf(reader, practice), unit);
}

/** Parts that the holdings do not list: all of them are short, as far as anybody can tell. */
function unlistedLines(source: ShortfallSource, paths: readonly string[]): readonly ShortLine[] {
  const { items } = source.stock;
  const all = new Map<string, Unlisted>();
  for (const path of paths) {
    const build = source.designOf(path);
    const stay = build.stay && withWay(build.stay, source.stock.days);
    const isInLots = new Set(build.faces.filter(({ lots }) => lots.length > 0).map(({ panel }) => panel?.name));
    for (const need of itemsNeeded(build)) {
      const { name, kind, length, count } = need;
      if (items.has(name) || !build.reader.parts.has(name) || (kind === "panel" && isInLots.has(name))) continue;
      const key = `${name}\u0000${length?.known ? Math.round(length.value * 1000) : ""}`;
      const line = all.get(key) ?? { need, which: lengthText(length, build), shares: [], unknown: false };
      all.set(key, line);
      if (count.known) line.shares.push({ file: path, count: count.value, stay, own: true });
      else line.unknown = true;
    }
  }
  return [...all.values()].map(({ need, which, shares, unknown }) => {
    const { needed, day } = peakOf(shares);
    const known = unknown ? undefined : needed;
    const note = need.kind === "panel" ? "no lot is named for them" : "the holdings do not list it";
    return { name: need.name, which, needed: known, taken: 0, owned: undefined, short: known, day, note };
  });
}

/**
 * What some builds need, together, that is not free on their days: lots, items, and parts the holdings do not list.
 * Drafts and builds without days count only where they are asked about.
 */
export function linesOfShortfall(source: ShortfallSource, paths: readonly string[]): readonly ShortLine[] {
  const files = new Set(paths);
  const lines = [...lotLines(files, source), ...listedLines(files, source), ...unlistedLines(source, paths)];
  return lines.filter(({ short }) => short === undefined || short > 0);
}

const number = (count: number | undefined, what: string): Value<Kind> =>
  count === undefined ? missing("count", { path: "", what }) : counted(count, what);

const COLUMNS: readonly ColumnOf<ShortLine>[] = [
  { name: "What", of: ({ name }) => name },
  { name: "Which", of: ({ which }) => which },
  { name: "Short", kind: "count", of: ({ short }) => number(short, "short") },
  { name: "Needed", kind: "count", of: ({ needed }) => number(needed, "needed") },
  { name: "Taken by others", kind: "count", of: ({ taken }) => taken },
  { name: "Owned", kind: "count", of: ({ owned }) => (owned === undefined ? NOT_STATED : owned) },
  { name: "On", of: ({ day }) => day ?? "every day" },
  { name: "To be minded", of: ({ note }) => note },
];

/** The same as a table. */
export const shortfallTable = (lines: readonly ShortLine[], system: System): ScheduleTable =>
  tableOf({ name: "shortfall", title: "Shortfall: buy or hire" }, COLUMNS, lines, system);
