import { peakUse } from "@plumbmark/calc";
import { listedLength, soundOf } from "../../repository/items.js";
import { type Stock, soundIn } from "../../repository/stock.js";
import { type Promised, promisedOf, type Stay } from "../stock/bookings.js";
import { commonDays, withWay } from "./days.js";
import type { Ledger } from "./ledger.js";
import { sharedKey } from "./use.js";
import { onceEach } from "./worst.js";

/** What is taken of something on the fullest of some days, by whom, and what of it may be taken in all. */
export interface Taken {
  /** How much others take on the fullest day; by leg where there are several: `I` or `A`, `B`, `C`. */
  readonly amounts: Readonly<Record<string, number>>;
  /** Documents that take some of it on any of the days. */
  readonly by: readonly string[];
  /** Documents among them that do not say how much, or only guess it: then what is free is not known. */
  readonly unknown: readonly string[];
}

/** Something that is counted: how many there are, and how many of them are free on every one of some days. */
export interface FreeCount {
  readonly owned: number;
  readonly taken: number;
  /** Never less than none. */
  readonly free: number;
  /** Documents that take some and do not say how many. */
  readonly unknown: readonly string[];
}

/** What is asked about. */
export interface FreeQuestion {
  /** Days on site. Of what is owned the days out and back are added. */
  readonly stay: Stay;
  /** The venue as it is written, or its survey's name; circuits and points are looked for there. */
  readonly venue?: string;
  /** A document that does not count, for it is the one that asks. */
  readonly but?: string;
}

/**
 * What is free on some days, over the documents of a repository that are no drafts and have days: exactly what the rules
 * on shared circuits, structures and stock add up. Amounts are in A, kg and counts.
 */
export class Free {
  readonly #away: Stay;

  constructor(
    private readonly question: FreeQuestion & { readonly sharedVenue: string | undefined },
    private readonly ledger: Ledger,
    private readonly stock: Stock,
    private readonly promises: readonly Promised[],
  ) {
    this.#away = withWay(question.stay, stock.days);
  }

  /** Current others draw from a circuit of the venue, in A: as `I`, or by leg. What the house has on it is not in it. */
  circuit(name: string): Taken {
    return this.#taken(this.#here("circuit", name), this.question.stay);
  }

  /** Outlets others take of a circuit of the venue, as `n`. */
  outlets(circuit: string): Taken {
    return this.#taken(this.#here("outlets", circuit), this.question.stay);
  }

  /** What others hang from a point of the venue at worst, `front-beam.F1`, in kg as `W`. */
  point(name: string): Taken {
    return this.#taken(this.#here("point", name), this.question.stay);
  }

  /** What others hang from a structure of the venue in all, in kg as `W`. */
  structure(name: string): Taken {
    return this.#taken(this.#here("structure", name), this.question.stay);
  }

  /** Panels of a lot, faulty ones left out; undefined when the holdings have no such lot. */
  lot(name: string): FreeCount | undefined {
    const lot = this.stock.lots.get(name);
    if (!lot) return undefined;
    const { days } = this.stock;
    const claims = promisedOf(this.promises, name).flatMap((each) => {
      const common = each.stay && commonDays(this.#away, withWay(each.stay, days));
      return each.draft || !common || each.file === this.question.but ? [] : [{ ...each, common }];
    });
    const bookings = claims.flatMap(({ file, count, common }) =>
      count === undefined ? [] : [{ lot: name, build: file, count, ...common }],
    );
    const unknown = claims.flatMap(({ file, count }) => (count === undefined ? [file] : []));
    return counted(soundIn(lot), peakUse(bookings)[0]?.count ?? 0, unknown);
  }

  /**
   * Pieces of a part.
   * @param length metres, of what is listed by length; one that is not listed is owned in no number
   * @returns undefined when the holdings do not list the part, or list it by length and no length is asked for
   */
  item(name: string, length?: number): FreeCount | undefined {
    const item = this.stock.items.get(name);
    if (!item || (item.lengths && length === undefined)) return undefined;
    const which = item.lengths && length !== undefined ? listedLength(item, length)?.text : undefined;
    if (item.lengths && which === undefined) return counted(0, 0, []);
    const key = sharedKey({ of: "item", name, ...(which === undefined ? {} : { which }) });
    const { amounts, unknown } = this.#taken(key, this.#away);
    return counted(soundOf(item, length === undefined ? {} : { length }), amounts.n ?? 0, unknown);
  }

  #here(of: "circuit" | "outlets" | "point" | "structure", name: string): string | undefined {
    const { sharedVenue: venue } = this.question;
    return venue === undefined ? undefined : sharedKey({ of, name, venue });
  }

  #taken(key: string | undefined, stay: Stay): Taken {
    const all = key === undefined ? [] : this.ledger.on(key, stay, this.question.but ?? "");
    const sure = onceEach(all.filter((each) => !each.draft && each.stay !== undefined));
    const legs = [...new Set(sure.flatMap(({ amounts }) => Object.keys(amounts)))];
    const most = (leg: string): number =>
      peakUse(
        sure.flatMap(({ amounts, file, stay: own }) => {
          const common = own && commonDays(stay, own);
          return amounts[leg] === undefined || !common
            ? []
            : [{ lot: leg, build: file, count: amounts[leg], ...common }];
        }),
      )[0]?.count ?? 0;
    const untold = sure.filter(({ amounts, guess }) => guess === true || Object.keys(amounts).length === 0);
    return {
      amounts: Object.fromEntries(legs.map((leg) => [leg, most(leg)])),
      by: [...new Set(sure.map(({ file }) => file))],
      unknown: [...new Set(untold.map(({ file }) => file))],
    };
  }
}

const counted = (owned: number, taken: number, unknown: readonly string[]): FreeCount => ({
  owned,
  taken,
  free: Math.max(0, owned - taken),
  unknown: [...new Set(unknown)],
});
