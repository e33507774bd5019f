import { readQuantity } from "@plumbmark/calc";
import { type Part, type Survey, type Way, wayBetween } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { alongOf, lengthOf, type VenueStructure } from "../venue/facts.js";
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

/** The structure a face is to hang under: the one that is wished for, else the only one there is. */
export function structureOf({ wish, facts }: Brief): VenueStructure | undefined {
  if (wish.under !== undefined) return facts.structures.find(({ name }) => name === wish.under);
  return facts.structures.length === 1 ? facts.structures[0] : undefined;
}

/**
 * The way from a place to a face: to the nearer end of the structure it hangs under, along that to the middle of the face,
 * and down. To something that stands, the way to the floor or wall that is named.
 */
export function wayToFace(brief: Brief, from: string | undefined, drop: number): Need | undefined {
  const { wish, facts } = brief;
  const structure = structureOf(brief);
  if (wish.support !== undefined && wish.support !== "flown")
    return wish.on === undefined ? undefined : wayTo(facts.survey, from, wish.on);
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

/** Lengths a cable is kept in, in metres and as they are written, the shortest first; none for what is cut to length. */
export function keptLengths(
  part: Part,
  brief?: Pick<Brief, "stock" | "free" | "outOfHoldings">,
): readonly KeptLength[] {
  const owned = brief?.outOfHoldings ? brief.stock.items.get(part.name)?.lengths : undefined;
  if (owned)
    return owned
      .filter(({ length, count }) => (brief?.free?.item(part.name, length)?.free ?? count) > 0)
      .map(({ length, text }) => ({ metres: length, text }))
      .sort((a, b) => a.metres - b.metres);
  const { lengths } = part.data;
  const all = (Array.isArray(lengths) ? lengths : []).flatMap((each) => {
    const read = readQuantity(each as string, ["length"]);
    return read.ok ? [{ metres: read.quantity.value, text: String(each) }] : [];
  });
  return all.sort((a, b) => a.metres - b.metres);
}

/** The longest a cable is kept in, where that does not reach. */
export function tooShort(brief: Brief, part: Part, need: Need | undefined): string | undefined {
  const longest = keptLengths(part, brief).at(-1);
  if (!need || !longest || longest.metres >= need.metres * (1 + SLACK) - 1e-9) return undefined;
  return longest.text;
}

/** The length of a cable for a way: the shortest that is kept and reaches; a guess where nobody measured the way. */
export function lengthFor(brief: Brief, part: Part, need: Need | undefined): string | undefined {
  const { system } = brief;
  if (!need) return undefined;
  const least = need.metres * (1 + SLACK);
  const kept = keptLengths(part, brief);
  const step = system === "us" ? 5 * 0.3048 : 1;
  const text =
    kept.length === 0
      ? lengthAsWritten(Math.max(1, Math.ceil(least / step - 1e-6)) * step, system)
      : kept.find(({ metres }) => metres >= least - 1e-9)?.text;
  if (text === undefined) return undefined;
  return need.sure ? text : `${text} ?`;
}
