import { tabled } from "@plumbmark/calc";
import { atLeast, atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.bridle-angle",
  states: "Bridle legs are no flatter than the angle that is set, and each leg is inside its rating.",
  level: "shall",
  why: "The flatter a leg, the more it carries: at 30° from horizontal each of two like legs carries the whole load, and below that the tension runs away.",
  judged:
    "Angle of every leg from its rise and run, and its tension under the reaction of the hang, T1 = W × L1 × H2 ÷ (V1 × H2 + V2 × H1) with rise V, run H and length L of the legs, held against the least WLL of its assembly and, with the mass of the assembly, the structure rating. What joins the legs at the apex, the hang's own `assembly`, carries the whole reaction and is held against its least WLL; a bridle whose apex is not written down is open. The reaction is the worst, with any one other hang slack, where there are three hangs or more; what hangs on the bar and where is said under rigging.suspended-weight. An anchor is pulled sideways, too: the structure rating of a leg has to be stated in the direction of the leg. ASME B30.9 lets a sling's maker or a qualified person allow flatter legs; here that is a waiver, signed by whoever allows it.",
  sources: ["asme-b30.9", "hall-bridles"],
  settings: {
    least: { us: 30, iec: 30, kind: "angle", stricter: "more", describe: "least angle of a leg from horizontal" },
  },
  *checks({ build, settings }) {
    const least = settings.least as number;
    const source = least === 30 ? "asme-b30.9" : "house";
    const hangs = build.bars.flatMap((bar) => bar.hangs);
    for (const hang of hangs)
      if (hang.bridled)
        yield atMost(hang, {
          measured: hang.worst.reaction,
          allowed: hang.weakest,
          says: (words) =>
            `${hang.label}: the apex of its bridle carries ${words.measured}${hang.worst.when}; its weakest part is rated ${words.allowed}.`,
          mend: "Take hardware of a higher WLL where the legs meet, or take load off the hang.",
        });
    for (const leg of hangs.flatMap((hang) => hang.legs)) {
      yield atLeast(leg, {
        measured: leg.angle,
        allowed: tabled(least, "angle", source, "least angle from horizontal"),
        sources: [source],
        says: ({ measured, allowed }) => `${leg.label} stands at ${measured} from horizontal; ${allowed} is the least.`,
        turns: { path: `${leg.path}.rise`, sense: "at least" },
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
