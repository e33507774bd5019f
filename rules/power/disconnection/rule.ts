import { RESIDUAL_MOST } from "@plumbmark/calc";
import { atMost, is, rule } from "@plumbmark/kit";

export default rule({
  id: "power.disconnection",
  states: "In iec practice a fault to earth opens the circuit in time.",
  level: "should",
  why: "The shorter a touched case is live, the likelier is it that whoever touches it lives. A breaker opens in time only if the fault drives enough current through it.",
  judged:
    "A circuit with a residual device of at most 30 mA opens by that. Any other by its breaker: the earth-fault loop impedance at the outlet, as the electrician measures it under `wiring.fault-loop`, against 0.95 × the voltage to earth ÷ (5, 10 or 20 × the rating, by curve B, C or D), for 0.4 s. Us practice has no such figure, and is not judged.",
  sources: ["bs-7671-zs", "bs-7671-415.1.1", "iec-60898-1"],
  *checks({ build }) {
    if (build.practice !== "iec") return;
    for (const circuit of build.circuits) {
      const { residual } = circuit;
      // `none` is no figure.
      if (residual.known && residual.value <= RESIDUAL_MOST)
        yield is(circuit, {
          holds: true,
          says: `The residual device of circuit ${circuit.name} opens at ${residual.value * 1000} mA, in 40 ms at five times that.`,
          sources: ["bs-7671-415.1.1"],
        });
      else
        yield atMost(circuit, {
          measured: circuit.faultLoop,
          allowed: circuit.faultLoopAllowed,
          says: ({ measured, allowed }) =>
            `The earth-fault loop of circuit ${circuit.name} has ${measured}; its breaker opens in 0.4 s up to ${allowed}.`,
          mend: "Ask the venue's licensed electrician: a residual device, a breaker of another curve, or a larger conductor.",
        });
    }
  },
});
