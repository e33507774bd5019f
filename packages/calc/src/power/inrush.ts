import { formula } from "../formula/formula.js";
import { tabled, type Value } from "../formula/value.js";

/** Multiples of its rating, r.m.s., below which a breaker of a curve does not open at once (IEC 60898-1). */
export const TRIP_CURVES = { B: 3, C: 5, D: 10 } as const;
export type TripCurve = keyof typeof TRIP_CURVES;

/**
 * Peak of a switch-on current that a breaker rides through. Its multiple is of r.m.s. amperes, and what acts on the
 * magnetic release is the momentary current: a sine of k × In r.m.s. peaks at √2 of that, and does not open the breaker.
 * A pulse shorter than half a period rides through at higher peaks still, by how much only the maker's let-through says.
 */
export const peakRidden = formula({
  id: "power.peak-ridden",
  title: "Peak of a switch-on current a breaker rides through",
  symbol: "Ip",
  kind: "current",
  inputs: {
    In: { kind: "current", is: "breaker rating", above: 0 },
    k: { kind: "factor", is: "least multiple of the rating at which it opens at once", above: 0 },
  },
  expression: "√2 × k × In",
  // The multiple carries its own source, a curve of the standard or the house's.
  source: "arithmetic",
  validity: "breakers with a magnetic release whose least multiple is known, in r.m.s.; peaks of half a period or less",
  example: {
    given: { In: 16, k: 3 },
    gives: 67.88,
    within: 0.005,
    from: "IEC 60898-1: curve B, at least 3 × In r.m.s.; √2 × 3 × 16 A by hand",
  },
  compute: ({ In, k }) => Math.SQRT2 * k * In,
  show: ({ In, k }, print) => `√2 × ${print(k.value, "factor")} × ${print(In.value, "current")}`,
});

/** The peak a breaker of a curve rides through, A peak, from its rating, A r.m.s. */
export const curveRides = (rating: Value<"current">, curve: TripCurve): Value<"current"> =>
  peakRidden.of({
    In: rating,
    k: tabled(TRIP_CURVES[curve], "factor", "iec-60898-1", `least multiple of curve ${curve}`),
  });

/** Switch-on current of everything that is switched together. */
export const inrush = formula({
  id: "power.inrush",
  title: "Switch-on current",
  symbol: "Ip",
  kind: "current",
  inputs: { i: { kind: "current", is: "switch-on current of a panel", many: true, least: 0 } },
  expression: "Σ i",
  source: "practice",
  validity: "everything switched at the same instant: the worst case, since peaks do not fall together exactly",
  example: { given: { i: [25, 25, 25] }, gives: 75, within: 1e-9, from: "by hand" },
  compute: ({ i }) => i.reduce((total, each) => total + each, 0),
});

/** Switch-on current as a multiple of the breaker's rating. */
export const inrushMultiple = formula({
  id: "power.inrush-multiple",
  title: "Switch-on current over breaker rating",
  symbol: "m",
  kind: "factor",
  inputs: {
    Ip: { kind: "current", is: "switch-on current", least: 0 },
    In: { kind: "current", is: "breaker rating", above: 0 },
  },
  expression: "Ip ÷ In",
  source: "practice",
  validity: "compared with what the breaker rides through by its data sheet",
  example: { given: { Ip: 100, In: 20 }, gives: 5, within: 1e-12, from: "by hand" },
  compute: ({ Ip, In }) => Ip / In,
});
