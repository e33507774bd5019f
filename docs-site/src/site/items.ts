import { type Booking, type Peak, peakUse } from "@plumbmark/calc";
import type { Item, UseEntry } from "@plumbmark/core";
import type { DocumentSummary } from "./document-summary.js";
import type { SiteWithDocuments } from "./site.js";

/** A build that takes some of an item. */
export interface ItemTaker {
  readonly document: DocumentSummary;
  readonly use: UseEntry;
}

/** Pieces of one part, of one length or with one serial number, and who takes them on which days. */
export interface ItemLine {
  readonly name: string;
  /** A length or a serial number; empty where all are alike. */
  readonly which: string;
  /** How many can be promised. */
  readonly sound: number;
  /** Days of the last inspections, the oldest first; what is not written down is undefined. */
  readonly inspected: readonly (string | undefined)[];
  /** What is wrong with pieces that are promised to nobody. */
  readonly faults: readonly string[];
  readonly takers: readonly ItemTaker[];
  /** The day on which most are away; open while a build does not say how many. */
  readonly peak: Peak | "open" | undefined;
}

const sorted = (days: readonly (string | undefined)[]): readonly (string | undefined)[] =>
  [...new Set(days)].sort((one, other) => ((one ?? "") < (other ?? "") ? -1 : 1));

function piecesOf(item: Item): readonly Pick<ItemLine, "which" | "sound" | "inspected" | "faults">[] {
  const { count = 0, lengths, serials, inspected } = item;
  if (lengths)
    return lengths.map(({ text, count: each }) => ({ which: text, sound: each, inspected: [inspected], faults: [] }));
  if (!serials) return [{ which: "", sound: count, inspected: [inspected], faults: [] }];
  const usable = serials.filter(({ fault }) => fault === undefined);
  return [
    {
      which: "",
      sound: usable.length,
      inspected: sorted(usable.map((each) => each.inspected ?? inspected)),
      faults: serials.flatMap(({ serial, fault }) => (fault === undefined ? [] : [`${serial}: ${fault}`])),
    },
  ];
}

/** One piece that two builds of a venue name at one place is away once, on the days of both. */
function bookingsOf(takers: readonly ItemTaker[]): readonly Booking[] {
  const shared = new Map<string, Booking>();
  const own: Booking[] = [];
  for (const { document, use } of takers) {
    const { from, to, once, amounts } = use;
    const booking = {
      lot: "",
      build: document.entry.file,
      count: amounts.n ?? 0,
      from,
      ...(to === undefined ? {} : { to }),
    };
    const other = once === undefined ? undefined : shared.get(once);
    const isOver = other?.to !== undefined && from > other.to;
    if (once === undefined || !other || isOver) {
      if (other) own.push(other);
      if (once === undefined) own.push(booking);
      else shared.set(once, booking);
      continue;
    }
    const last = other.to === undefined || to === undefined ? undefined : other.to > to ? other.to : to;
    const { to: _, ...rest } = other;
    shared.set(once, { ...rest, ...(last === undefined ? {} : { to: last }) });
  }
  return [...own, ...shared.values()];
}

/** Every item of the holdings by name, with the builds that are no drafts and have days and take some of it. */
export function itemLines({
  repository,
  documents,
}: Pick<SiteWithDocuments, "repository" | "documents">): readonly ItemLine[] {
  const taken = new Map<string, ItemTaker[]>();
  for (const document of documents)
    for (const use of document.entry.uses ?? []) {
      if (use.of !== "item") continue;
      const key = `${use.name}\u0000${use.which ?? ""}`;
      const own = taken.get(key);
      if (own) own.push({ document, use });
      else taken.set(key, [{ document, use }]);
    }
  return [...repository.stock.items.values()]
    .sort((one, other) => (one.name < other.name ? -1 : 1))
    .flatMap((item) =>
      piecesOf(item).map((pieces) => {
        const all = taken.get(`${item.name}\u0000${pieces.which}`) ?? [];
        const takers = all.toSorted((one, other) => (one.use.from < other.use.from ? -1 : 1));
        const isOpen = takers.some(({ use }) => use.amounts.n === undefined);
        return { name: item.name, ...pieces, takers, peak: isOpen ? "open" : peakUse(bookingsOf(takers))[0] };
      }),
    );
}
