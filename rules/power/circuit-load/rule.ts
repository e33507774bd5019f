import { continuousShare, tabled } from "@plumbmark/calc";
import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "power.circuit-load",
  states: "A circuit carries no more than its continuous rating.",
  level: "shall",
  why: "A display runs for hours. A breaker loaded above its continuous rating warms up and trips in the middle of the event, and the wiring ages.",
  judged:
    "The maximum power of every panel on the circuit, divided by the power factor, and the other load, divided by the voltage, against the breaker rating times the continuous share. A breaker written as listed for 100 % (`rated-100`) counts in full, unless the house standard sets a share of its own.",
  sources: ["nec-210.20a", "iec-60364-4-43"],
  settings: {
    share: { us: 0.8, iec: 1, kind: "ratio", stricter: "less", describe: "continuous share of the breaker's rating" },
  },
  *checks({ build, settings }) {
    const usual = continuousShare(build.practice).value;
    const house = tabled(settings.share as number, "ratio", "house", "continuous share of the house standard");
    for (const circuit of build.circuits)
      yield atMost(circuit, {
        measured: circuit.current,
        allowed: circuit.continuousRating(settings.share === usual ? circuit.continuousShare : house),
        says: ({ measured, allowed }) => `${circuit.label} carries ${measured}; its continuous rating is ${allowed}.`,
        mend: "Move panels to another circuit, or feed the run at a higher voltage.",
      });
  },
});
