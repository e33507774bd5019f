import { TRIP_CURVES } from "@plumbmark/calc";
import { atMost, type Circuit, rule, type SourceId } from "@plumbmark/kit";

/** What a check on this circuit rests on. */
function sourcesOf({ ridesThrough, curve, build }: Circuit, multiple: number): readonly SourceId[] {
  if (ridesThrough) return ["practice"];
  if (curve !== undefined) return Object.hasOwn(TRIP_CURVES, curve) ? ["practice", "iec-60898-1"] : [];
  if (multiple > 0) return ["practice", "house"];
  return build.practice === "iec" ? ["practice", "iec-60898-1"] : ["practice"];
}

export default rule({
  id: "power.inrush",
  states: "Switch-on current stays inside what the breaker rides through.",
  level: "should",
  why: "All supplies fill up in the same instant. The breaker opens at switch-on though the load is small, and after a power cut nobody is there to close it.",
  judged:
    "The peak of everything that is switched on together: the inrush of all panels, Σ of what their parts state (of the largest run where the circuit is `stepped`), of the devices the circuit serves, and of the other load, `other-inrush`, against the peak the breaker rides through. An `other-load` whose inrush is not written is open: it charges its supply in the same instant. The breaker rides through the peak written as `rides-through` from its data sheet; else √2 × the least multiple of its `curve` (IEC 60898-1, r.m.s.: B 3, C 5, D 10) × its rating; else √2 × the house's multiple × its rating. Without any of them a breaker of iec practice counts as one of curve B, and one of us practice, where there are no such curves, is open. Pulses shorter than half a period ride through at higher peaks; how much higher only the maker of the breaker says.",
  sources: ["practice", "iec-60898-1", "house"],
  settings: {
    multiple: {
      us: 0,
      iec: 0,
      stricter: "less",
      describe: "multiple of the rating, r.m.s., a breaker of unknown curve rides through; 0 for none",
    },
  },
  *checks({ build, settings }) {
    const multiple = settings.multiple as number;
    for (const circuit of build.circuits)
      yield atMost(circuit, {
        measured: circuit.inrush,
        allowed: circuit.peakRidden(multiple),
        sources: sourcesOf(circuit, multiple),
        says: ({ measured, allowed }) =>
          `At switch-on circuit ${circuit.name} draws a peak of up to ${measured}; its breaker rides through ${allowed}.`,
        turns: { path: `${circuit.path}.rides-through`, sense: "at least", asks: "electrician" },
        mend: "Switch the runs on one after another, spread them over more circuits, or ask the electrician for a breaker of a slower curve.",
      });
  },
});
