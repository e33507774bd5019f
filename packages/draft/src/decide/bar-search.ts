import type { CheckEntry } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import type { Mapping } from "../data.js";
import { worthAsking } from "../search/hang-sets.js";
import { lengthOf, type VenuePoint } from "../venue/facts.js";
import { barsOn, END, type Frame, heightsOf, type LaidBar } from "./bar-on.js";
import type { Scheme } from "./decision.js";
import { type Hardware, isUseless, noteUseless, type Useless } from "./hang-hardware.js";

/** So far beside the face a bar may go on to the next point. */
const BESIDE = 0.6;
const MOST_HANGS = 8;
/** Bars that are asked about for one stretch of a face, not counting those whose hardware does not go together … */
const MOST_ASKED = 24;
/** … and with those. */
const MOST_IN_ALL = 96;
/** Bars that are still asked about for one that meets every recommendation, once one meets every requirement. */
const MORE_FOR_ADVICE = 16;

/** Rules that say whether a bar, its hangs and what hangs there will do. */
const RULES = [
  "rigging.attachment",
  "rigging.bar-",
  "rigging.column-depth",
  "rigging.design-factor",
  "rigging.fit",
  "rigging.head-room",
  "rigging.lost-hang",
  "rigging.point-load",
  "rigging.rated-hardware",
  "rigging.reach",
  "rigging.secondary",
  "rigging.shared-structure",
  "rigging.slack-hang",
  "rigging.suspended-weight",
] as const;

/** Rules about how the hardware goes together, wherever it hangs. */
const TOGETHER = ["rigging.attachment", "rigging.fit", "rigging.reach", "rigging.rated-hardware"] as const;
/** Rules about loads: of less of the face on it a bar does what it does not under more. */
const LOADS = [
  "rigging.bar-deflection",
  "rigging.bar-strength",
  "rigging.design-factor",
  "rigging.lost-hang",
  "rigging.point-load",
  "rigging.secondary",
] as const;

/** A bar that was asked about, with those that stand beside it. */
export interface Tried {
  readonly laid: LaidBar;
  readonly matter: Mapping;
  readonly fails: readonly CheckEntry[];
  readonly advised: readonly CheckEntry[];
}

export interface BarFound {
  /** The bar that meets most; undefined where none meets every requirement. */
  readonly found: Tried | undefined;
  /** The one that is nearest to meeting them. */
  readonly nearest: Tried | undefined;
  readonly asked: number;
  /** Whether nothing that is worth asking about was left out. */
  readonly all: boolean;
}

export interface BarAsk {
  readonly frame: Frame;
  /** Points nobody else has. */
  readonly points: readonly VenuePoint[];
  readonly kinds: readonly Hardware[];
  /** Bars of the same face that are laid out already. */
  readonly beside: readonly LaidBar[];
  /** Whether every column is on a bar with this one. */
  readonly isLast: boolean;
  /** Hangs more than the fewest that do. */
  readonly more: number;
  readonly useless: Useless;
}

/** Reach of a bar along the structure: to the next point on each side where none is above the load, never onto another bar. */
function reachOf({ structure, load, joined }: Frame, points: readonly VenuePoint[]): readonly [number, number] {
  const middle = (load[0] + load[1]) / 2;
  const before = Math.max(...points.filter(({ at }) => at < middle).map(({ at }) => at));
  const after = Math.min(...points.filter(({ at }) => at > middle).map(({ at }) => at));
  const [left, right] = [load[0] - BESIDE, load[1] + BESIDE];
  return [
    joined[0] ? load[0] + END : Math.max(0, Number.isFinite(before) ? Math.min(left, before) : left),
    joined[1] ? load[1] - END : Math.min(lengthOf(structure), Number.isFinite(after) ? Math.max(right, after) : right),
  ];
}

/** Whether the middle of the load stays between hangs when any one of them is gone; where it does not a rule will say so. */
const staysUp = (set: readonly VenuePoint[], middle: number): boolean =>
  set.filter(({ at }) => at < middle).length > 1 && set.filter(({ at }) => at > middle).length > 1;

const isOf =
  (rules: readonly string[]) =>
  ({ rule }: Pick<CheckEntry, "rule">): boolean =>
    rules.includes(rule);

/** How many times over its limit a bar is at worst; 1 where that is no matter of loads. */
export function timesOver({ fails }: Tried): number {
  const shares = fails.filter(isOf(LOADS)).map(({ measured, allowed }) => {
    const [is, may] = [measured, allowed].map((each) => (each && "value" in each ? Number(each.value) : Number.NaN));
    const share = (is as number) / (may as number);
    return Number.isFinite(share) && share > 0 ? Math.max(share, 1 / share) : 1;
  });
  return Math.max(1, ...shares);
}

/** Whether less of the face on a bar could do what more of it does not. */
export const isTooMuch = ({ fails }: Tried): boolean => fails.some(isOf(LOADS));

/** What need not be tried again on the same points, by what was in the way. */
function noteSkipped(skip: Set<string>, { assembly, section, second }: Hardware, fails: readonly CheckEntry[]): void {
  for (const { rule } of fails) {
    // What hangs there weighs no less under another bar.
    if (rule === "rigging.point-load" || rule === "rigging.suspended-weight") skip.add(`assembly ${assembly?.name}`);
    else if (rule === "rigging.bar-strength") skip.add(`section ${section.name}`);
    else if (rule === "rigging.secondary") skip.add(`second ${second?.name}`);
    else if (rule === "rigging.slack-hang" || rule === "rigging.lost-hang") skip.add("all");
  }
}

const isSkipped = (skip: ReadonlySet<string>, { assembly, section, second }: Hardware): boolean =>
  skip.has("all") ||
  skip.has(`assembly ${assembly?.name}`) ||
  skip.has(`section ${section.name}`) ||
  skip.has(`second ${second?.name}`);

/** Asks about bars for a stretch of a face: fewest hangs first, each set of them with everything it could hang by. */
export function searchBar(brief: Brief, scheme: Scheme, ask: BarAsk): BarFound {
  const { desk } = brief;
  const { frame, points, kinds, beside, isLast, more, useless } = ask;
  const middle = (frame.load[0] + frame.load[1]) / 2;
  const places = points.map(({ at }) => at);
  const { sets, wholeUpTo } = worthAsking(places, reachOf(frame, points), frame.load, MOST_HANGS);
  const caught = kinds.some(({ second }) => second !== undefined);
  let [asked, counted] = [0, 0];
  let fewest: number | undefined;
  let best: Tried | undefined;
  let nearest: Tried | undefined;
  let bestAt = 0;
  const reaches = new Map<string, readonly [number, number] | undefined>();
  const isOver = (): boolean =>
    counted >= MOST_ASKED || asked >= MOST_IN_ALL || (best !== undefined && asked - bestAt >= MORE_FOR_ADVICE);
  for (const indices of sets) {
    const set = indices.map((index) => points[index] as VenuePoint);
    // Weighed about once, so that the rule says it, and not again for every pair there is.
    if (!caught && asked > 0 && !staysUp(set, middle)) continue;
    if (fewest !== undefined && set.length !== fewest + more) continue;
    const skip = new Set<string>();
    for (const hardware of kinds) {
      if (isOver()) break;
      if (isUseless(useless, hardware) || isSkipped(skip, hardware)) continue;
      const laid: LaidBar = { frame, set, hardware };
      const own = hardware.assembly?.name ?? "";
      if (!reaches.has(own)) reaches.set(own, reachOfHardware(brief, scheme, laid));
      const heights = heightsOf(brief, frame, hardware, reaches.get(own));
      const matter = barsOn(brief, scheme, [...beside, laid], heights);
      asked += 1;
      const checks = desk.ask({ ...scheme.matter, ...matter }).checks(...RULES);
      const told = checks.filter(
        ({ outcome, rule }) => outcome === "fails" && (isLast || rule !== "rigging.bar-covers"),
      );
      const fails = told.filter(({ level }) => level === "shall");
      const tried = { laid, matter, fails, advised: told.filter(({ level }) => level === "should") };
      if (!fails.some(isOf(TOGETHER))) counted += 1;
      if (!nearest || isNearer(tried, nearest)) nearest = tried;
      noteUseless(useless, hardware, fails);
      noteSkipped(skip, hardware, fails);
      if (fails.length > 0) continue;
      if (fewest === undefined) {
        fewest = set.length;
        if (more > 0) break;
      }
      if (!best || tried.advised.length < best.advised.length) {
        if (!best) bestAt = asked;
        best = tried;
      }
      if (tried.advised.length === 0) return { found: best, nearest, asked, all: set.length <= wholeUpTo };
    }
  }
  return { found: best, nearest, asked, all: wholeUpTo >= MOST_HANGS && !isOver() };
}

const isNearer = (one: Tried, other: Tried): boolean =>
  one.fails.length < other.fails.length ||
  (one.fails.length === other.fails.length && timesOver(one) < timesOver(other));

/** What a set of hardware reaches, in metres, as the model tells it. */
function reachOfHardware(brief: Brief, scheme: Scheme, laid: LaidBar): readonly [number, number] | undefined {
  if (!laid.hardware.assembly) return undefined;
  const asked = brief.desk.ask({ ...scheme.matter, ...barsOn(brief, scheme, [laid]) });
  const path = `rigging.bars.${laid.frame.name}.hangs.H1.assembly`;
  const [short, long] = [asked.known(`${path}.shortest`), asked.known(`${path}.longest`)];
  return short === undefined || long === undefined ? undefined : [short, long];
}
