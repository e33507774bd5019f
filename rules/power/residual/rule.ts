import { connectorCurrent, RESIDUAL_MOST, tabled } from "@plumbmark/calc";
import { atMost, is, rule } from "@plumbmark/kit";

/** Sockets above this are for trained people only. */
const ORDINARY = 32;

const MEND = "Ask the venue's licensed electrician for a circuit with a residual device of 30 mA.";

export default rule({
  id: "power.residual",
  states: "In iec practice a socket of up to 32 A has a residual device of at most 30 mA.",
  level: "shall",
  why: "A cord that is cut, crushed or wet on stage kills long before a breaker opens. A residual device opens in time, if there is one.",
  judged:
    "The trip rating written for every circuit with an outlet of up to 32 A in iec practice, against 30 mA. Us practice asks for it by place, which is for the venue's electrician to say, and is not judged; of a small generator see power.generator. Where a documented risk assessment leaves the device out, a licensed electrician says so in a waiver.",
  sources: ["bs-7671-411.3.3", "bs-7671-415.1.1"],
  *checks({ build }) {
    if (build.practice !== "iec") return;
    for (const circuit of build.circuits) {
      const rated = circuit.outlet === undefined ? undefined : connectorCurrent(circuit.outlet, "iec");
      if (!rated?.known || rated.value > ORDINARY) continue;
      if (circuit.saysResidual && !circuit.hasResidual) {
        yield is(circuit, {
          holds: false,
          says: `Circuit ${circuit.name} has no residual device; a socket people plug into has one of at most 30 mA.`,
          mend: MEND,
        });
        continue;
      }
      yield atMost(circuit, {
        measured: circuit.residual,
        allowed: tabled(RESIDUAL_MOST, "current", "bs-7671-415.1.1", "greatest trip rating for additional protection"),
        says: ({ measured, allowed }) =>
          `The residual device of circuit ${circuit.name} trips at ${measured}; ${allowed} is the most for a socket people plug into.`,
        turns: { path: `${circuit.path}.residual`, sense: "at most", asks: "electrician" },
        mend: MEND,
      });
    }
  },
});
