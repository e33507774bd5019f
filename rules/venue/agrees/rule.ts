import { atMost, type Build, is, type RawCheck, rule, type Value } from "@plumbmark/kit";

type Venue = Build["venue"];

const shown = (data: unknown): string => `\`${typeof data === "string" ? data : JSON.stringify(data)}\``;

function* contradicted(venue: Venue, file: string): Iterable<RawCheck> {
  for (const { path, stated, own, says } of venue.contradictions) {
    const there = venue.at(stated);
    yield is(
      { path, label: venue.label },
      {
        holds: false,
        says: `\`${path}\` is ${shown(own)} in ${file}, and ${there?.by ?? "the survey"} says ${shown(says)} (${there?.file}, line ${there?.line}, \`${stated}\`).`,
        mend: "Take it out of the document: the survey's value counts. If the survey is wrong, have the venue surveyed again.",
      },
    );
  }
}

/** A bar hangs plumb below its structure, and a face is on its bar: it is no farther upstage or downstage than that. */
function* belowStructure(build: Build, most: Value<"length">): Iterable<RawCheck> {
  for (const bar of build.bars)
    for (const { face } of bar.carries) {
      const off = face.upstage && bar.offUpstage(face.upstage);
      if (!off?.known) continue;
      yield atMost(
        { path: `${face.path}.upstage`, label: face.label },
        {
          measured: off,
          allowed: most,
          says: ({ measured, allowed }) =>
            `${face.label} is written ${measured} upstage or downstage of ${bar.under}, which its bar ${bar.name} hangs below; ${allowed} is allowed.`,
          mend: "Correct where the face is, or the structure the bar hangs from. A bar that is pulled aside loads its points and its hardware at an angle nobody has stated.",
        },
      );
    }
}

export default rule({
  id: "venue.agrees",
  states: "A build says nothing of its venue that the survey of the venue contradicts.",
  level: "shall",
  why: "A build that retypes the hall keeps what was typed. When the hall is rewired or an engineer lowers a rating, every document that still has the old figure is built by it.",
  judged:
    "Of a build whose `venue` is the name of a survey: whatever it writes that the survey also states. Two quantities are the same when they differ by no more than half a unit of the last digit of the one that is written more coarsely, whatever their units; `at most` and `at least` agree with what lies within them; a guess contradicts nothing. Texts are compared as they read, lists as a whole. A hang that names a point and also writes its place on the bar: its distance along the bar from the first such hang, or from the bar's `middle`, against that of the points, within `place`. A face that hangs: how far upstage it is against the structure its bar is below, within `aside`, which leaves room for its depth and for where its bar is hooked. What is judged elsewhere uses the survey's value.",
  sources: ["house"],
  settings: {
    place: {
      us: 0.0254,
      iec: 0.025,
      kind: "length",
      stricter: "less",
      describe: "how far a hang may be from its point",
    },
    aside: {
      us: 0.3048,
      iec: 0.3,
      kind: "length",
      stricter: "less",
      describe: "how far upstage or downstage of its structure a face may be written",
    },
  },
  *checks({ build, limits }) {
    const { venue } = build;
    const { survey } = venue;
    if (!survey) return;
    yield* contradicted(venue, build.context.file);
    for (const hang of build.bars.flatMap(({ hangs }) => hangs)) {
      const { fromPoint, point } = hang;
      if (!fromPoint || !point) continue;
      yield atMost(
        { path: `${hang.path}.at`, label: hang.label },
        {
          measured: fromPoint,
          allowed: limits.place,
          says: ({ measured, allowed }) =>
            `${hang.label} is written ${measured} from where the point ${point.structure}.${point.point} is by the survey; ${allowed} is allowed.`,
          mend: "Measure again, or leave the place of the hang out: it follows from the point.",
        },
      );
    }
    yield* belowStructure(build, limits.aside as Value<"length">);
    if (venue.contradictions.length === 0)
      yield is(venue, { holds: true, says: `What is written of the venue agrees with the survey ${survey.name}.` });
  },
});
