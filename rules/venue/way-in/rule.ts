import { atMost, type Build, missing, open, type Part, type RawCheck, rule, type Value } from "@plumbmark/kit";

type Thing = { readonly path: string; readonly label: string };

const THING: Thing = { path: "venue", label: "The venue" };

/** A measure of a panel, from its data sheet. */
const measure = (part: Part, path: string, what: string): Value =>
  part.quantities.get(path) ??
  missing("length", {
    path: `${part.name}.${path.split(".")[0]}`,
    file: part.file,
    what,
    of: `The part ${part.name} (${part.file})`,
  });

/** Measures, the least first. Which are the least cannot be told while one is not known: then that stands for each. */
function inOrder(values: readonly Value[]): readonly Value[] {
  const known = values.filter((each) => each.known);
  const [unknown] = values.filter((each) => !each.known);
  return unknown ? values.map(() => unknown) : [...known].sort((one, other) => one.value - other.value);
}

const SIDES = ["its narrowest", "its next"] as const;

/** A panel goes through on its narrowest side, its longest first: the two lesser of its measures count. */
function* through(build: Build, part: Part, key: "door" | "lift.size", what: string): Iterable<RawCheck> {
  const panel = inOrder([
    measure(part, "size.1", "size"),
    measure(part, "size.2", "size"),
    measure(part, "depth", "depth"),
  ]);
  const way = inOrder([1, 2].map((half) => build.venue.wayIn(`${key}.${half}`, "length", `size of the ${what}`)));
  for (const [index, side] of SIDES.entries())
    yield atMost(THING, {
      measured: panel[index] as Value,
      allowed: way[index] as Value,
      says: (words) => `Panel ${part.name} is ${words.measured} on ${side} side; the ${what} has ${words.allowed}.`,
      mend: "Find another way in, or ask for panels of another size.",
    });
}

const heaviest = (build: Build): readonly { readonly name: string; readonly mass: Value<"mass"> }[] => [
  ...new Map(
    build.faces
      .flatMap(({ kinds }) => kinds)
      .flatMap(({ part }) => (part ? [part] : []))
      .map((part) => [
        part.name,
        {
          name: `Panel ${part.name}`,
          mass: (part.quantities.get("mass") ??
            missing("mass", {
              path: `${part.name}.mass`,
              file: part.file,
              what: "mass",
              of: part.name,
            })) as Value<"mass">,
        },
      ]),
  ).values(),
  ...build.bars.map((bar) => ({ name: bar.label, mass: bar.selfMass })),
];

export default rule({
  id: "venue.way-in",
  states: "What is carried into a surveyed venue goes through its door, and into its lift.",
  level: "should",
  why: "A case that does not go round the corner of the stairs is found out with the van in the street and doors in two hours.",
  judged:
    "In a venue that was surveyed, of every kind of panel the two lesser of width, height and depth against the door of `way-in`. Where the venue has stairs and a lift, the same against the size of the lift, and the mass of every panel and bar against what the lift carries. Cases come on top: how large they are is in no catalogue. A bar or truss that is longer than the lift goes by the stairs. Nothing written of the way in is open.",
  sources: ["geometry", "practice"],
  *checks({ build }) {
    const { venue } = build;
    if (!venue.survey || build.faces.length === 0) return;
    if (!venue.hasWayIn()) {
      yield open(THING, {
        says: `The survey ${venue.survey.name} does not say how things come in.`,
        mend: `Measure the narrowest door on the way, and write \`way-in: {door: ${build.practice === "us" ? "40 in x 80 in" : "1 m x 2 m"}, stairs: false}\` in ${venue.survey.file}.`,
        needs: ["way-in"],
      });
      return;
    }
    const parts = [...new Set(build.faces.flatMap(({ kinds }) => kinds).flatMap(({ part }) => part ?? []))];
    for (const part of parts) yield* through(build, part, "door", "door");
    if (venue.stairs === undefined)
      yield open(THING, {
        says: `The survey ${venue.survey.name} does not say whether stairs lead in.`,
        mend: `Write \`stairs: true\` or \`stairs: false\` under \`way-in\` in ${venue.survey.file}.`,
        needs: ["way-in.stairs"],
      });
    if (venue.stairs === false || !venue.hasWayIn("lift")) return;
    for (const part of parts) yield* through(build, part, "lift.size", "lift");
    for (const { name, mass } of heaviest(build))
      yield atMost(THING, {
        measured: mass,
        allowed: venue.wayIn("lift.carries", "mass", "what the lift carries"),
        says: ({ measured, allowed }) => `${name} has ${measured}; the lift carries ${allowed}.`,
        mend: "Carry it by the stairs with people enough, or take it apart.",
      });
  },
});
