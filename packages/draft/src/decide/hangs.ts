import type { CheckEntry, Data, Part } from "@plumbmark/core";
import { type Brief, partsInUnits, partsOfKind } from "../brief.js";
import { grouped, keyOf, type Mapping, mappingOf, textsOf } from "../data.js";
import { hangSets } from "../search/hang-sets.js";
import { alongOf, isAcross, lengthOf, stationAlong, type VenuePoint, type VenueStructure } from "../venue/facts.js";
import { lengthAsWritten, roundedUp } from "../write/length.js";
import { structureOf } from "./cables.js";
import { type Decided, decided, fallen, type Scheme } from "./decision.js";
import { rigged } from "./power.js";
import { FACE, panelSize } from "./size.js";
import { withFace } from "./viewing.js";

/** Name of the bar of a drafted build. */
export const BAR = "header";
/** So far beside the face a bar may go on to the next point. */
const BESIDE = 0.6;
/** What a bar stands out beside its outer hangs and its face at the least. */
const END = 0.1;
const MOST_HANGS = 8;
/** Bars that are asked about for one face. */
const MOST_ASKED = 24;
/** Places along a beam without points are a grid of this. */
const GRID = { us: 0.3048, metric: 0.25 } as const;
/** Rules that say whether a bar, its hangs and what hangs there will do. */
const RULES = [
  "rigging.attachment",
  "rigging.bar-",
  "rigging.column-depth",
  "rigging.design-factor",
  "rigging.head-room",
  "rigging.lost-hang",
  "rigging.point-load",
  "rigging.rated-hardware",
  "rigging.reach",
  "rigging.secondary",
  "rigging.slack-hang",
  "rigging.suspended-weight",
] as const;

export interface HangWish {
  /** Hangs more than the fewest that do. */
  readonly more: number;
}

/** What hangs the bar, as the catalogue has it: assemblies, each a list of parts. */
interface Assembly {
  readonly name: string;
  readonly of: Data;
  readonly parts: readonly string[];
}

/** Assemblies of the catalogue, those of parts that are made in the units of the build first. */
function assembliesOf(brief: Brief): readonly Assembly[] {
  const order = ["rope", "hardware"].flatMap((kind) => partsInUnits(brief, kind).map(({ name }) => name));
  const rank = ({ parts }: { readonly parts: readonly string[] }): number =>
    parts.reduce((sum, name) => sum + Math.max(0, order.indexOf(name)), 0) / Math.max(1, parts.length);
  return partsOfKind(brief, "assembly")
    .map((part) => ({ name: part.name, of: part.name, parts: textsOf(part.data, "of") }))
    .sort((a, b) => rank(a) - rank(b));
}

interface Frame {
  readonly structure: VenueStructure;
  /** Middle of the face, in metres along the structure. */
  readonly middle: number;
  readonly width: number;
  readonly height: number;
  readonly points: readonly VenuePoint[];
}

interface Tried {
  readonly matter: Mapping;
  readonly hangs: number;
  readonly section: string;
  readonly fails: readonly CheckEntry[];
  readonly open: number;
}

/** Points of a structure, or places along it where it has none. */
function pointsOf(structure: VenueStructure, system: "us" | "metric"): readonly VenuePoint[] {
  if (structure.points.length > 0) return structure.points;
  const count = Math.floor(lengthOf(structure) / GRID[system] + 1e-6);
  return Array.from({ length: count + 1 }, (_, index) => ({ name: `at-${index}`, at: index * GRID[system], data: {} }));
}

/** Reach of a bar along the structure: to the next point on each side where none is above the face itself. */
function reachOf({ structure, middle, width, points }: Frame): readonly [number, number] {
  const [left, right] = [middle - width / 2 - BESIDE, middle + width / 2 + BESIDE];
  const before = Math.max(...points.filter(({ at }) => at < middle).map(({ at }) => at));
  const after = Math.min(...points.filter(({ at }) => at > middle).map(({ at }) => at));
  return [
    Math.max(0, Number.isFinite(before) ? Math.min(left, before) : left),
    Math.min(lengthOf(structure), Number.isFinite(after) ? Math.max(right, after) : right),
  ];
}

interface Hardware {
  readonly section: Part;
  readonly hungBy: Part | undefined;
  readonly assembly: Assembly | undefined;
  readonly second: Assembly | undefined;
}

/** The front matter of a bar on some of the points; the trim is put in once the bar's height is known. */
function barOn(
  brief: Brief,
  scheme: Scheme,
  frame: Frame,
  set: readonly VenuePoint[],
  hardware: Hardware,
  heights?: Heights,
): Mapping {
  const { system } = brief;
  const { structure, middle, width } = frame;
  const ends = [middle - width / 2, middle + width / 2];
  const left = Math.min(ends[0] as number, (set[0] as VenuePoint).at) - END;
  const right = Math.max(ends[1] as number, (set.at(-1) as VenuePoint).at) + END;
  const length = roundedUp(right - left, system);
  // What is rounded up stands out alike at both ends.
  const start = left - (length - (right - left)) / 2;
  const whole = (at: number): string => lengthAsWritten(at - start, system);
  const { letter, girth, structure: carries } = structure.data;
  const isSurveyed = brief.surveyed !== undefined;
  const hangs = Object.fromEntries(
    set.map(({ name, at, data }, index) => {
      const assembly = hardware.assembly?.of;
      const point = isSurveyed && structure.points.length > 0 ? `${structure.name}.${name}` : undefined;
      const own = isSurveyed ? undefined : keyOf(data, "structure");
      return [
        `H${index + 1}`,
        grouped({ point, at: point === undefined ? whole(at) : undefined, assembly, structure: own }),
      ];
    }),
  );
  const second =
    hardware.second &&
    grouped({ at: "each hang", assembly: hardware.second.of, girth: isSurveyed ? undefined : girth, slack: "none" });
  const middleOfBar = stationAlong(structure, start + length / 2);

  const bar = grouped({
    under: isSurveyed ? structure.name : undefined,
    middle: isSurveyed && isAcross(structure) ? { right: lengthAsWritten(middleOfBar.right, system) } : undefined,
    section: hardware.section.name,
    length: lengthAsWritten(length, system),
    carries: { face: FACE, from: whole(ends[0] as number) },
    structure: isSurveyed ? undefined : carries,
    height: heights?.bar,
    "bearing-height": isSurveyed ? undefined : lengthAsWritten(structure.from.up, system),
    second,
    hangs: hangs as Data,
  });
  const stated = Object.fromEntries(
    set.map(({ data }, index) => [
      `H${index + 1}`,
      grouped({ structure: keyOf(data, "structure"), catch: keyOf(data, "catch") }),
    ]),
  );
  const ofLetter =
    isSurveyed || Object.keys(mappingOf(letter)).length === 0 ? undefined : { ...mappingOf(letter), points: stated };
  const face = withFace(scheme, grouped({ "hung-by": hardware.hungBy?.name, trim: heights?.trim }));
  return { ...face, rigging: grouped({ ...rigged(brief), bars: { [BAR]: bar } as Data, letter: ofLetter as Data }) };
}

interface Heights {
  readonly bar: string;
  readonly trim: string;
}

/** The height of a bar by what hangs it: in the middle of what its hardware reaches, as far as the wish lets it. */
function heightsOf(
  brief: Brief,
  frame: Frame,
  hardware: Hardware,
  reach: readonly [number, number] | undefined,
): Heights | undefined {
  const { wish, system } = brief;
  const up = frame.structure.from.up;
  const below = (hardware.hungBy?.quantities.get("drop")?.value ?? 0) + frame.height;
  const asked = wish.trim;
  const lowest = asked && asked.how !== "at most" ? asked.length : undefined;
  const highest = asked && asked.how !== "at least" ? asked.length : undefined;
  if (!reach && !asked) return undefined;
  let trim = reach ? up - (reach[0] + reach[1]) / 2 - below : (asked?.length as number);
  if (lowest !== undefined) trim = Math.max(trim, lowest);
  if (highest !== undefined && (asked?.how !== "about" || !reach)) trim = Math.min(trim, highest);
  // The bar is a whole quarter inch or millimetre high, and the trim follows from it.
  const step = system === "us" ? 0.0254 / 4 : 0.001;
  const bar = Math.ceil((trim + below) / step - 1e-6) * step;
  return { bar: lengthAsWritten(bar, system), trim: lengthAsWritten(bar - below, system) };
}

/** What a set of hardware reaches, in metres, as the model tells it. */
function reachOfHardware(brief: Brief, scheme: Scheme, frame: Frame, set: readonly VenuePoint[], hardware: Hardware) {
  if (!hardware.assembly) return undefined;
  const asked = brief.desk.ask({ ...scheme.matter, ...barOn(brief, scheme, frame, set, hardware) });
  const path = `rigging.bars.${BAR}.hangs.H1.assembly`;
  const [short, long] = [asked.known(`${path}.shortest`), asked.known(`${path}.longest`)];
  return short === undefined || long === undefined ? undefined : ([short, long] as const);
}

/** Sections, attachments and assemblies the catalogue has for a bar, the plainest first. */
function* hardwareOf(brief: Brief, scheme: Scheme): Generator<Hardware> {
  const takes = (part: Part): boolean => {
    const { takes: list } = part.data;
    return !Array.isArray(list) || list.includes(scheme.panel);
  };
  const attachments = partsInUnits(brief, "attachment").filter(takes);
  const all = assembliesOf(brief);
  const over = brief.wish.overPeople ?? true;
  // What goes round a structure and down to the bar has more rope in it than what hangs the bar.
  const ropeIn = ({ parts }: Assembly): number =>
    parts.reduce((sum, name) => sum + (brief.catalogue.parts.get(name)?.quantities.get("length")?.value ?? 0), 0);
  const secondsFor = (main: Assembly | undefined): readonly Assembly[] => {
    const short = (each: Assembly): number => (main && ropeIn(each) <= ropeIn(main) ? 1 : 0);
    return all.filter((each) => each !== main).sort((a, b) => short(a) - short(b));
  };
  for (const assembly of all.length > 0 ? all : [undefined])
    for (const section of partsInUnits(brief, "bar"))
      for (const hungBy of attachments.length > 0 ? attachments : [undefined])
        for (const second of over && all.length > 0 ? secondsFor(assembly) : [undefined])
          yield { section, hungBy, assembly, second };
}

/** That a structure was chosen, and from among which; empty where the wish names it or there is no other. */
function nearestOf({ wish, facts }: Brief, name: string): string {
  const others = facts.structures.filter((each) => each.name !== name).map((each) => each.name);
  return wish.under !== undefined || others.length === 0
    ? ""
    : `, the nearest to where it is wished for (others: ${others.join(", ")})`;
}

/** The bar a face hangs from: fewest hangs that do, on the thinnest bar, at points of the venue. */
export function hung(brief: Brief, scheme: Scheme, { more }: HangWish): Decided {
  const { wish, desk, facts } = brief;
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
  const size = panelSize(brief, scheme.panel) as { readonly width: number; readonly height: number };
  const all = pointsOf(structure, brief.system);
  // A point somebody else hangs from on those days is theirs.
  const points = all.filter(({ name }) => (brief.free?.point(`${structure.name}.${name}`).by.length ?? 0) === 0);
  const frame: Frame = {
    structure,
    middle: alongOf(structure, wish.right ?? 0, wish.upstage ?? structure.from.upstage),
    width: scheme.columns * size.width,
    height: scheme.rows * size.height,
    points,
  };
  const reach = reachOf(frame);
  // Of as many hangs those first that ask for no longer a bar than the face does.
  const outside = (set: readonly VenuePoint[]): number =>
    Math.max(0, frame.middle - frame.width / 2 - END - (set[0] as VenuePoint).at) +
    Math.max(0, (set.at(-1) as VenuePoint).at - frame.middle - frame.width / 2 - END);
  const sets = [
    ...hangSets(
      points.map(({ at }) => at),
      reach,
      frame.middle,
      MOST_HANGS,
    ),
  ]
    .map((set) => set.map((index) => points[index] as VenuePoint))
    .map((set, index) => ({ set, index, beside: outside(set) }))
    .sort((a, b) => a.set.length - b.set.length || a.beside - b.beside || a.index - b.index)
    .map(({ set }) => set);
  if (sets.length === 0)
    return fallen(
      "rigging.slack-hang",
      `Under ${structure.name} there are no points on both sides of the middle of the face.`,
    );
  const kinds = [...hardwareOf(brief, scheme)];
  let asked = 0;
  let fewest: number | undefined;
  let nearest: Tried | undefined;
  const reaches = new Map<string, readonly [number, number] | undefined>();
  const useless: Useless = { assemblies: new Set(), seconds: new Set(), pairs: new Set() };
  const caught = kinds.some(({ second }) => second !== undefined);
  for (const set of sets) {
    // Weighed about once, so that the rule says it, and not again for every pair there is.
    if (!caught && asked > 0 && !staysUp(set, frame.middle)) continue;
    if (fewest !== undefined && set.length !== fewest + more) continue;
    for (const hardware of kinds) {
      if (isUseless(useless, hardware) || asked >= MOST_ASKED) continue;
      const own = hardware.assembly?.name ?? "";
      if (!reaches.has(own)) reaches.set(own, reachOfHardware(brief, scheme, frame, set, hardware));
      const heights = heightsOf(brief, frame, hardware, reaches.get(own));
      const matter = barOn(brief, scheme, frame, set, hardware, heights);
      asked += 1;
      const checks = desk.ask({ ...scheme.matter, ...matter }).checks(...RULES);
      const fails = checks.filter(({ outcome, level }) => outcome === "fails" && level === "shall");
      const tried = {
        matter,
        fails,
        hangs: set.length,
        section: hardware.section.name,
        open: checks.length - fails.length,
      };
      if (!nearest || fails.length < nearest.fails.length) nearest = tried;
      noteUseless(useless, hardware, fails);
      // A thicker bar is heavier: what its hangs or the structure do not bear is no better under it.
      if (fails.some(isOf(STANDS)) && !hardware.second) break;
      if (fails.length > 0) continue;
      if (fewest === undefined && more > 0) {
        fewest = set.length;
        break;
      }
      return {
        ok: true,
        scheme: hungOn(scheme, tried, structure.name, nearestOf(brief, structure.name), asked < MOST_ASKED),
      };
    }
  }
  const [first] = nearest?.fails ?? [];
  return fallen(
    first?.rule ?? "rigging.point-load",
    first?.says ?? `Under ${structure.name} no further hang can be put.`,
    nearest && `${asked} bars were looked at; the nearest is ${nearest.section} on ${nearest.hangs} hangs.`,
  );
}

/** What does not fit together does not on any other points either. */
interface Useless {
  readonly assemblies: Set<string>;
  readonly seconds: Set<string>;
  /** Section and attachment. */
  readonly pairs: Set<string>;
}

const pairOf = ({ section, hungBy }: Hardware): string => `${section.name} ${hungBy?.name ?? ""}`;

const isUseless = ({ assemblies, seconds, pairs }: Useless, hardware: Hardware): boolean =>
  assemblies.has(hardware.assembly?.name ?? "") ||
  seconds.has(hardware.second?.name ?? "") ||
  pairs.has(pairOf(hardware));

function noteUseless(useless: Useless, hardware: Hardware, fails: readonly CheckEntry[]): void {
  const { assembly, second } = hardware;
  for (const { rule, at } of fails) {
    const isSecond = at.path.includes(".second");
    if (rule === "rigging.attachment" || rule === "rigging.column-depth") useless.pairs.add(pairOf(hardware));
    else if (second && isSecond && ["rigging.reach", "rigging.secondary"].includes(rule))
      useless.seconds.add(second.name);
    else if (assembly && (rule === "rigging.reach" || rule === "rigging.head-room"))
      useless.assemblies.add(assembly.name);
  }
}

/** Rules about where the hangs are and how many, whatever the section of the bar. */
const STANDS = ["rigging.lost-hang", "rigging.point-load", "rigging.slack-hang", "rigging.secondary"] as const;
const isOf =
  (rules: readonly string[]) =>
  ({ rule }: CheckEntry): boolean =>
    rules.some((each) => rule.startsWith(each));

/** Whether the middle of the load stays between hangs when any one of them is gone; where it does not a rule will say so. */
const staysUp = (set: readonly VenuePoint[], middle: number): boolean =>
  set.filter(({ at }) => at < middle).length > 1 && set.filter(({ at }) => at > middle).length > 1;

function hungOn(
  scheme: Scheme,
  { matter, hangs, section }: Tried,
  under: string,
  chosen: string,
  whole: boolean,
): Scheme {
  const names = Array.from(
    { length: hangs },
    (_, index) => `rigging.bars.${BAR}.hangs.H${index + 1}.worst-on-structure`,
  );
  return decided(scheme, matter, {
    what: "hangs",
    why: `${hangs} hangs under ${under}${chosen}, the fewest that do on ${section}: no hang is over its rating however the ropes share the load.`,
    exact: whole,
    ...(whole ? {} : { gap: `${MOST_ASKED} bars were looked at, and there are more.` }),
    figures: [`rigging.bars.${BAR}.on-structure`, `rigging.bars.${BAR}.worst-moment`, ...names],
  });
}
