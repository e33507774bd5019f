import { atMost, open, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.lift",
  states: "No piece is heavier than the recommended weight limit for the people lifting it.",
  level: "should",
  why: "Backs give out on the twentieth tile of the night, lifted at arm's length from a platform.",
  judged:
    "The heaviest panel against the recommended weight limit of the revised lifting equation, times the people; of the start and the end of the lift the lower limit. Lifts are taken as one in five minutes for up to an hour; an even split between people is common practice.",
  sources: ["niosh-94-110", "practice"],
  settings: {
    people: {
      us: 0,
      iec: 0,
      stricter: "less",
      describe: "people taken to lift a piece when the document does not say; 0 leaves it open",
    },
  },
  *checks({ build, settings }) {
    if (build.faces.length === 0) return;
    const { lifting } = build;
    const people = lifting.people ?? Number(settings.people);
    if (people < 1)
      yield open(lifting, {
        says: "How many people lift a piece is not written down.",
        mend: "Write the people, the heights, the reach, the turn and the grip under `rigging.lifting`.",
        needs: ["rigging.lifting.people"],
      });
    else
      yield atMost(lifting, {
        measured: lifting.heaviest,
        allowed: lifting.limitOf(people),
        says: ({ measured, allowed }) =>
          `The heaviest piece is ${measured}; ${people} ${people === 1 ? "person" : "people"} should lift no more than ${allowed} this way.`,
        mend: "Lift with more people, closer to the body or over a shorter height, or use lifting gear.",
      });
  },
});
