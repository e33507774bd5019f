import { type Booking, type Peak, peakUse } from "@plumbmark/calc";
import { type DaysAway, type Lot, type Promised, withWay } from "@plumbmark/core";
import { nameAnchor } from "../html/anchor.js";
import type { SiteWithDocuments } from "./site.js";

export const lotPath = (name: string): string => `stock.html#${nameAnchor("Lot", name)}`;

/** A lot, what the documents take of it, and the day on which most of it is away. */
export interface LotLine {
  readonly name: string;
  /** Undefined for one that documents name and the stock list does not. */
  readonly lot: Lot | undefined;
  readonly promises: readonly Promised[];
  /** Open while a document that is no draft does not say how many, or when; undefined when none takes any. */
  readonly peak: Peak | "open" | undefined;
}

function peakOf(promises: readonly Promised[], way: DaysAway): LotLine["peak"] {
  // A draft promises nothing, nor does a document without days, as the rule on stock has it.
  const claims = promises.filter(({ draft, stay }) => !draft && stay !== undefined);
  const bookings = claims.flatMap(({ lot, file, count, stay }): readonly Booking[] =>
    count === undefined || stay === undefined ? [] : [{ lot, build: file, count, ...withWay(stay, way) }],
  );
  return bookings.length < claims.length ? "open" : peakUse(bookings)[0];
}

const day = ({ stay }: Promised): string => stay?.from ?? "";

/** Every lot of the stock list and every one that a document names, by name. */
export function lotLines({
  repository,
  promises,
}: Pick<SiteWithDocuments, "repository" | "promises">): readonly LotLine[] {
  const { lots } = repository.stock;
  const taken = new Map<string, Promised[]>([...lots.keys()].map((name) => [name, []]));
  for (const each of promises) {
    const known = taken.get(each.lot);
    if (known) known.push(each);
    else taken.set(each.lot, [each]);
  }
  return [...taken]
    .map(([name, own]) => ({
      name,
      lot: lots.get(name),
      promises: own.toSorted((one, other) => (day(one) < day(other) ? -1 : day(one) > day(other) ? 1 : 0)),
      peak: peakOf(own, repository.stock.days),
    }))
    .sort((one, other) => (one.name < other.name ? -1 : 1));
}
