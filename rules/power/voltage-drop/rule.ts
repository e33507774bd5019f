import { tabled } from "@plumbmark/calc";
import { atMost, rule } from "@plumbmark/kit";
import { wayOf } from "../way.js";

const MEND = "Shorten the feed, take a larger conductor, or put fewer panels on the run.";

export default rule({
  id: "power.voltage-drop",
  states:
    "The last panel of a run loses no more than the branch share of the supply voltage, and no more than the total with the feeder.",
  level: "should",
  why: "Panels at the end of a long run get the least voltage. Their supplies draw more current for it, and the margin for a low mains is used up.",
  judged:
    "ΔV = 2 × I × r × L for every piece of the way: the building wiring with everything on the circuit, the feed with the whole run, each jumper with the panels behind it; summed, and divided by the voltage across the panel, which is the voltage between lines for a run between lines and that over √3 for one on a leg and neutral. In the wiring of a three-phase circuit runs share the wires by the legs they are on. r is the resistance of one conductor: by gauge that of uncoated stranded copper at 75 °C (NEC Chapter 9 Table 8), by mm² that of class 5 copper (IEC 60228) taken from 20 °C to 70 °C. Reactance is left out, which holds to about 1/0 AWG or 50 mm². In all counts the drop of the feeder before the breaker, too, as it is written under `wiring.feeder-drop`: a share of the voltage, or volts between the lines the circuit is on (between lines of a three-phase circuit, which a run on one leg and neutral sees as that over √3). Only whoever runs the building's wiring knows that one. The 3 % and 5 % of the NEC stand in an informational note, and its branch circuit ends at the outlet: the sum here goes on through the cords to the last panel, which is stricter.",
  sources: ["nec-210.19a", "nec-ch9-t8", "iec-60364-5-52-g", "iec-60228"],
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
        turns: wayOf(run),
      });
      yield atMost(run, {
        measured: run.shareInAll,
        allowed: tabled(settings.total as number, "ratio", "house", "largest drop in all"),
        says: ({ measured, allowed }) =>
          `With the feeder, the last panel of run ${run.name} loses ${measured} of the supply voltage; ${allowed} is the most in all.`,
        mend: MEND,
        turns: wayOf(run),
      });
    }
  },
});
