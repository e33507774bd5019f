import type { Stay } from "../stock/bookings.js";
import { commonDays } from "./days.js";
import { type Booked, sharedKey } from "./use.js";

/** A stay over more months than this is looked through like one without an end. */
const MOST_MONTHS = 24;

const nextMonth = (month: string): string => {
  const [year, number] = month.split("-").map(Number) as [number, number];
  return number === 12 ? `${year + 1}-01` : `${year}-${String(number + 1).padStart(2, "0")}`;
};

/** Months a stay touches; undefined of one without an end, or of a long one. */
function monthsOf({ from, to }: Stay): readonly string[] | undefined {
  if (to === undefined) return undefined;
  const [first, last] = [from.slice(0, 7), to.slice(0, 7)];
  const months = [first];
  for (let month = first; month < last; ) {
    month = nextMonth(month);
    months.push(month);
    if (months.length > MOST_MONTHS) return undefined;
  }
  return months;
}

interface Dated {
  readonly stay: Stay | undefined;
}

/** Things by the days they are there, so that nobody goes through those of other months. */
export class Calendar<T extends Dated> {
  readonly #months = new Map<string, T[]>();
  /** Without an end, or long. */
  readonly #lasting: T[] = [];
  readonly #undated: T[] = [];
  readonly #all: T[] = [];

  add(each: T): void {
    this.#all.push(each);
    const months = each.stay && monthsOf(each.stay);
    if (!each.stay) this.#undated.push(each);
    else if (!months) this.#lasting.push(each);
    else
      for (const month of months) {
        const own = this.#months.get(month);
        if (own) own.push(each);
        else this.#months.set(month, [each]);
      }
  }

  /** What is there on any of some days, and what has no days; everything where the days are not known. */
  on(stay: Stay | undefined): readonly T[] {
    const months = stay && monthsOf(stay);
    if (!stay) return this.#all;
    const near = months
      ? [...new Set(months.flatMap((month) => this.#months.get(month) ?? [])), ...this.#lasting, ...this.#undated]
      : this.#all;
    return near.filter((each) => each.stay === undefined || commonDays(stay, each.stay) !== undefined);
  }
}

/** A document, as far as it is known when it is there. */
export interface Dweller extends Dated {
  readonly path: string;
  /** The venue, as venues are compared. */
  readonly venue: string | undefined;
}

/**
 * Who uses what when, over the documents of a repository. What a document uses takes a while to work out, so it is asked
 * for only where somebody asks about days on which it is there.
 */
export class Ledger {
  readonly #documents = new Calendar<Dweller>();
  readonly #entered = new Set<string>();
  /** Documents of which nobody told what they use. */
  readonly #untold = new Calendar<Booked>();
  readonly #stays = new Map<string, Stay | undefined>();
  readonly #books = new Map<string, Calendar<Booked>>();

  /**
   * @param dwellers every document, with the days its things are away
   * @param usesOf what one of them uses; undefined where that is not known: then it may use anything
   */
  constructor(
    dwellers: Iterable<Dweller>,
    private readonly usesOf: (path: string) => readonly Booked[] | undefined,
  ) {
    for (const each of dwellers) {
      this.#documents.add(each);
      this.#stays.set(each.path, each.stay);
    }
  }

  /** Documents that are there on any of some days. */
  near(stay: Stay | undefined): readonly Dweller[] {
    return this.#documents.on(stay);
  }

  /** What one document uses. */
  of(path: string): readonly Booked[] {
    return this.usesOf(path) ?? [];
  }

  /** What documents but one use of something on any of some days, in the order of the documents' paths. */
  on(key: string, stay: Stay | undefined, but: string): readonly Booked[] {
    for (const { path } of this.near(stay)) if (path !== but) this.#enter(path);
    const all = [...(this.#books.get(key)?.on(stay) ?? []), ...this.#untold.on(stay)];
    const found = all.filter(({ file }) => file !== but);
    return found.toSorted((one, other) => (one.file < other.file ? -1 : one.file > other.file ? 1 : 0));
  }

  #enter(path: string): void {
    if (this.#entered.has(path)) return;
    this.#entered.add(path);
    const uses = this.usesOf(path);
    if (!uses) this.#untold.add(untoldUse(path, this.#stays.get(path)));
    for (const each of uses ?? []) {
      const key = sharedKey(each);
      const book = this.#books.get(key) ?? new Calendar<Booked>();
      this.#books.set(key, book);
      book.add(each);
    }
  }
}

/** A use nobody knows the amount of. */
const untoldUse = (file: string, stay: Stay | undefined): Booked => ({
  ...{ of: "item", name: "", path: "", amounts: {}, unit: "" },
  ...{ file, stay, draft: false },
});
