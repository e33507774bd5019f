import { atLeast, atMost, open, rule } from "@plumbmark/kit";
import { wayOf } from "../way.js";

export default rule({
  id: "power.supply-range",
  states: "Every panel's voltage, drop included, is inside its supply range.",
  level: "shall",
  why: "Below its range a panel restarts in the middle of a bright picture; above it its supply is destroyed.",
  judged:
    "The voltage left at the last panel of each run against the lower end of the panel's supply range, the supply voltage without any drop against the upper end.",
  sources: ["part"],
  *checks({ build }) {
    for (const run of build.runs) {
      if (!run.panels) {
        yield open(run, {
          says: `${run.label} has no panels in cable order written down.`,
          mend: `Write them under \`${run.path}.panels\`.`,
          needs: [`${run.path}.panels`],
        });
        continue;
      }
      for (const { low, high } of run.supplyRanges) {
        yield atLeast(run, {
          measured: run.voltageAtEnd,
          allowed: low,
          says: ({ measured, allowed }) => `The last panel of run ${run.name} gets ${measured}; it needs ${allowed}.`,
          mend: "Shorten the feed, take a larger conductor, or put fewer panels on the run.",
          turns: wayOf(run),
        });
        yield atMost(run, {
          measured: run.voltage,
          allowed: high,
          says: ({ measured, allowed }) =>
            `The panels of run ${run.name} are supplied with ${measured}; they take ${allowed} at most.`,
          mend: "Feed the run from a supply of a lower voltage.",
        });
      }
    }
  },
});
