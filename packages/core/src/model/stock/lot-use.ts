import { type Booking, counted, missing, type Peak, peakUse, tabled, type Value } from "@plumbmark/calc";
import type { Lot } from "../../repository/stock.js";
import type { DesignSource } from "../reading/design-source.js";
import type { Promised, Stay } from "./bookings.js";

/** Days both are on site; undefined when there is none. A stay without an end lasts. */
function common(own: Stay, other: Stay): Stay | undefined {
  const from = own.from > other.from ? own.from : other.from;
  const ends = [own.to, other.to].filter((each) => each !== undefined).sort();
  const to = ends[0];
  if (to === undefined) return { from };
  return to < from ? undefined : { from, to };
}

/** A lot the build takes panels from, and who has panels of it on the build's days. */
export class LotUse {
  /** Where the lot is named. */
  readonly path: string;
  readonly label: string;
  readonly lot: Lot | undefined;
  readonly stay: Stay | undefined;

  constructor(
    readonly build: DesignSource,
    readonly name: string,
    own: Promised,
  ) {
    this.path = `faces.${own.face}.lot`;
    this.label = `Lot ${name}`;
    this.lot = build.context.stock.lots.get(name);
    this.stay = own.stay;
  }

  /** A draft of somebody else promises nothing. */
  get #claims(): readonly Promised[] {
    const { file, promisedOf } = this.build.context;
    return promisedOf(this.name).filter((each) => each.file === file || !each.draft);
  }

  get bookings(): readonly Booking[] {
    const { stay, name } = this;
    if (!stay) return [];
    return this.#claims.flatMap((each) => {
      const days = each.stay && common(stay, each.stay);
      return days && each.count !== undefined ? [{ lot: name, build: each.file, count: each.count, ...days }] : [];
    });
  }

  /** Documents whose number or dates are not written down. */
  get unknown(): readonly string[] {
    const { stay } = this;
    const open = (each: Promised): boolean =>
      each.stay === undefined ||
      (each.count === undefined && stay !== undefined && common(stay, each.stay) !== undefined);
    return [...new Set(this.#claims.filter(open).map(({ file }) => file))];
  }

  /** The day of the build on which most panels of the lot are away. */
  get peak(): Peak | undefined {
    return peakUse(this.bookings)[0];
  }

  /** Panels known to be promised on that day. */
  get atPeak(): Value<"count"> {
    const { peak, name } = this;
    return counted(peak?.count ?? 0, `panels of ${name} away on ${peak?.day ?? "any day"}`);
  }

  /** Panels promised on that day; missing while a document does not say how many, or when. */
  get promised(): Value<"count"> {
    const { peak, path } = this;
    if (!this.stay) return missing("count", { path: "on-site", what: "dates on site", of: "The build" });
    if (this.unknown.length > 0 || !peak)
      return missing("count", { path, what: `number of panels promised of ${this.name}`, of: this.unknown.join(", ") });
    return this.atPeak;
  }

  get inStock(): Value<"count"> {
    return this.lot
      ? tabled(this.lot.count, "count", "house", `panels of ${this.name} in the stock list`)
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
