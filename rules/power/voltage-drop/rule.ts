import { tabled } from "@plumbmark/calc";
import { atMost, rule } from "@plumbmark/kit";

const MEND = "Shorten the feed, take a larger conductor, or put fewer panels on the run.";

export default rule({
  id: "power.voltage-drop",
  states:
    "The last panel of a run loses no more than the branch share of the supply voltage, and no more than the total with the feeder.",
  level: "should",
  why: "Panels at the end of a long run get the least voltage. Their supplies draw more current for it, and the margin for a low mains is used up.",
  judged:
    "Current of every segment times its loop resistance, summed over building wiring, feed and jumpers, divided by the supply voltage; and the same with the drop of the feeder before the breaker, as it is written under `wiring.feeder-drop`. Only whoever runs the building's wiring knows that one.",
  sources: ["nec-210.19a", "iec-60364-5-52-g"],
  settings: {
    branch: {
      us: 0.03,
      iec: 0.05,
      kind: "ratio",
      stricter: "less",
      describe: "largest drop on the branch, as a share of the supply voltage",
    },
    total: { us: 0.05, iec: 0.05, kind: "ratio", describe: "largest drop in all, from the origin of the supply" },
  },
  *checks({ build, settings }) {
    for (const run of build.runs) {
      yield atMost(run, {
        measured: run.dropShare,
        allowed: tabled(settings.branch as number, "ratio", "house", "largest drop on the branch"),
        says: ({ measured, allowed }) =>
          `The last panel of run ${run.name} loses ${measured} of the supply voltage; ${allowed} is the most.`,
        mend: MEND,
      });
      yield atMost(run, {
        measured: run.shareInAll,
        allowed: tabled(settings.total as number, "ratio", "house", "largest drop in all"),
        says: ({ measured, allowed }) =>
          `With the feeder, the last panel of run ${run.name} loses ${measured} of the supply voltage; ${allowed} is the most in all.`,
        mend: MEND,
      });
    }
  },
});
