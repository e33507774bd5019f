import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "power.run-current",
  states: "No connector or cable of a run carries more than its rating.",
  level: "shall",
  why: "The first connector of a run carries every panel behind it. Overloaded contacts heat up where nobody sees them.",
  judged:
    "The current of all panels of the run against the rating of the feed's cord and connectors and of the first panel's inlet; the current of all but the first panel against the jumper, the outlet of the panel, and what the panel passes on. Connectors count in the practice of the build.",
  sources: ["part"],
  *checks({ build }) {
    for (const run of build.runs)
      for (const { what, rating, current } of run.ratings)
        yield atMost(run, {
          measured: current,
          allowed: rating,
          says: ({ measured, allowed }) =>
            `${run.label} passes ${measured} through the ${what}, which is rated ${allowed}.`,
          mend: "Split the run in two, or take a feed with connectors of a higher rating.",
        });
  },
});
