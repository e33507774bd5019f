import { readQuantity } from "@plumbmark/calc";
import { type Part, type Survey, type Way, wayBetween } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { keyOf, mappingOf } from "../data.js";
import { alongOf, lengthOf, stationAlong, type VenueStructure } from "../venue/facts.js";
import { lengthAsWritten, roundedUp } from "../write/length.js";

/** A way a cable takes, in metres, and whether somebody measured or looked at it. */
export interface Need {
  readonly metres: number;
  readonly sure: boolean;
}

/** Slack a cable is to have over its way, as a share of it. */
const SLACK = 0.1;

const known = ({ length, how }: Way): Need | undefined =>
  length.known ? { metres: length.value, sure: how !== "straight" } : undefined;

/** The way between two places of the venue; undefined where it cannot be told at all. */
export function wayTo(survey: Survey | undefined, from: string | undefined, to: string): Need | undefined {
  if (!survey || from === undefined) return undefined;
  return from === to ? { metres: 0, sure: true } : known(wayBetween(survey, from, to));
}

/** How far a structure passes the middle of a face by, in plan, in metres. */
function passesBy(structure: VenueStructure, right: number, upstage: number): number {
  const along = Math.min(lengthOf(structure), Math.max(0, alongOf(structure, right, upstage)));
  const at = stationAlong(structure, along);
  return Math.hypot(at.right - right, at.upstage - upstage);
}

/** The structure a face is to hang under: the one that is wished for, else the nearest to the middle that is wished for. */
export function structureOf({ wish, facts }: Brief): VenueStructure | undefined {
  if (wish.under !== undefined) return facts.structures.find(({ name }) => name === wish.under);
  const { right, upstage } = wish;
  if (right === undefined && upstage === undefined)
    return facts.structures.length === 1 ? facts.structures[0] : undefined;
  const off = (each: VenueStructure): number => passesBy(each, right ?? 0, upstage ?? each.from.upstage);
  return [...facts.structures].sort((a, b) => off(a) - off(b))[0];
}

/** So far off a face may stand from a place that was measured and still be there. */
const NEAR = 1;

/** The surveyed place a face stands at, by its middle; undefined where none is near. */
function placeNear(
  survey: Survey | undefined,
  right: number | undefined,
  upstage: number | undefined,
): string | undefined {
  if (!survey || right === undefined || upstage === undefined) return undefined;
  const names = Object.keys(mappingOf(keyOf(survey.placed.data, "places")));
  const off = (name: string): number => {
    const at = (key: string): number => survey.values.get(`places.${name}.${key}`)?.value ?? Number.POSITIVE_INFINITY;
    return Math.hypot(at("right") - right, at("upstage") - upstage);
  };
  return names.filter((name) => off(name) <= NEAR).sort((a, b) => off(a) - off(b))[0];
}

/**
 * The way from a place to a face: to the nearer end of the structure it hangs under, along that to the middle of the face,
 * and down. To something that stands, the way to the floor or wall that is named.
 */
export function wayToFace(brief: Brief, from: string | undefined, drop: number): Need | undefined {
  const { wish, facts } = brief;
  const structure = structureOf(brief);
  const standsAt = placeNear(facts.survey, wish.right, wish.upstage) ?? wish.on;
  if (wish.support !== undefined && wish.support !== "flown")
    return standsAt === undefined ? undefined : wayTo(facts.survey, from, standsAt);
  if (!structure) return undefined;
  const way = wayTo(facts.survey, from, structure.name);
  if (!way) return undefined;
  const whole = lengthOf(structure);
  const at = Math.min(whole, Math.max(0, alongOf(structure, wish.right ?? 0, wish.upstage ?? structure.from.upstage)));
  return { metres: way.metres + Math.max(at, whole - at) + drop, sure: way.sure };
}

/** What a cable whose length is not known is taken to bear on the bar: the whole way along and down the face. */
export const hangsOnBar = (width: number, height: number, system: Brief["system"]): string =>
  lengthAsWritten(roundedUp(width + height, system), system);

export interface KeptLength {
  readonly metres: number;
  readonly text: string;
}

/**
 * Lengths a cable can be had in, in metres and as they are written, the shortest first; none for what is cut to length.
 * Out of holdings those that are owned and free, and of the catalogue what is longer than all of them: it is bought.
 */
export function keptLengths(
  part: Part,
  brief?: Pick<Brief, "stock" | "free" | "outOfHoldings">,
): readonly KeptLength[] {
  const listed = brief?.outOfHoldings ? brief.stock.items.get(part.name)?.lengths : undefined;
  const owned = (listed ?? [])
    .filter(({ length, count }) => (brief?.free?.item(part.name, length)?.free ?? count) > 0)
    .map(({ length, text }) => ({ metres: length, text }))
    .sort((a, b) => a.metres - b.metres);
  const longest = owned.at(-1)?.metres ?? 0;
  const { lengths } = part.data;
  const all = (Array.isArray(lengths) ? lengths : []).flatMap((each) => {
    const read = readQuantity(each as string, ["length"]);
    return read.ok ? [{ metres: read.quantity.value, text: String(each) }] : [];
  });
  return [...owned, ...all.filter(({ metres }) => metres > longest + 1e-6).sort((a, b) => a.metres - b.metres)];
}

/** The longest a cable is kept in, where that does not reach. */
export function tooShort(brief: Brief, part: Part, need: Need | undefined): string | undefined {
  const longest = keptLengths(part, brief).at(-1);
  if (!need || !longest || longest.metres >= need.metres * (1 + SLACK) - 1e-9) return undefined;
  return longest.text;
}

/** A length that is cut from a roll: the next five feet, or the next metre. */
export function cutLength(least: number, system: Brief["system"]): string {
  const step = system === "us" ? 5 * 0.3048 : 1;
  return lengthAsWritten(Math.max(1, Math.ceil(least / step - 1e-6)) * step, system);
}

/** The length of a cable for a way: the shortest that is kept and reaches; a guess where nobody measured the way. */
export function lengthFor(brief: Brief, part: Part, need: Need | undefined): string | undefined {
  const { system } = brief;
  if (!need) return undefined;
  const least = need.metres * (1 + SLACK);
  const kept = keptLengths(part, brief);
  const text = kept.length === 0 ? cutLength(least, system) : kept.find(({ metres }) => metres >= least - 1e-9)?.text;
  if (text === undefined) return undefined;
  return need.sure ? text : `${text} ?`;
}
