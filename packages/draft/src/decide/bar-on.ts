import type { Data } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { grouped, keyOf, type Mapping, mappingOf } from "../data.js";
import { isAcross, stationAlong, type VenuePoint, type VenueStructure } from "../venue/facts.js";
import { lengthAsWritten, roundedUp } from "../write/length.js";
import type { Scheme } from "./decision.js";
import type { Hardware } from "./hang-hardware.js";
import { rigged } from "./power.js";
import { FACE } from "./size.js";
import { withFace } from "./viewing.js";

/** What a bar stands out beside its outer hangs and its face at the least. */
export const END = 0.1;

/** Columns of a face under one bar, and what is above them. Lengths in metres along the structure. */
export interface Frame {
  readonly name: string;
  readonly structure: VenueStructure;
  /** Ends of what the bar carries. */
  readonly load: readonly [number, number];
  /** First and last column, counted from 1; undefined where it carries them all. */
  readonly columns: readonly [number, number] | undefined;
  /** Whether another bar begins at its left and its right end. */
  readonly joined: readonly [boolean, boolean];
  /** Height of the face, in metres. */
  readonly height: number;
}

/** A bar as it is tried: on which points, of what, how high. */
export interface LaidBar {
  readonly frame: Frame;
  readonly set: readonly VenuePoint[];
  readonly hardware: Hardware;
}

export interface Heights {
  readonly bar: string;
  readonly trim: string;
}

/** Left end of a bar along the structure, and its length. */
function endsOf({ frame, set }: LaidBar, brief: Brief): { readonly start: number; readonly length: number } {
  const { load, joined } = frame;
  const [first, last] = [set[0] as VenuePoint, set.at(-1) as VenuePoint];
  const left = joined[0] ? load[0] : Math.min(load[0], first.at) - END;
  const right = joined[1] ? load[1] : Math.max(load[1], last.at) + END;
  // Two bars that meet end where the columns do.
  if (joined[0] && joined[1]) return { start: left, length: right - left };
  const length = roundedUp(right - left, brief.system);
  const more = length - (right - left);
  // What is rounded up stands out alike at both ends, or at the one that is free.
  return { start: joined[0] ? left : joined[1] ? left - more : left - more / 2, length };
}

function barOf(brief: Brief, laid: LaidBar, heights: Heights | undefined): Mapping {
  const { system } = brief;
  const { frame, set, hardware } = laid;
  const { structure, load, columns } = frame;
  const { start, length } = endsOf(laid, brief);
  const whole = (at: number): string => lengthAsWritten(Math.max(0, at - start), system);
  const { girth, flange, pipe, structure: carries } = structure.data;
  const isSurveyed = brief.surveyed !== undefined;
  const hangs = Object.fromEntries(
    set.map(({ name, at, data }, index) => {
      const point = isSurveyed && structure.points.length > 0 ? `${structure.name}.${name}` : undefined;
      return [
        `H${index + 1}`,
        grouped({
          point,
          at: point === undefined ? whole(at) : undefined,
          assembly: hardware.assembly?.of,
          structure: isSurveyed ? undefined : keyOf(data, "structure"),
        }),
      ];
    }),
  );
  const middle = stationAlong(structure, start + length / 2);
  const up = lengthAsWritten(structure.from.up, system);
  return grouped({
    under: isSurveyed ? structure.name : undefined,
    middle: isSurveyed && isAcross(structure) ? { right: lengthAsWritten(middle.right, system) } : undefined,
    section: hardware.section.name,
    length: lengthUp(length, system),
    carries: grouped({
      face: FACE,
      from: whole(load[0]),
      columns: columns === undefined ? undefined : `${columns[0]}..${columns[1]}`,
    }),
    structure: isSurveyed ? undefined : carries,
    height: heights?.bar,
    flange: isSurveyed ? undefined : flange,
    pipe: isSurveyed ? undefined : pipe,
    "bearing-height": isSurveyed ? undefined : up,
    second:
      hardware.second &&
      grouped({ at: "each hang", assembly: hardware.second.of, girth: isSurveyed ? undefined : girth, slack: "none" }),
    hangs: hangs as Data,
  });
}

/** A length that is never written shorter than it is: the face has to end on the bar. */
function lengthUp(metres: number, system: Brief["system"]): string {
  const step = system === "us" ? 0.0254 / 4 : 0.001;
  return lengthAsWritten(Math.ceil(metres / step - 1e-6) * step, system);
}

/** What the letter of a venue that is written in the wish states of the points that are used. */
function letterOf(bars: readonly LaidBar[]): Mapping | undefined {
  const letter = mappingOf(bars[0]?.frame.structure.data.letter);
  if (Object.keys(letter).length === 0) return undefined;
  const points = bars.flatMap(({ frame, set }) =>
    set.map(({ data }, index) => [
      bars.length === 1 ? `H${index + 1}` : `${frame.name}.H${index + 1}`,
      grouped({ structure: keyOf(data, "structure"), catch: keyOf(data, "catch") }),
    ]),
  );
  return { ...letter, points: Object.fromEntries(points) as Mapping };
}

/** The front matter of bars on some of the points; heights are put in once they are known. */
export function barsOn(brief: Brief, scheme: Scheme, bars: readonly LaidBar[], heights?: Heights): Mapping {
  const [first] = bars;
  const face = withFace(scheme, grouped({ "hung-by": first?.hardware.hungBy?.name, trim: heights?.trim }));
  const all = Object.fromEntries(bars.map((laid) => [laid.frame.name, barOf(brief, laid, heights)]));
  const letter = brief.surveyed === undefined ? letterOf(bars) : undefined;
  return { ...face, rigging: grouped({ ...rigged(brief), bars: all as Data, letter: letter as Data }) };
}

/** The height of a bar by what hangs it: in the middle of what its hardware reaches, as far as the wish lets it. */
export function heightsOf(
  { wish, system }: Brief,
  { structure, height }: Frame,
  hardware: Hardware,
  reach: readonly [number, number] | undefined,
): Heights | undefined {
  const { up } = structure.from;
  const below = (hardware.hungBy?.quantities.get("drop")?.value ?? 0) + height;
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
