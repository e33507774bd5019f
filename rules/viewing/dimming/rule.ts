import { missing, tabled, times } from "@plumbmark/calc";
import { atLeast, atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "viewing.dimming",
  states: "The panel is not so bright that most of its grey steps are lost at the target.",
  level: "note",
  why: "A panel that is far too bright for the room is turned down in the picture. Each halving takes one bit, and dark shades break up into bands.",
  judged:
    "The target luminance divided by the panel's gives the drive level; of the grey steps of the picture's depth that share is left when the picture is scaled. A panel that dims by its current keeps them all. A target above the panel's luminance cannot be met.",
  sources: ["arithmetic", "practice"],
  settings: {
    share: {
      us: 0.5,
      iec: 0.5,
      kind: "ratio",
      stricter: "more",
      describe: "least share of the grey steps that has to be left",
    },
  },
  *checks({ build, settings }) {
    for (const dimming of build.dimming) {
      const { target, luminance, drive, face } = dimming;
      if (!drive.known || drive.value > 1) {
        yield atMost(dimming, {
          measured: target,
          allowed: luminance,
          says: ({ measured, allowed }) =>
            `The target for face ${face.name} is ${measured}; its panel reaches ${allowed}.`,
          turns: { path: "light.target", sense: "at most" },
          mend: "Lower the target, keep light off the face, or take a brighter panel.",
        });
        continue;
      }
      const { depth } = build.picture;
      const all = depth.known
        ? tabled(2 ** depth.value, "count", "arithmetic", `grey steps of ${depth.value} bit`)
        : missing("count", ...depth.gaps);
      yield atLeast(dimming, {
        measured: dimming.steps,
        allowed: times(all, settings.share as number),
        says: ({ measured, allowed }) =>
          `Face ${face.name} keeps ${measured} grey steps at the target; ${allowed} are the least.`,
        turns: { path: "light.target", sense: "at least" },
        mend: "Take a panel that is less bright, dim it by its current, or send a deeper picture.",
      });
    }
  },
});
