import { atMost, type Build, is, type RawCheck, rule } from "@plumbmark/kit";

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

export default rule({
  id: "venue.agrees",
  states: "A build says nothing of its venue that the survey of the venue contradicts.",
  level: "shall",
  why: "A build that retypes the hall keeps what was typed. When the hall is rewired or an engineer lowers a rating, every document that still has the old figure is built by it.",
  judged:
    "Of a build whose `venue` is the name of a survey: whatever it writes that the survey also states. Two quantities are the same when they differ by no more than half a unit of the last digit of the one that is written more coarsely, whatever their units; `at most` and `at least` agree with what lies within them; a guess contradicts nothing. Texts are compared as they read, lists as a whole. A hang that names a point and also writes its place on the bar: its distance along the bar from the first such hang, or from the bar's `middle`, against that of the points, within `place`. What is judged elsewhere uses the survey's value.",
  sources: ["house"],
  settings: {
    place: {
      us: 0.0254,
      iec: 0.025,
      kind: "length",
      stricter: "less",
      describe: "how far a hang may be from its point",
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
    if (venue.contradictions.length === 0)
      yield is(venue, { holds: true, says: `What is written of the venue agrees with the survey ${survey.name}.` });
  },
});
