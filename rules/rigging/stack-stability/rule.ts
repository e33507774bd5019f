import { tabled } from "@plumbmark/calc";
import { atLeast, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.stack-stability",
  states: "A standing face resists the notional push with the required factor.",
  level: "shall",
  why: "A wall of tiles is tall, thin and heavy. Somebody leans on it, a door blows open, and it falls on whoever stands before it.",
  judged:
    "The moment of panels, base and ballast about the toe against the moment of a horizontal push on the whole face from the floor up; half the push above 4 m. What the face is tied to is not counted.",
  sources: ["messe-stand-building", "ibc-1607.13", "overturning-1.5"],
  settings: {
    push: {
      us: 239.4,
      iec: 125,
      stricter: "more",
      describe: "notional push in pascals up to 4 m (5 lb/ft² is 239.4 Pa)",
    },
    factor: { us: 1.5, iec: 1.5, stricter: "more", describe: "least factor against overturning" },
  },
  *checks({ build, settings }) {
    const push = Number(settings.push);
    for (const { stand, label } of build.faces)
      if (stand)
        yield atLeast(stand, {
          measured: stand.factor(push, push * 0.504),
          allowed: tabled(Number(settings.factor), "factor", "overturning-1.5", "factor against overturning"),
          says: ({ measured, allowed }) =>
            `${label} resists the push ${measured} times; ${allowed} times is the least.`,
          mend: "Put on more ballast, set it farther from the toe, deepen the base, or have an engineer fix the face to the structure.",
        });
  },
});
