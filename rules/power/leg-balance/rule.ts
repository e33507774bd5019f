import { legImbalance, tabled } from "@plumbmark/calc";
import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "power.leg-balance",
  states: "Legs of a three-phase supply are within the setting of each other.",
  level: "should",
  why: "The fullest leg decides what the supply can give. The others stand idle while its breaker opens, and the neutral carries the difference.",
  judged:
    "The current of each leg of a three-phase circuit, loads between lines by vector sum; the difference of the fullest and the emptiest leg as a share of the fullest.",
  sources: ["electrical-definition", "practice"],
  settings: {
    share: { us: 0.2, iec: 0.2, kind: "ratio", describe: "largest difference of two legs, as a share of the fullest" },
  },
  *checks({ build, settings }) {
    for (const circuit of build.circuits)
      if (circuit.threePhase)
        yield atMost(circuit, {
          measured: legImbalance.of({ I: Object.values(circuit.legs) }),
          allowed: tabled(settings.share as number, "ratio", "house", "largest difference of two legs"),
          says: ({ measured, allowed }) =>
            `The legs of ${circuit.label.toLowerCase()} differ by ${measured} of the fullest; ${allowed} is the most.`,
          mend: "Move runs from the fullest leg to the emptiest.",
        });
  },
});
