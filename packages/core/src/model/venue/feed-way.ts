import {
  counted,
  difference,
  gapsOf,
  type Known,
  missing,
  straightLine,
  sum,
  times,
  type Value,
} from "@plumbmark/calc";
import { placeName } from "../../document/place-name.js";
import { pointOf, type SurveyedPlace, wayBetween } from "../../venue/ways.js";
import type { Panel } from "../faces/panels.js";
import type { Bar } from "../rigging/bar.js";
import type { CarriedFace } from "../rigging/bar-loads.js";
import { nearerEnd, overheadOf, placeUnder } from "../rigging/bar-place.js";
import type { RiggingDesign } from "../rigging/rigging-design.js";
import type { FeedWay } from "./needed.js";

/** The bar that carries a panel, and what it carries there. */
function holderOf(design: RiggingDesign, { face, cell }: Panel): readonly [Bar, CarriedFace] | undefined {
  for (const bar of design.bars)
    for (const carried of bar.carries)
      if (carried.face === face && carried.columns.includes(cell.column)) return [bar, carried];
  return undefined;
}

/** Place on the bar of the middle of a panel's column. */
const placeOfPanel = ({ face, from, columns }: CarriedFace, { cell }: Panel): Value<"length"> =>
  sum([from, times(face.panelWidth, columns.indexOf(cell.column) + 0.5, "columns to its middle")], "length", "x");

/** Straight from a place to a panel under a structure: no cable is shorter. */
function straightTo(from: SurveyedPlace, bar: Bar, along: Value<"length">): Value<"length"> {
  const overhead = overheadOf(bar);
  const [one, other] = overhead?.ends ?? [];
  const { drop } = bar;
  const known = [one?.right, one?.upstage, one?.up, other?.right, other?.upstage, overhead?.length, along, drop];
  if (!one || !other || !overhead)
    return missing("length", { path: `${bar.path}.under`, what: "structure", of: bar.label });
  const gaps = gapsOf(known.filter((each) => each !== undefined));
  const all = [from.right, from.upstage, from.up];
  if (gaps.length > 0 || all.some((each) => !each.known)) return missing("length", ...gaps, ...gapsOf(all));
  const at = (value: Value<"length"> | undefined): number => (value as Known).value;
  const share = at(along) / at(overhead.length);
  const apart = (start: Value<"length">, end: number): Known<"length"> =>
    counted(Math.abs(end - at(start)), "distance to where the bar hangs", "length");
  return straightLine.of({
    Δr: apart(from.right, at(one.right) + share * (at(other.right) - at(one.right))),
    Δs: apart(from.upstage, at(one.upstage) + share * (at(other.upstage) - at(one.upstage))),
    Δh: apart(from.up, at(one.up) - at(drop)),
  });
}

/** To a panel under a structure: the way to its nearer end, along it to the bar's end, down, and along the bar. */
function wayToBar(from: string, bar: Bar, carried: CarriedFace, panel: Panel): FeedWay | undefined {
  const [overhead, survey] = [overheadOf(bar), bar.build.reader.venue?.survey];
  if (!overhead || !survey) return undefined;
  const way = wayBetween(survey, from, overhead.name);
  const to = `${overhead.name}, to ${panel.name}`;
  const under = placeUnder(bar);
  if (!under)
    return {
      ...{ how: way.how, from, to },
      length: missing("length", {
        path: `${bar.path}.middle.right`,
        what: "place of the middle of the bar",
        of: bar.label,
      }),
    };
  const start = pointOf(survey, from);
  const x = placeOfPanel(carried, panel);
  if (way.how === "straight") {
    const length = start ? straightTo(start, bar, under.along(x)) : way.length;
    return { how: "straight", from, to, length };
  }
  const end = start ? nearerEnd(overhead, start) : 0;
  // The end of the bar that is met first, and from there along the bar.
  const isLeftFirst = (end === 0) === overhead.sense > 0;
  const met = under.along(isLeftFirst ? counted(0, "left end of the bar", "length") : bar.length);
  const along = end === 0 ? met : difference(overhead.length, met, "length", "along");
  const onBar = isLeftFirst ? x : difference(bar.length, x, "length", "along the bar");
  return { how: way.how, from, to, length: sum([way.length, along, bar.drop, onBar], "length", "L") };
}

/**
 * The way from a place of the venue to a panel of a build; undefined where the venue was not surveyed. Missing, with what
 * has to be written, where either end cannot be told.
 * @param from a place of the survey; undefined where it is not written
 * @param gap what is missing then
 */
export function feedWay(
  design: RiggingDesign,
  from: string | undefined,
  gap: { readonly path: string; readonly what: string; readonly of: string },
  panel: Panel | undefined,
): FeedWay | undefined {
  const survey = design.reader.venue?.survey;
  if (!survey || !panel) return undefined;
  const { face } = panel;
  const unknown = (path: string, what: string, of: string): FeedWay => ({
    ...{ how: "straight", from: from ?? "", to: panel.name },
    length: missing("length", design.reader.gap(path, what, of)),
  });
  if (from === undefined) return unknown(gap.path, gap.what, gap.of);
  const start = placeName(from);
  const place = design.reader.text(`${face.path}.place`);
  if (place !== undefined) return { ...wayBetween(survey, start, place), from: start, to: place };
  const held = holderOf(design, panel);
  if (!held) return unknown(`${face.path}.place`, "place of the venue it stands at", face.label);
  const found = wayToBar(start, ...held, panel);
  return found ?? unknown(`${held[0].path}.under`, "structure of the venue it hangs under", held[0].label);
}
