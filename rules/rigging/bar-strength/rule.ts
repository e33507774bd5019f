import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.bar-strength",
  states: "Bending in the bar stays inside the allowable.",
  level: "shall",
  why: "A pipe that bends past its yield stays bent, and a bent pipe lets its collars slide.",
  judged:
    "The greatest bending moment of the bar against yield times plastic modulus divided by the safety factor, or against what its maker states. With three or more hangs the worst counts: level on all of them, and with any one slack, for then its two neighbours' spans are one. Of a bar that tips with a hang slack rigging.slack-hang tells.",
  sources: ["aisc-360-f8", "tg20-5.6"],
  *checks({ build }) {
    for (const bar of build.bars) {
      const { moment, slackened } = bar.worstMoment;
      const when = slackened ? ` with ${slackened.name} slack` : "";
      yield atMost(bar, {
        measured: moment,
        allowed: bar.section.allowable,
        says: ({ measured, allowed }) =>
          `${bar.label} is bent with ${measured}${when}; its section may carry ${allowed}.`,
        mend: "Add a hang, bring the hangs closer together, or take a stronger section.",
      });
    }
  },
});
