import { missing, sum, type Value } from "@plumbmark/calc";
import { surveyData } from "../../venue/survey.js";
import { surveyValue } from "../../venue/ways.js";
import type { Design } from "../design.js";
import { asMass } from "../reading/as-mass.js";
import type { Bar } from "../rigging/bar.js";
import type { Hang } from "../rigging/hang.js";
import type { OwnUse } from "./use.js";

/** Something of the document that is held at a point of the venue. */
interface Held {
  /** `front-beam.F1`. */
  readonly point: string;
  readonly path: string;
  /** What the structure bears there, at worst. */
  readonly bears: () => Value<"mass">;
  readonly allowed: () => Value<"mass">;
}

/** The points a hang is held at: its own, and those of the legs of its bridle; none where the document names none. */
function heldAt(hang: Hang): readonly Held[] {
  const { reader } = hang.bar.build;
  const own = {
    path: hang.path,
    bears: () => hang.onStructure(hang.worst.reaction),
    allowed: () => hang.structure,
  };
  const legs = hang.legs.map((leg) => ({
    path: leg.path,
    bears: () => leg.onStructure(leg.tension(hang.worst.reaction)),
    allowed: () => leg.structure,
  }));
  const named = [own, ...legs].flatMap((each) => {
    const point = reader.text(`${each.path}.point`);
    return point === undefined ? [] : [{ ...each, point }];
  });
  // Where both legs name their points, the point of the hang only says where it is: nothing is held there.
  const isAtItsLegs = named.filter(({ path }) => path !== hang.path).length > 1;
  return isAtItsLegs ? named.filter(({ path }) => path !== hang.path) : named;
}

/** The structure a point is of, or a bar is under. */
const structureOf = (point: string): string => point.split(".")[0] as string;

const under = ({ build, path }: Bar): string | undefined => build.reader.text(`${path}.under`);

/** What the structure bears at its points, at worst, by the point. */
export const pointUses = ({ bars }: Design, venue: string): readonly OwnUse[] =>
  bars
    .flatMap(({ hangs }) => hangs)
    .flatMap(heldAt)
    .map(({ point: name, path, bears, allowed }) => ({
      ...{ of: "point" as const, name, venue, path, label: `Point ${name}`, unit: "kg" },
      amounts: { W: bears() },
      allowed: allowed(),
    }));

/** The structures a hang is held by: those of its points, else the one its bar is under. */
const structuresOf = (hang: Hang): readonly string[] => {
  const points = heldAt(hang).map(({ point }) => structureOf(point));
  return points.length > 0 ? points : [under(hang.bar) ?? ""];
};

/**
 * What of a bar hangs from a structure: all of it, or what its hangs there bear. A bridle between two structures counts
 * whole on both: the safe side.
 */
function loadOn(bar: Bar, structure: string): Value<"mass"> {
  const there = bar.hangs.filter((hang) => structuresOf(hang).includes(structure));
  if (there.length === bar.hangs.length) return bar.onStructure;
  return sum(
    there.map((hang) => hang.onStructure(hang.level)),
    "mass",
    "W",
  );
}

const WHOLE = "load the structure is stated to carry in all";

/** What the survey has the structure carry in all; undefined where the venue was not surveyed, or not this structure. */
function wholeRating({ build }: Bar, structure: string): Value<"mass"> | undefined {
  const survey = build.reader.venue?.survey;
  if (!survey || surveyData(survey, "structure", structure) === undefined) return undefined;
  return asMass(surveyValue(survey, `structure.${structure}.structure`, "mass", WHOLE));
}

/** What a structure bears in all, and what it may: as the document has it. */
export function structureUses({ bars }: Design, venue: string): readonly OwnUse[] {
  const named = (bar: Bar): readonly string[] => [
    ...bar.hangs.flatMap(heldAt).map(({ point }) => structureOf(point)),
    ...[under(bar)].filter((each) => each !== undefined),
  ];
  return [...new Set(bars.flatMap(named))].map((name) => {
    const own = bars.filter((bar) => named(bar).includes(name));
    const [first] = own as [Bar];
    const path = `${first.path}.structure`;
    const label = `Structure ${name}`;
    const stated = own
      .map((bar) =>
        bar.build.reader.optional(`${bar.path}.structure`, "mass", "load the structure is stated to carry", bar.label),
      )
      .find((each) => each !== undefined);
    return {
      ...{ of: "structure" as const, name, venue, path: first.path, label, unit: "kg" },
      amounts: {
        W: sum(
          own.map((bar) => loadOn(bar, name)),
          "mass",
          "W",
        ),
      },
      allowed:
        wholeRating(first, name) ?? (stated ? asMass(stated) : missing("mass", { path, what: WHOLE, of: label })),
    };
  });
}
