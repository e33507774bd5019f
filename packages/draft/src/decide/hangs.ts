import type { Brief } from "../brief.js";
import { alongOf, lengthOf, type VenuePoint, type VenueStructure } from "../venue/facts.js";
import type { Frame } from "./bar-on.js";
import { type BarFound, isTooMuch, searchBar, type Tried, timesOver } from "./bar-search.js";
import { structureOf } from "./cables.js";
import { type Decided, decided, fallen, type Scheme } from "./decision.js";
import { type Hardware, hardwareOf, nothingUseless, type Useless } from "./hang-hardware.js";
import { rigged } from "./power.js";
import { sizeIn } from "./size.js";

/** Name of the bar of a drafted build; several are `header-1` and on from the audience's left. */
export const BAR = "header";
/** Places along a beam without points are a grid of this. */
const GRID = { us: 0.3048, metric: 0.25 } as const;
/** Tube and pipe come in lengths up to 21 ft or 6.4 m: common practice, no source. A truss is put together. */
const LONGEST_PIPE = 6.4008;
const MOST_BARS = 8;

export interface HangWish {
  /** Hangs more than the fewest that do. */
  readonly more: number;
}

/** Points of a structure, or places along it where it has none. */
function pointsOf(structure: VenueStructure, system: "us" | "metric"): readonly VenuePoint[] {
  if (structure.points.length > 0) return structure.points;
  const count = Math.floor(lengthOf(structure) / GRID[system] + 1e-6);
  return Array.from({ length: count + 1 }, (_, index) => ({ name: `at-${index}`, at: index * GRID[system], data: {} }));
}

/** That a structure was chosen, and from among which; empty where the wish names it or there is no other. */
function nearestOf({ wish, facts }: Brief, name: string): string {
  const others = facts.structures.filter((each) => each.name !== name).map((each) => each.name);
  return wish.under !== undefined || others.length === 0
    ? ""
    : `, the nearest to where it is wished for (others: ${others.join(", ")})`;
}

/** The longest bar of a section there is, in metres: the longest that is owned, else the longest that is sold. */
function longestOf({ stock, outOfHoldings }: Brief, { name, data }: Hardware["section"]): number {
  const owned = outOfHoldings ? stock.items.get(name)?.lengths : undefined;
  if (owned) return Math.max(...owned.filter(({ count }) => count > 0).map(({ length }) => length));
  return Array.isArray(data.loads) ? Number.POSITIVE_INFINITY : LONGEST_PIPE;
}

interface Stretch {
  readonly structure: VenueStructure;
  readonly middle: number;
  readonly width: number;
  readonly height: number;
  readonly columns: number;
}

/** The columns of a face on so many bars, as evenly as whole columns go. */
function framesOf({ structure, middle, width, height, columns }: Stretch, bars: number): readonly Frame[] {
  const left = middle - width / 2;
  const pitch = width / columns;
  const at = (bar: number): number => Math.round((bar * columns) / bars);
  return Array.from({ length: bars }, (_, bar) => ({
    name: bars === 1 ? BAR : `${BAR}-${bar + 1}`,
    structure,
    load: [left + at(bar) * pitch, left + at(bar + 1) * pitch],
    columns: bars === 1 ? undefined : [at(bar) + 1, at(bar + 1)],
    joined: [bar > 0, bar < bars - 1],
    height,
  }));
}

interface Row {
  readonly bars: readonly Tried[];
  readonly failed: BarFound | undefined;
  readonly asked: number;
  readonly all: boolean;
}

/** One bar after another; what the first hangs by all of them do, so that they hang at one height. */
function rowOf(
  brief: Brief,
  scheme: Scheme,
  frames: readonly Frame[],
  points: readonly VenuePoint[],
  kinds: readonly Hardware[],
  more: number,
): Row {
  const bars: Tried[] = [];
  let [asked, all] = [0, true];
  const useless: Useless = nothingUseless();
  for (const [index, frame] of frames.entries()) {
    const beside = bars.map(({ laid }) => laid);
    const taken = new Set(beside.flatMap(({ set }) => set.map(({ name }) => name)));
    const first = beside[0]?.hardware;
    const found = searchBar(brief, scheme, {
      frame,
      points: points.filter(({ name }) => !taken.has(name)),
      kinds: first ? [first] : kinds,
      beside,
      isLast: index === frames.length - 1,
      more,
      useless,
    });
    asked += found.asked;
    all &&= found.all;
    if (!found.found) return { bars, failed: found, asked, all };
    bars.push(found.found);
  }
  return { bars, failed: undefined, asked, all };
}

/** The bars a face hangs from: fewest bars and fewest hangs that do, on the thinnest section, at points of the venue. */
export function hung(brief: Brief, scheme: Scheme, { more }: HangWish): Decided {
  const { wish, facts } = brief;
  const structure = structureOf(brief);
  if (!structure) {
    const names = facts.structures.map(({ name }) => name);
    const why =
      names.length === 0
        ? "Nothing is known of what it could hang from, so bar and hangs are not laid out yet."
        : `It could hang under ${names.join(" or ")}; \`over: {under: …}\` of the wish says which.`;
    return {
      ok: true,
      scheme: decided(scheme, { rigging: rigged(brief) }, { what: "hangs", why, exact: true, figures: [] }),
    };
  }
  const size = sizeIn(brief, scheme) as { readonly width: number; readonly height: number };
  // A point somebody else hangs from on those days is theirs.
  const points = pointsOf(structure, brief.system).filter(
    ({ name }) => (brief.free?.point(`${structure.name}.${name}`).by.length ?? 0) === 0,
  );
  const stretch: Stretch = {
    structure,
    middle: alongOf(structure, wish.right ?? 0, wish.upstage ?? structure.from.upstage),
    width: scheme.columns * size.width,
    height: scheme.rows * size.height,
    columns: scheme.columns,
  };
  const kinds = [...hardwareOf(brief, scheme)];
  let asked = 0;
  let nearest: Tried | undefined;
  let bars = 1;
  while (bars <= Math.min(MOST_BARS, scheme.columns)) {
    const frames = framesOf(stretch, bars);
    const longest = Math.max(...frames.map(({ load }) => load[1] - load[0]));
    const long = kinds.filter(({ section }) => longestOf(brief, section) >= longest);
    if (long.length === 0 && kinds.length > 0) {
      bars += 1;
      continue;
    }
    const row = rowOf(brief, scheme, frames, points, long, more);
    asked += row.asked;
    if (!row.failed) return { ok: true, scheme: hungOn(brief, scheme, row, structure, asked) };
    nearest = row.failed.nearest ?? nearest;
    if (!row.failed.nearest || !isTooMuch(row.failed.nearest)) break;
    // So many times over, so many more bars: nothing in between is worth asking about.
    bars = Math.max(bars + 1, Math.floor(bars * timesOver(row.failed.nearest) * 0.9));
  }
  return notHung(structure, nearest, asked);
}

function notHung(structure: VenueStructure, nearest: Tried | undefined, asked: number): Decided {
  const [first] = nearest?.fails ?? [];
  if (!nearest)
    return fallen(
      "rigging.slack-hang",
      `Under ${structure.name} there are no points on both sides of the middle of the face that nobody has.`,
    );
  const { hardware, set, frame } = nearest.laid;
  return fallen(
    first?.rule ?? "rigging.point-load",
    first?.says ?? `Under ${structure.name} no further hang can be put.`,
    `${asked} bars were looked at; the nearest is ${hardware.section.name} on ${set.length} hangs${frame.columns ? `, for columns ${frame.columns[0]} to ${frame.columns[1]}` : ""}.`,
  );
}

function hungOn(brief: Brief, scheme: Scheme, row: Row, structure: VenueStructure, asked: number): Scheme {
  const laid = row.bars.map(({ laid: bar }) => bar);
  const last = row.bars.at(-1) as Tried;
  const names = laid.flatMap(({ frame, set }) => [
    `rigging.bars.${frame.name}.on-structure`,
    `rigging.bars.${frame.name}.worst-moment`,
    ...set.map((_, index) => `rigging.bars.${frame.name}.hangs.H${index + 1}.worst-on-structure`),
  ]);
  const hangs = laid.reduce((sum, { set }) => sum + set.length, 0);
  const section = laid[0]?.hardware.section.name ?? "";
  const on = laid.length === 1 ? section : `${laid.length} bars of ${section} end to end`;
  return decided(scheme, last.matter, {
    what: "hangs",
    why: `${hangs} hangs under ${structure.name}${nearestOf(brief, structure.name)}, the fewest that do on ${on}: no hang is over its rating however the ropes share the load.`,
    exact: row.all,
    ...(row.all ? {} : { gap: `${asked} bars were looked at, and there are more.` }),
    figures: names,
  });
}
