import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "power.run-current",
  states: "No connector or cable of a run carries more than its rating.",
  level: "shall",
  why: "The first connector of a run carries every panel behind it. Overloaded contacts heat up where nobody sees them.",
  judged: "The current of all panels of the run against the rated current of the feed's two connectors in the practice of the build.",
  sources: ["part"],
  *checks({ build }) {
    for (const run of build.runs)
      for (const { what, rating } of run.ratings)
        yield atMost(run, {
          measured: run.current,
          allowed: rating,
          says: ({ measured, allowed }) => `${run.label} draws ${measured} through the ${what}, which is rated ${allowed}.`,
          mend: "Split the run in two, or take a feed with connectors of a higher rating.",
        });
  },
});
