import { missing, sum, type Value } from "@plumbmark/calc";
import { surveyData } from "../../venue/survey.js";
import { surveyValue } from "../../venue/ways.js";
import type { Design } from "../design.js";
import { asMass } from "../reading/as-mass.js";
import type { Bar } from "../rigging/bar.js";
import type { Hang } from "../rigging/hang.js";
import type { OwnUse } from "./use.js";

/** The point of the venue a hang is at: `front-beam.F1`; undefined where the document names none. */
const pointNamed = ({ bar, path }: Hang): string | undefined => bar.build.reader.text(`${path}.point`);

/** The structure a point is of, or a bar is under. */
const structureOf = (point: string): string => point.split(".")[0] as string;

const under = ({ build, path }: Bar): string | undefined => build.reader.text(`${path}.under`);

/** What the structure bears at its points, at worst, by the point. */
export const pointUses = ({ bars }: Design, venue: string): readonly OwnUse[] =>
  bars
    .flatMap(({ hangs }) => hangs)
    .flatMap((hang) => {
      const name = pointNamed(hang);
      if (name === undefined) return [];
      const amounts = { W: hang.onStructure(hang.worst.reaction) };
      return [
        {
          ...{ of: "point" as const, name, venue, path: hang.path, label: `Point ${name}`, unit: "kg" },
          amounts,
          allowed: hang.structure,
        },
      ];
    });

/** What of a bar hangs from a structure: all of it, or what its hangs there bear. */
function loadOn(bar: Bar, structure: string): Value<"mass"> {
  const there = bar.hangs.filter((hang) => structureOf(pointNamed(hang) ?? `${under(bar)}.`) === structure);
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
    ...bar.hangs.flatMap((hang) => pointNamed(hang) ?? []).map(structureOf),
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
