import { atMost, open, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.lift",
  states: "No piece is heavier than the recommended weight limit for the people lifting it.",
  level: "should",
  why: "Backs give out on the twentieth tile of the night, lifted at arm's length from a platform.",
  judged:
    "Every kind of panel, every bar, the processor and what is written under `pieces`, against the recommended weight limit of the revised lifting equation, times the people; of the start and the end of the lift the lower limit. The frequency multiplier is that of the lifts a minute and the time written, read where the lift starts. One way of lifting counts for all pieces, and an even split between people is common practice.",
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
        mend: "Write the people, the heights, the reach, the turn, the grip, the rate and the time under `rigging.lifting`.",
        needs: ["rigging.lifting.people"],
      });
    else {
      const allowed = lifting.limitOf(people);
      // Without a limit every piece would be open for the same reason.
      const pieces = allowed.known
        ? lifting.pieces
        : [{ path: lifting.path, label: "The heaviest piece", mass: lifting.heaviest }];
      for (const { path, label, mass } of pieces)
        yield atMost(
          { path, label },
          {
            measured: mass,
            allowed,
            says: (words) =>
              `${label} is ${words.measured}; ${people} ${people === 1 ? "person" : "people"} should lift no more than ${words.allowed} this way.`,
            turns: { path: "rigging.lifting.people", sense: "at least" },
            mend: "Lift with more people, closer to the body, over a shorter height or less often, or use lifting gear.",
          },
        );
    }
  },
});
