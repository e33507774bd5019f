import { type Booking, counted, type Kind, missing, peakUse, printer, sum, type Value } from "@plumbmark/calc";
import { once } from "../reading/once.js";
import { systemOf } from "../reading/system.js";
import { type Stay, stayOf } from "../stock/bookings.js";
import { commonDays, withWay } from "./days.js";
import type { SharedDesign } from "./shared-design.js";
import type { Booked, OwnUse, SharedName } from "./use.js";
import { KINDS_SHARED, ownUsesBy } from "./uses-of.js";
import { onceEach } from "./worst.js";

/** Kinds of quantity by the unit of an amount. */
const KINDS: Readonly<Record<string, Kind>> = { A: "current", kg: "mass", "{pixel}": "pixels", "{count}": "count" };

/** Letters of a sum, by kind. */
const SYMBOLS: Readonly<Record<string, string>> = { A: "I", kg: "W", "{pixel}": "N", "{count}": "n" };

/** What another build takes on the worst day. */
export interface OtherShare {
  readonly file: string;
  /** Where in that document. */
  readonly path: string;
  /** As it is printed in this document's units. */
  readonly text: string;
}

/** The day on which most of something is used, the first such day. */
export interface WorstDay {
  /** Undefined where only this build uses it, on days that are not written down. */
  readonly day: string | undefined;
  /** The leg that is fullest; undefined where there is but one. */
  readonly leg: string | undefined;
  /** What is used in all; missing while this build does not say how much. */
  readonly total: Value;
  /** What each other build takes of it that day. */
  readonly others: readonly OtherShare[];
}

const THREE = ["A", "B", "C"];

/** What is used of a leg; what says nothing of legs may be on any. */
const onLeg = <T>(amounts: Readonly<Record<string, T>>, leg: string): T | undefined =>
  amounts[leg] ?? (THREE.includes(leg) ? amounts.I : undefined);

/** Something a build uses that others may use as well, and who does on its days. */
export class SharedThing implements SharedName {
  /** What kind of thing it is. */
  readonly of: SharedName["of"];
  readonly name: string;
  readonly venue?: string;
  readonly which?: string;
  /** Where the document names it first. */
  readonly path: string;
  /** The thing in words. */
  readonly label: string;
  /** How much there may be in all. */
  readonly allowed: Value;

  constructor(
    /** The build that uses it. */
    readonly build: SharedDesign,
    /** What the build itself uses of it. */
    readonly own: readonly [OwnUse, ...OwnUse[]],
  ) {
    const [{ of, name, venue, which, path, label, allowed }] = own;
    if (venue !== undefined) this.venue = venue;
    if (which !== undefined) this.which = which;
    this.of = of;
    this.name = name;
    this.path = path;
    this.label = label;
    this.allowed = allowed;
  }

  /** UCUM code of what is used. */
  get unit(): string {
    return this.own[0].unit;
  }

  /** Days on which it is used; of what is owned the way there and back are among them. */
  get stay(): Stay | undefined {
    const stay = stayOf(this.build.reader.data("on-site"));
    return stay && this.of === "item" ? withWay(stay, this.build.context.stock.days) : stay;
  }

  /** What others use of it on those days, drafts and those without days among them. */
  get others(): readonly Booked[] {
    return once(this, "others", () =>
      this.build.context.sharing(this, this.stay).filter(({ file }) => file !== this.build.context.file),
    );
  }

  /** Those whose use is sure: no drafts, and with days. */
  get counted(): readonly Booked[] {
    return this.others.filter(({ draft, stay }) => !draft && stay !== undefined);
  }

  /** Drafts, and documents without days on site. */
  get leftOut(): readonly Booked[] {
    return this.others.filter(({ draft, stay }) => draft || stay === undefined);
  }

  /** Files of those who do not say how much, or only guess it. */
  unknownIn(others: readonly Booked[]): readonly string[] {
    const untold = ({ amounts, guess }: Booked): boolean => guess === true || Object.keys(amounts).length === 0;
    return [...new Set(others.filter(untold).map(({ file }) => file))];
  }

  /** The worst of the build's days, with some others. Documents without days are there on each of them. */
  worst(others: readonly Booked[]): WorstDay {
    const uses = [...this.own, ...others];
    const named = [...new Set(uses.flatMap(({ amounts }) => Object.keys(amounts)))];
    const legs = named.some((leg) => THREE.includes(leg)) ? named.filter((leg) => leg !== "I") : named;
    const days = legs.map((leg) => this.#worstOf(leg, others, legs.length > 1));
    const known = days.filter(({ total }) => total.known);
    const amount = ({ total }: WorstDay): number => (total.known ? total.value : 0);
    const worst = known.length < days.length ? days.find(({ total }) => !total.known) : undefined;
    return (
      worst ??
      known.reduce<WorstDay | undefined>(
        (most, each) => (most && amount(most) >= amount(each) ? most : each),
        undefined,
      ) ?? {
        day: undefined,
        leg: undefined,
        total: missing(this.#kind, { path: this.path, what: "what the build uses of it", of: this.label }),
        others: [],
      }
    );
  }

  get #kind(): Kind {
    return KINDS[this.own[0].unit] ?? "count";
  }

  #worstOf(leg: string, others: readonly Booked[], several: boolean): WorstDay {
    const days = this.stay;
    const mine = new Set(this.own.flatMap((each) => each.once ?? []));
    const bookings = onceEach(others.filter((each) => each.once === undefined || !mine.has(each.once))).flatMap(
      (each): readonly (Booking & Pick<Booked, "path" | "file">)[] => {
        const amount = onLeg(each.amounts, leg);
        const stay = !each.stay ? (days ?? ALWAYS) : days ? commonDays(days, each.stay) : each.stay;
        return amount === undefined || !stay
          ? []
          : [{ lot: leg, build: each.file, count: amount, ...stay, path: each.path, file: each.file }];
      },
    );
    const peak = peakUse(bookings)[0];
    const there = (peak?.bookings ?? []) as typeof bookings;
    const kind = this.#kind;
    const print = printer(systemOf(this.build.reader, this.build.practice));
    const shares = there.map(({ file, path, count }) => ({ file, path, text: print(count, kind) }));
    const own = this.own.map(({ amounts }) => onLeg(amounts, leg) ?? counted(0, this.label, kind));
    const house = this.#beside(others);
    const rest = there.map(({ count, file }) => counted(count, `${this.label}, by ${file}`, kind));
    const values = [...own, ...rest, ...(house ? [house] : [])];
    const total = values.length === 1 ? (values[0] as Value) : sum(values, kind, SYMBOLS[this.own[0].unit] ?? "n");
    const day = peak?.day === ALWAYS.from ? undefined : peak?.day;
    return { day: day ?? days?.from, leg: several ? leg : undefined, total, others: shares };
  }

  /** What the house has on it: the most any of the documents says, once. */
  #beside(others: readonly Booked[]): Value | undefined {
    const own = this.own.flatMap(({ beside }) => beside ?? []);
    const most = Math.max(0, ...others.map(({ beside = 0 }) => beside));
    const mine = own[0];
    if (mine && (!mine.known || mine.value >= most)) return mine;
    return most > 0 ? counted(most, `${this.label}: what the house has on it`, this.#kind) : undefined;
  }
}

/** Before every day there is. */
const ALWAYS: Stay = { from: "0001-01-01" };

/** Everything of some kinds that the build uses and others may use, too. */
export const sharedThings = (build: SharedDesign, ...kinds: readonly SharedName["of"][]): readonly SharedThing[] =>
  KINDS_SHARED.filter((kind) => kinds.includes(kind)).flatMap((kind) =>
    once(build, `shared things ${kind}`, () => things(build, kind)),
  );

const things = (build: SharedDesign, kind: SharedName["of"]): readonly SharedThing[] =>
  [...ownUsesBy(build, kind).values()].map((uses) => new SharedThing(build, uses as [OwnUse, ...OwnUse[]]));
