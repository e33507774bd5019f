import { buildingAmpacity, gaugeOf, type Known, leastOf, smallConductorBreaker, type Value } from "@plumbmark/calc";
import { atMost, type Circuit, rule } from "@plumbmark/kit";

/** The largest breaker on building wire by gauge: its ampacity at 60 °C, and the cap of the small sizes. */
function wireBreaker(circuit: Circuit): Value {
  const { conductor } = circuit;
  const [ampacity, cap] = [buildingAmpacity(conductor), smallConductorBreaker(conductor)];
  return cap.known ? leastOf([ampacity, cap], "current", "greatest breaker") : ampacity;
}

/** Metric building wire depends on how it is laid; no table of it is at hand, and the venue's electrician answers for it. */
const byGauge = (conductor: Value): boolean => !conductor.known || gaugeOf((conductor as Known).value) !== undefined;

export default rule({
  id: "power.cord-ampacity",
  states: "Feed and jumper conductors suit the current, and cords and wiring suit the breaker they are on.",
  level: "shall",
  why: "A breaker protects only conductors that are large enough for it. A thin cord behind a large breaker burns before the breaker opens.",
  judged:
    "Every cord by its gauge and its conductors without the equipment ground (ambient 30 °C unless written), a metric cord by the rating on its part. In us practice a cord of 16 AWG or larger may be on 20 A. Building wiring by gauge at 60 °C; metric building wiring is left to the licensed electrician.",
  sources: ["nec-400.5a1", "nec-240.5", "nec-310.16", "nec-240.4d", "part"],
  *checks({ build }) {
    for (const run of build.runs)
      for (const { cable, current, allows, breaker } of run.cords) {
        yield atMost(cable, {
          measured: current,
          allowed: allows,
          says: ({ measured, allowed }) => `${cable.label} passes ${measured}; its conductors carry ${allowed}.`,
          mend: "Take a cord of a larger conductor, or put fewer panels on the run.",
        });
        if (run.circuit)
          yield atMost(cable, {
            measured: run.circuit.breaker,
            allowed: breaker,
            says: ({ measured, allowed }) =>
              `${cable.label} is on a breaker of ${measured}; a cord like it may be on ${allowed}.`,
            mend: "Take a cord of a larger conductor, or a circuit with a smaller breaker.",
          });
      }
    for (const circuit of build.circuits)
      if (byGauge(circuit.conductor))
        yield atMost(circuit, {
          measured: circuit.breaker,
          allowed: wireBreaker(circuit),
          says: ({ measured, allowed }) =>
            `${circuit.label}: the breaker is ${measured}; its wiring may be on ${allowed}.`,
          mend: "Ask the venue's licensed electrician: breaker and wiring do not belong together as written.",
        });
  },
});
