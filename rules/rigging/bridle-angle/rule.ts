import { tabled } from "@plumbmark/calc";
import { atLeast, atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.bridle-angle",
  states: "Bridle legs are no flatter than the angle that is set, and each leg is inside its rating.",
  level: "shall",
  why: "The flatter a leg, the more it carries: at 30° from horizontal each of two legs carries the whole load, and below that the tension runs away.",
  judged:
    "Angle of every leg from its rise and run, and its tension under the reaction of the hang, held against the least WLL of its assembly and, with the mass of the assembly, the structure rating. The reaction is the worst, with any one other hang slack, where there are three hangs or more. An anchor is pulled sideways, too: the structure rating of a leg has to be stated in the direction of the leg.",
  sources: ["asme-b30.9", "hall-bridles"],
  settings: {
    least: { us: 30, iec: 30, kind: "angle", stricter: "more", describe: "least angle of a leg from horizontal" },
  },
  *checks({ build, settings }) {
    const least = settings.least as number;
    for (const leg of build.bars.flatMap((bar) => bar.hangs).flatMap((hang) => hang.legs)) {
      yield atLeast(leg, {
        measured: leg.angle,
        allowed: tabled(least, "angle", least === 30 ? "asme-b30.9" : "house", "least angle from horizontal"),
        says: ({ measured, allowed }) => `${leg.label} stands at ${measured} from horizontal; ${allowed} is the least.`,
        mend: "Raise the anchors over the apex, or bring them closer together.",
      });
      for (const { what, allowed, of } of leg.ratings)
        yield atMost(leg, {
          measured: of(leg.tension(leg.hang.worst.reaction)),
          allowed,
          says: (words) =>
            `${leg.label} is pulled with ${words.measured}${leg.hang.worst.when}; its ${what} is rated ${words.allowed}.`,
          mend: "Make the legs steeper, take load off the hang, or take hardware of a higher WLL. A qualified rigger works out the bridle.",
        });
    }
  },
});
