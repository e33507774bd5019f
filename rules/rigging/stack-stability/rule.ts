import { type Known, leastOverturningFactor, printer, tabled } from "@plumbmark/calc";
import { atLeast, type Build, type RawCheck, rule } from "@plumbmark/kit";
import { pushOf, pushSettings } from "../notional-push.js";

type Stand = NonNullable<Build["faces"][number]["stand"]>;
type Push = Parameters<Stand["overturning"]>[0];

const EDGES = [
  { edge: "toe", where: "over its toe" },
  { edge: "behind", where: "over the edge behind" },
] as const;

/** How much ballast would do, where that can be told; never where ballast over this edge does not help. */
function ballast(stand: Stand, push: Push, factor: number, edge: "toe" | "behind", build: Build): string {
  const needed = stand.ballastFor(push, factor, edge);
  if (!needed.known) return "";
  const print = printer(build.practice === "us" ? "us" : "metric");
  const shown = ({ value, kind }: Known): string => print(value, kind);
  return ` Where the ballast lies now, ${shown(needed)} would do against this push.`;
}

function* ofStand(stand: Stand, label: string, push: Push, factor: number, build: Build): Iterable<RawCheck> {
  for (const { edge, where } of EDGES)
    yield atLeast(stand, {
      measured: stand.factor(push, edge),
      allowed: tabled(factor, "factor", "overturning-1.5", "factor against overturning"),
      says: ({ measured, allowed }) =>
        `${label}, pushed ${where}, resists the push ${measured} times; ${allowed} times is the least.`,
      mend: `Put on more ballast, set it farther from that edge, deepen the base, or have an engineer fix the face to the structure.${ballast(stand, push, factor, edge, build)}`,
    });
}

export default rule({
  id: "rigging.stack-stability",
  states: "A standing face resists the notional push, from the front and from behind, with the required factor.",
  level: "shall",
  why: "A wall of tiles is tall, thin and heavy. Somebody leans on it, a door blows open, and it falls on whoever stands before it, or behind it.",
  judged:
    "The moment of panels, base and ballast about each edge of the base, the toe and the one behind, against the moment of a horizontal push on the whole face from the floor up. Half the depth of the base counts for the base itself; panels and ballast count where they are written. What the face is tied to is not counted, and whether it slides is not judged.",
  sources: ["messe-stand-building", "ibc-1607.13", "overturning-1.5"],
  settings: {
    ...pushSettings,
    factor: {
      us: leastOverturningFactor,
      iec: leastOverturningFactor,
      stricter: "more",
      describe: "least factor against overturning",
    },
  },
  *checks({ build, settings }) {
    const push = pushOf(settings);
    for (const { stand, label } of build.faces)
      if (stand) yield* ofStand(stand, label, push, Number(settings.factor), build);
  },
});
