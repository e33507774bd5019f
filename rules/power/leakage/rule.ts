import { CLASS_A, leakageAllowed, tabled, type Value } from "@plumbmark/calc";
import { atMost, type Circuit, open, rule } from "@plumbmark/kit";

/** A personal-protection device of us practice may not trip below 4 mA; of any other a share is left to standing leakage. */
function allowedOn(circuit: Circuit, share: number): Value {
  const { residual } = circuit;
  const personal = circuit.build.practice === "us" && residual.known && residual.value <= CLASS_A.trips;
  if (personal) return tabled(CLASS_A.holds, "current", "ul-943", "current a Class A device has to hold");
  return leakageAllowed.of({ Id: residual, share: tabled(share, "ratio", "house", "share left to standing leakage") });
}

export default rule({
  id: "power.leakage",
  states: "Standing leakage stays under the share of the residual device's rating.",
  level: "should",
  why: "The filter of every panel leaks a little to earth. Enough of them together open the residual device with no fault anywhere.",
  judged:
    "The leakage of all panels and devices on a circuit with a residual device, added up, against the share of its rating; a Class A device of us practice holds up to 4 mA. A circuit of which nothing is said is open: one without such a device has `residual: none`. Leakage of other loads on the circuit is not known and comes on top.",
  sources: ["iec-60364-5-53", "ul-943"],
  settings: {
    share: {
      us: 0.3,
      iec: 0.3,
      kind: "ratio",
      stricter: "less",
      describe: "share of the residual device's rating left to standing leakage",
    },
  },
  *checks({ build, settings }) {
    for (const circuit of build.circuits) {
      if (!circuit.saysResidual)
        yield open(circuit, {
          says: `Whether ${circuit.label} has a residual device is not written down.`,
          mend: `Ask the house, and write \`${circuit.path}.residual\`: its trip rating, or \`none\`.`,
          needs: [`${circuit.path}.residual`],
        });
      if (circuit.hasResidual)
        yield atMost(circuit, {
          measured: circuit.leakage,
          allowed: allowedOn(circuit, settings.share as number),
          says: ({ measured, allowed }) =>
            `Panels and devices on circuit ${circuit.name} leak ${measured}; its residual device leaves room for ${allowed}.`,
          mend: "Spread the panels over more circuits, each with its own residual device. Do not take the device out.",
        });
    }
  },
});
