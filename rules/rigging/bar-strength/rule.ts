import { atMost, rule } from "@plumbmark/kit";
import { otherLoadTurns } from "../other-load.js";

export default rule({
  id: "rigging.bar-strength",
  states: "Bending in the bar stays inside the allowable.",
  level: "shall",
  why: "A pipe that bends past its yield stays bent, and a bent pipe lets its collars slide.",
  judged:
    "The greatest bending moment of the bar under everything that hangs on it (rigging.suspended-weight says what, and where it acts) against what its section may carry: yield × plastic modulus ÷ 1.67 for pipe (ANSI/AISC 360-22, F8), ÷ 1.65 for scaffold tube (TG20:13, 5.6), or the moment its maker states. With three or more hangs the worst counts: level on all of them, and with each one slack in turn. With an inner hang slack the two spans beside it are one; with an end hang slack the bar overhangs its neighbour and is bent over it. Of a bar that then tips, or is balanced on one hang, rigging.slack-hang tells.",
  sources: ["aisc-360-f8", "tg20-5.6", "part"],
  *checks({ build }) {
    for (const bar of build.bars) {
      const { moment, when } = bar.worstMoment;
      yield atMost(bar, {
        measured: moment,
        allowed: bar.section.allowable,
        sources: [bar.section.allowableSource],
        says: ({ measured, allowed }) =>
          `${bar.label} is bent with ${measured}${when}; its section may carry ${allowed}.`,
        turns: otherLoadTurns(bar),
        mend: "Add a hang, bring the hangs closer together, or take a stronger section.",
      });
    }
  },
});
