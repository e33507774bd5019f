import { legImbalance, tabled } from "@plumbmark/calc";
import { atMost, type Build, open, rule } from "@plumbmark/kit";

/** No leg carries anything, as far as is written down. */
const isIdle = ({ legs }: Build["circuits"][number] | Build["supplies"][number]): boolean =>
  Object.values(legs).every((each) => each.known && each.value === 0);

export default rule({
  id: "power.leg-balance",
  states: "Legs of a three-phase supply are within the setting of each other.",
  level: "should",
  why: "The fullest leg decides what the supply can give. The others stand idle while its breaker opens, and the neutral carries what the legs do not balance.",
  judged:
    "The current of each leg of a three-phase circuit, and of every supply that circuits name under `from`, over all of them; (Imax − Imin) ÷ Imax, where Imax is the current of the fullest leg and Imin that of the emptiest. Two loads between lines, I and J, share a leg as √(I² + J² + I × J); loads between one leg and neutral are added to that plainly, which is never below the vector sum. A supply that carries nothing has nothing to balance, and is open. A supply counts as three phase unless `power.supplies` calls it split phase, or 240 V stands between its lines in us practice with nothing on leg C; the check says when it is taken so. The neutral is not judged, here or in power.circuit-load: it carries the vector sum of what stands on the legs, and with switched supplies the third harmonics of all three legs, which add up even when the legs are alike. An electrician sizes it.",
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
        .map((circuit) => ({
          thing: circuit,
          imbalance: legImbalance.of({ I: Object.values(circuit.legs) }),
          guessed: false,
        })),
      ...build.supplies
        .filter(({ saysLegs }) => saysLegs)
        .map((supply) => ({ thing: supply, imbalance: supply.imbalance, guessed: supply.guessedSplit })),
    ];
    for (const { thing, imbalance, guessed } of things) {
      if (isIdle(thing)) {
        yield open(thing, {
          says: `${thing.label} carries nothing: there are no legs to balance.`,
          mend: "Write the runs, or the load that is not panels under `other-load`.",
        });
        continue;
      }
      yield atMost(thing, {
        measured: imbalance,
        allowed: most,
        says: ({ measured, allowed }) =>
          `${thing.label}${guessed ? ", taken as split phase for the 240 V between its lines" : ""}: its legs differ by ${measured} of the fullest; ${allowed} is the most.`,
        mend: "Move runs or circuits from the fullest leg to the emptiest. A supply of two legs is written under `power.supplies` as `system: split-phase`.",
      });
    }
  },
});
