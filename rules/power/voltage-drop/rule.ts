import { tabled } from "@plumbmark/calc";
import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "power.voltage-drop",
  states: "The last panel of a run loses no more than the share of the supply voltage that is set.",
  level: "should",
  why: "Panels at the end of a long run get the least voltage. Their supplies draw more current for it, and the margin for a low mains is used up.",
  judged:
    "Current of every segment times its loop resistance, summed over building wiring, feed and jumpers, divided by the supply voltage.",
  sources: ["nec-210.19a", "iec-60364-5-52-g"],
  settings: {
    branch: {
      us: 0.03,
      iec: 0.05,
      kind: "ratio",
      describe: "largest drop on the branch, as a share of the supply voltage",
    },
  },
  *checks({ build, settings }) {
    for (const run of build.runs)
      yield atMost(run, {
        measured: run.dropShare,
        allowed: tabled(settings.branch as number, "ratio", "house", "largest drop on the branch"),
        says: ({ measured, allowed }) =>
          `The last panel of run ${run.name} loses ${measured} of the supply voltage; ${allowed} is the most.`,
        mend: "Shorten the feed, take a larger conductor, or put fewer panels on the run.",
      });
  },
});
