import { greatestOf, leastOverturningFactor, printer, tabled } from "@plumbmark/calc";
import { atLeast, type Build, type RawCheck, rule } from "@plumbmark/kit";
import { pushOf, pushSettings } from "../notional-push.js";

type Stand = NonNullable<Build["faces"][number]["stand"]>;
type Push = Parameters<Stand["overturning"]>[0];

const EDGES = [
  { edge: "toe", where: "over its toe" },
  { edge: "behind", where: "over the edge behind" },
] as const;

/** How much ballast would do over both edges, where that can be told; never where ballast does not help over one. */
function ballast(stand: Stand, push: Push, factor: number, build: Build): string {
  const needed = greatestOf(
    EDGES.map(({ edge }) => stand.ballastFor(push, factor, edge)),
    "mass",
  );
  if (!needed.known) return "";
  const print = printer(build.practice === "us" ? "us" : "metric");
  return ` Where the ballast lies now, ${print(needed.value, needed.kind)} in all would do against this push, over the toe and over the edge behind.`;
}

function* ofStand(stand: Stand, label: string, push: Push, factor: number, build: Build): Iterable<RawCheck> {
  for (const { edge, where } of EDGES)
    yield atLeast(stand, {
      measured: stand.factor(push, edge),
      allowed: tabled(factor, "factor", "overturning-1.5", "factor against overturning"),
      says: ({ measured, allowed }) =>
        `${label}, pushed ${where}, resists the push ${measured} times; ${allowed} times is the least.`,
      turns: { path: `${stand.path}.ballast`, sense: "at least" },
      mend: `Put on more ballast, set it farther from that edge, deepen the base, or have an engineer fix the face to the structure.${ballast(stand, push, factor, build)}`,
    });
}

export default rule({
  id: "rigging.stack-stability",
  states: "A standing face resists the notional push, from the front and from behind, with the required factor.",
  level: "shall",
  why: "A wall of tiles is tall, thin and heavy. Somebody leans on it, a door blows open, and it falls on whoever stands before it, or behind it.",
  judged:
    "The factor is M_r ÷ M_o, about each edge of the base: the toe, which is its edge on the audience's side, and the one behind. M_r = (m × x + m_s × x_s + m_b × x_b) × g, of the panels and what they carry (m), the base itself (m_s) at half its depth, and the ballast (m_b). `toe` and `ballast-arm` are written as distances from the toe, back into the base; from the edge behind they are the depth of the base less that. M_o is the moment about the floor of a horizontal push on the whole width of the face, from the floor up to its top: `height-above` is the height of the lower edge of the face above the floor the base stands on, and what is open below it counts as face, the safe side. What the face is tied to is not counted, and whether it slides is not judged. The push follows the setting; the factor of 1.5 is a house setting, for which no clause of a standard is at hand.",
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
