import { legImbalance, tabled } from "@plumbmark/calc";
import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "power.leg-balance",
  states: "Legs of a three-phase supply are within the setting of each other.",
  level: "should",
  why: "The fullest leg decides what the supply can give. The others stand idle while its breaker opens, and the neutral carries the difference.",
  judged:
    "The current of each leg of a three-phase circuit, and of every supply that circuits name under `from`, over all of them: loads between lines by vector sum, loads on one leg added. The difference of the fullest and the emptiest leg as a share of the fullest. A supply counts as three phase unless `power.supplies` calls it split phase, or 240 V stands between its lines in us practice with nothing on leg C.",
  sources: ["electrical-definition", "practice"],
  settings: {
    share: {
      us: 0.2,
      iec: 0.2,
      kind: "ratio",
      stricter: "less",
      describe: "largest difference of two legs, as a share of the fullest",
    },
  },
  *checks({ build, settings }) {
    const most = tabled(settings.share as number, "ratio", "house", "largest difference of two legs");
    const things = [
      ...build.circuits
        .filter(({ threePhase, from }) => threePhase && from === undefined)
        .map((circuit) => ({ thing: circuit, imbalance: legImbalance.of({ I: Object.values(circuit.legs) }) })),
      ...build.supplies
        .filter(({ saysLegs }) => saysLegs)
        .map((supply) => ({ thing: supply, imbalance: supply.imbalance })),
    ];
    for (const { thing, imbalance } of things)
      yield atMost(thing, {
        measured: imbalance,
        allowed: most,
        says: ({ measured, allowed }) =>
          `${thing.label}: its legs differ by ${measured} of the fullest; ${allowed} is the most.`,
        mend: "Move runs or circuits from the fullest leg to the emptiest. A supply of two legs is written under `power.supplies` as `system: split-phase`.",
      });
  },
});
