import { counted, difference, gapsOf, type Known, missing, placeAlong, sum, times, type Value } from "@plumbmark/calc";
import { pointNamed } from "../../venue/completion.js";
import { type Survey, surveyData } from "../../venue/survey.js";
import { between, endsOf, type SurveyedPlace } from "../../venue/ways.js";
import { once } from "../reading/once.js";
import type { Bar } from "./bar.js";
import type { Hang } from "./hang.js";
import type { Leg } from "./leg.js";

/** Less than this of its length to the side, and a structure has no left and right. */
const ACROSS = 0.1;

/** Structure and point of the survey that a hang names; undefined where it names none that is there. */
export function pointOfHang(hang: Hang): readonly [structure: string, point: string] | undefined {
  const { reader } = hang.bar.build;
  const { venue } = reader;
  return venue && pointNamed(venue.survey, reader.text(`${hang.path}.point`));
}

/** The structure of the survey a bar hangs under: as it says, else that of its hangs' points. */
export function structureOfBar(bar: Bar): string | undefined {
  const { reader } = bar.build;
  const under = reader.text(`${bar.path}.under`);
  const { venue } = reader;
  if (!venue) return undefined;
  if (under !== undefined) return surveyData(venue.survey, "structure", under) === undefined ? undefined : under;
  for (const hang of bar.hangs) {
    const found = pointOfHang(hang);
    if (found) return found[0];
  }
  return undefined;
}

/** The structure above a bar as a line: from one end to the other, and which way is right. */
export interface Overhead {
  readonly name: string;
  readonly survey: Survey;
  readonly ends: readonly [SurveyedPlace, SurveyedPlace];
  readonly length: Value<"length">;
  /** 1 where it runs to the audience's right from its first end, -1 to the left; 0 where it cannot be told or runs up and down stage. */
  readonly sense: 1 | -1 | 0;
}

export function overheadOf(bar: Bar): Overhead | undefined {
  return once(bar, "overhead", () => {
    const [name, survey] = [structureOfBar(bar), bar.build.reader.venue?.survey];
    const ends = name === undefined || !survey ? undefined : endsOf(survey, name);
    if (name === undefined || !survey || !ends) return undefined;
    const length = between(...ends);
    const [one, other] = [ends[0].right, ends[1].right];
    const side = one.known && other.known ? other.value - one.value : 0;
    const across = length.known && Math.abs(side) > ACROSS * length.value;
    return { name, survey, ends, length, sense: across ? (side > 0 ? 1 : -1) : 0 };
  });
}

/** Place of the point of a hang, or of the leg of a bridle, along its structure, as surveyed. */
function alongOf(held: Hang | Leg): Value<"length"> | undefined {
  const { reader } = ("bar" in held ? held : held.hang).bar.build;
  const { venue } = reader;
  const named = venue && pointNamed(venue.survey, reader.text(`${held.path}.point`));
  if (!named || !venue) return undefined;
  const path = `structure.${named[0]}.points.${named[1]}.at`;
  const found = venue.survey.values.get(path) as Known<"length"> | undefined;
  if (!found)
    return missing("length", {
      path,
      file: venue.survey.file,
      what: "place of the point",
      of: held.label,
      place: named[0],
    });
  return found.origin.from === "written" ? { ...found, origin: { ...found.origin, stated: venue.at(path) } } : found;
}

/**
 * How far a place upstage is from below the structure of a bar: nothing between the ends of one that runs up and down
 * stage. Undefined where the structure's own place is not surveyed.
 */
export function offUpstage(bar: Bar, upstage: Value<"length">): Value<"length"> | undefined {
  const ends = overheadOf(bar)?.ends.map((end) => end.upstage);
  const [one, other] = ends ?? [];
  if (!one?.known || !other?.known) return undefined;
  if (!upstage.known) return missing("length", ...gapsOf([upstage]));
  const [near, far] = one.value <= other.value ? [one, other] : [other, one];
  if (upstage.value < near.value) return difference(near, upstage, "length", "off");
  return upstage.value > far.value
    ? difference(upstage, far, "length", "off")
    : counted(0, "below its structure", "length");
}

/** How much farther along the structure one place to the side is than another. */
const rightOf = (
  one: Value<"length">,
  other: Value<"length">,
  sense: Overhead["sense"],
  symbol: string,
): Value<"length"> => (sense < 0 ? difference(other, one, "length", symbol) : difference(one, other, "length", symbol));

/** A place on the bar as far to the right of one that is known as it is along the structure; nothing is less than nothing. */
function moved(
  on: Value<"length">,
  from: Value<"length">,
  to: Value<"length">,
  sense: Overhead["sense"],
): Value<"length"> {
  if (!from.known || !to.known) return missing("length", ...gapsOf([from, to]));
  const [near, far] = from.value <= to.value ? [from, to] : [to, from];
  const apart = difference(far, near, "length", "Δs");
  const isRight = near === from ? sense > 0 : sense < 0;
  return isRight ? sum([on, apart], "length", "a") : difference(on, apart, "length", "a");
}

/** A place of the bar that is known, and where that is along the structure. */
interface Reference {
  readonly on: Value<"length">;
  readonly along: Value<"length">;
  readonly by: "middle" | Hang;
}

const writtenAt = (hang: Hang): Known<"length"> | undefined =>
  hang.bar.build.reader.quantities.get(`${hang.path}.at`) as Known<"length"> | undefined;

/** Where the bar is under its structure: by its middle, else by the first hang that writes both its point and its place. */
function referenceOf(bar: Bar): Reference | undefined {
  const overhead = overheadOf(bar);
  if (!overhead || overhead.sense === 0) return undefined;
  const { reader } = bar.build;
  if (reader.has(`${bar.path}.middle.right`)) {
    const right = reader.value(`${bar.path}.middle.right`, "length", "place of the middle to the side", bar.label);
    const [one, other] = overhead.ends;
    const along = placeAlong.of({
      Δr: rightOf(right, one.right, overhead.sense, "Δr"),
      L: overhead.length,
      D: rightOf(other.right, one.right, overhead.sense, "D"),
    });
    return { on: times(bar.length, 0.5, "½"), along, by: "middle" };
  }
  for (const hang of bar.hangs) {
    const [on, along] = [writtenAt(hang), alongOf(hang)];
    if (on && along && pointOfHang(hang)?.[0] === overhead.name) return { on, along, by: hang };
  }
  return undefined;
}

/** Which end of the structure is nearer to a place, as the crow flies: 0 the first, which it is where that cannot be told. */
export function nearerEnd({ ends }: Overhead, place: SurveyedPlace): 0 | 1 {
  const [first, second] = ends.map((end) => between(place, end));
  return first?.known && second?.known && second.value < first.value ? 1 : 0;
}

/** Where places of a bar are along the structure above it; undefined where the bar's own place is not known. */
export function placeUnder(bar: Bar): { readonly along: (place: Value<"length">) => Value<"length"> } | undefined {
  const overhead = overheadOf(bar);
  const reference = once(bar, "place under the structure", () => referenceOf(bar));
  if (!overhead || !reference) return undefined;
  return { along: (place) => moved(reference.along, reference.on, place, overhead.sense) };
}

/** Length of the structure above a bar, and where the bar's left end is along it, both from the end at the audience's left. */
export function planPlaceOf(
  bar: Bar,
): { readonly structure: Value<"length">; readonly left: Value<"length"> } | undefined {
  const [overhead, under] = [overheadOf(bar), placeUnder(bar)];
  if (!overhead || !under) return undefined;
  const left = under.along(counted(0, "left end of the bar", "length"));
  return {
    structure: overhead.length,
    left: overhead.sense > 0 ? left : difference(overhead.length, left, "length", "left end"),
  };
}

/** Place of a hang on its bar as it follows from the point it names; undefined where the bar's own place is not known. */
export function placeByPoint(hang: Hang): Value<"length"> | undefined {
  const { bar } = hang;
  const [overhead, along] = [overheadOf(bar), alongOf(hang)];
  const reference = once(bar, "place under the structure", () => referenceOf(bar));
  if (!overhead || !along || !reference || reference.by === hang || pointOfHang(hang)?.[0] !== overhead.name)
    return undefined;
  return moved(reference.on, reference.along, along, overhead.sense);
}

/** Where the point of a leg is from over its hang, along the structure above the bar. */
export interface WayToPoint {
  readonly run: Value<"length">;
  /** To which side of its hang, as the audience sees it; undefined where it cannot be told, or it is right above. */
  readonly side: "left" | "right" | undefined;
}

/** How far the point of a leg is from over its hang, and to which side; undefined where either place is not known. */
export function wayToPoint(leg: Leg): WayToPoint | undefined {
  const { hang } = leg;
  const { reader } = hang.bar.build;
  const named = reader.venue && pointNamed(reader.venue.survey, reader.text(`${leg.path}.point`));
  const [along, under, overhead] = [alongOf(leg), placeUnder(hang.bar), overheadOf(hang.bar)];
  if (!named || !along || !under || named[0] !== overhead?.name) return undefined;
  const over = under.along(hang.at);
  if (!over.known || !along.known) return { run: missing("length", ...gapsOf([over, along])), side: undefined };
  const [near, far] = over.value <= along.value ? [over, along] : [along, over];
  const right = (along.value - over.value) * overhead.sense;
  return { run: difference(far, near, "length", "run"), side: right === 0 ? undefined : right > 0 ? "right" : "left" };
}
