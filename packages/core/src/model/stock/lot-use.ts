import { type Booking, counted, missing, type Peak, peakUse, tabled, type Value } from "@plumbmark/calc";
import { type Lot, soundIn } from "../../repository/stock.js";
import type { DesignSource } from "../reading/design-source.js";
import { commonDays, withWay } from "../shared/days.js";
import type { Promised, Stay } from "./bookings.js";

/** Whose promises count: those that are sure, or those of drafts and of documents without days as well. */
type Whose = "sure" | "all";

/** A lot the build takes panels from, and who has panels of it on the build's days. */
export class LotUse {
  /** Where the lot is named. */
  readonly path: string;
  /** The lot in words. */
  readonly label: string;
  /** As it stands in the stock; undefined where it is not listed. */
  readonly lot: Lot | undefined;
  /** Days on which its panels are away, those of the way there and back among them. */
  readonly stay: Stay | undefined;

  constructor(
    /** The build that takes panels from it. */
    readonly build: DesignSource,
    /** Name of the lot. */
    readonly name: string,
    own: Promised,
  ) {
    this.path = `faces.${own.face}.lot`;
    this.label = `Lot ${name}`;
    this.lot = build.context.stock.lots.get(name);
    this.stay = this.#away(own);
  }

  #away({ stay }: Promised): Stay | undefined {
    return stay && withWay(stay, this.build.context.stock.days);
  }

  /** A draft of somebody else promises nothing, and neither does a document without days. */
  #claims(whose: Whose): readonly Promised[] {
    const { file, promisedOf } = this.build.context;
    return promisedOf(this.name).filter(
      (each) => whose === "all" || each.file === file || (!each.draft && each.stay !== undefined),
    );
  }

  /** Whether anybody is left out who may want panels of it on these days: a draft, or a document without days. */
  get isWanted(): boolean {
    const sure = new Set(this.#claims("sure"));
    return this.#claims("all").some((each) => !sure.has(each) && this.#common(each) !== undefined);
  }

  /** Days both are away; whoever has no days is always there. */
  #common(each: Promised): Stay | undefined {
    const { stay } = this;
    const away = this.#away(each);
    return stay && away ? commonDays(stay, away) : (stay ?? away);
  }

  /** Panels that are away on the build's days, document by document. */
  bookingsOf(whose: Whose): readonly Booking[] {
    const { stay, name } = this;
    if (!stay) return [];
    return this.#claims(whose).flatMap((each) => {
      const days = this.#common(each);
      return days && each.count !== undefined ? [{ lot: name, build: each.file, count: each.count, ...days }] : [];
    });
  }

  /** The same of those whose promises are sure. */
  get bookings(): readonly Booking[] {
    return this.bookingsOf("sure");
  }

  /** Documents whose number is not written down. */
  unknownOf(whose: Whose): readonly string[] {
    const open = (each: Promised): boolean =>
      each.count === undefined && this.stay !== undefined && this.#common(each) !== undefined;
    return [
      ...new Set(
        this.#claims(whose)
          .filter(open)
          .map(({ file }) => file),
      ),
    ];
  }

  /** The day of the build on which most panels of the lot are away. */
  get peak(): Peak | undefined {
    return peakUse(this.bookings)[0];
  }

  /** The same with everybody who may want panels of it. */
  get wanted(): Peak | undefined {
    return peakUse(this.bookingsOf("all"))[0];
  }

  /** Panels of a peak, for a working. */
  countOf(peak: Peak | undefined): Value<"count"> {
    return counted(peak?.count ?? 0, `panels of ${this.name} away on ${peak?.day ?? "any day"}`);
  }

  /** Panels promised on that day; missing while a document does not say how many, or when. */
  get promised(): Value<"count"> {
    const { peak, path } = this;
    if (!this.stay) return missing("count", { path: "on-site", what: "dates on site", of: "The build" });
    const unknown = this.unknownOf("sure");
    if (unknown.length > 0 || !peak)
      return missing("count", { path, what: `number of panels promised of ${this.name}`, of: unknown.join(", ") });
    return this.countOf(peak);
  }

  /** Sound panels there are of it; missing where the stock does not list it. */
  get inStock(): Value<"count"> {
    return this.lot
      ? tabled(soundIn(this.lot), "count", "house", `panels of ${this.name} in the stock list`)
      : missing("count", { path: this.path, what: `lot ${this.name}`, of: "The stock list" });
  }
}

/** Every lot the build takes panels from. */
export function lotUsesOf(build: DesignSource): readonly LotUse[] {
  const own = build.context.ownPromises;
  return [...new Set(own.map(({ lot }) => lot))].map(
    (lot) => new LotUse(build, lot, own.find((each) => each.lot === lot) as Promised),
  );
}
