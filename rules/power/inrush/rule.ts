import { curveRides, missing, type SourceId, TRIP_CURVES, type TripCurve, times, type Value } from "@plumbmark/calc";
import { atMost, type Circuit, rule } from "@plumbmark/kit";

const isCurve = (curve: string | undefined): curve is TripCurve =>
  curve !== undefined && Object.hasOwn(TRIP_CURVES, curve);

/** What the breaker rides through: as written, else by its curve, else the house's multiple; and what that rests on. */
function ridden(
  circuit: Circuit,
  multiple: number,
): { readonly allowed: Value; readonly sources: readonly SourceId[] } {
  const { ridesThrough, curve, breaker } = circuit;
  if (ridesThrough) return { allowed: ridesThrough, sources: ["practice"] };
  if (curve !== undefined && !isCurve(curve)) {
    const because = `${circuit.label}: how much a breaker of the curve ${curve} rides through is not known.`;
    return { allowed: missing("current", { path: `${circuit.path}.curve`, what: "trip curve", because }), sources: [] };
  }
  if (isCurve(curve)) return { allowed: curveRides(breaker, curve), sources: ["practice", "iec-60898-1"] };
  return { allowed: times(breaker, multiple), sources: ["practice", "house"] };
}

export default rule({
  id: "power.inrush",
  states: "Switch-on current stays inside what the breaker rides through.",
  level: "should",
  why: "All supplies fill up in the same instant. The breaker opens at switch-on though the load is small, and after a power cut nobody is there to close it.",
  judged:
    "The inrush of all panels that are switched on together, Σ of what their parts state (of the largest run where the circuit is `stepped`), and of the other load, `other-inrush`, against what the breaker rides through. A circuit with an `other-load` whose inrush is not written is open: a processor or converter charges its supply in the same instant. The breaker rides through what is written as `rides-through` from its data sheet; else a multiple of its rating by its `curve`: B 3, C 5, D 10; else the house's multiple. Figures are compared as they are written. A maker's inrush is as a rule the peak of a pulse of about a millisecond, at the worst instant of the wave; a breaker's multiple is an rms current that lasts for a hundredth of a second or more. Holding the peak against the rms is the safe side; a breaker maker's pulse curve, written as `rides-through`, is nearer.",
  sources: ["practice", "iec-60898-1", "house"],
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
        ...ridden(circuit, settings.multiple as number),
        says: ({ measured, allowed }) =>
          `At switch-on circuit ${circuit.name} draws up to ${measured}; its breaker rides through ${allowed}.`,
        turns: { path: `${circuit.path}.rides-through`, sense: "at least", asks: "electrician" },
        mend: "Switch the runs on one after another, spread them over more circuits, or ask the electrician for a breaker of a slower curve.",
      });
  },
});
