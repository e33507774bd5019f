import { times, type Value } from "@plumbmark/calc";
import { atMost, type Circuit, rule } from "@plumbmark/kit";

/** Multiples below which breakers of the curves do not open at once: 3, 5 and 10 (IEC 60898-1, from memory). */
const CURVES: Readonly<Record<string, number>> = { B: 3, C: 5, D: 10 };

function ridesThrough(circuit: Circuit, multiple: number): Value {
  if (circuit.ridesThrough) return circuit.ridesThrough;
  return times(circuit.breaker, CURVES[circuit.curve ?? ""] ?? multiple);
}

export default rule({
  id: "power.inrush",
  states: "Switch-on current stays inside what the breaker rides through.",
  level: "should",
  why: "All supplies fill up in the same instant. The breaker opens at switch-on though the load is small, and after a power cut nobody is there to close it.",
  judged:
    "The inrush of everything that is switched on together (one run after another where it is stepped) against what the breaker is written to ride through; else the multiple of its curve, else the house's multiple of its rating.",
  sources: ["practice"],
  settings: {
    multiple: {
      us: 5,
      iec: 3,
      stricter: "less",
      describe: "multiple of the rating a breaker of unknown curve rides through",
    },
  },
  *checks({ build, settings }) {
    for (const circuit of build.circuits)
      yield atMost(circuit, {
        measured: circuit.inrush,
        allowed: ridesThrough(circuit, settings.multiple as number),
        says: ({ measured, allowed }) =>
          `At switch-on circuit ${circuit.name} draws up to ${measured}; its breaker rides through ${allowed}.`,
        mend: "Switch the runs on one after another, spread them over more circuits, or ask the electrician for a breaker of a slower curve.",
      });
  },
});
