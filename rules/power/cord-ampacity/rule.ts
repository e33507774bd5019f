import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "power.cord-ampacity",
  states: "Feed and jumper conductors suit the current, and cords and wiring suit the breaker they are on.",
  level: "shall",
  why: "A breaker protects only conductors that are large enough for it. A thin cord behind a large breaker burns before the breaker opens.",
  judged:
    "Every cord by its gauge and its conductors without the equipment ground (ambient 30 °C unless written), a metric cord by the rating on its part. In us practice a cord of 16 AWG or larger may be on 20 A. Building wiring by gauge at 60 °C, a metric size by how it is laid; ambient temperature and circuits that run together count where they are written.",
  sources: ["nec-400.5a1", "nec-240.5", "nec-310.16", "nec-240.4d", "iec-60364-5-52-b", "part"],
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
            turns: { path: `${run.circuit.path}.breaker`, sense: "at most", asks: "electrician" },
            mend: "Take a cord of a larger conductor, or a circuit with a smaller breaker.",
          });
      }
    for (const circuit of build.circuits)
      yield atMost(circuit, {
        // Wiring that stands in the building is its electrician's work, and an integrator cannot look into the wall.
        level: "should",
        measured: circuit.breaker,
        allowed: circuit.wiringBreaker,
        says: ({ measured, allowed }) =>
          `${circuit.label}: the breaker is ${measured}; its wiring may be on ${allowed}.`,
        turns: { path: `${circuit.path}.breaker`, sense: "at most", asks: "electrician" },
        mend: "Ask the venue's licensed electrician: breaker and wiring do not belong together as written.",
      });
  },
});
