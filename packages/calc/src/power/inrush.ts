import { times } from "../formula/arithmetic.js";
import { formula } from "../formula/formula.js";
import { restingOn, type Value } from "../formula/value.js";

/** Multiples of its rating below which a breaker of a curve does not open at once (IEC 60898-1, from memory). */
export const TRIP_CURVES = { B: 3, C: 5, D: 10 } as const;
export type TripCurve = keyof typeof TRIP_CURVES;

/** The current a breaker of a curve rides through, A, from its rating, A. */
export const curveRides = (rating: Value<"current">, curve: TripCurve): Value<"current"> =>
  restingOn(times(rating, TRIP_CURVES[curve], `${TRIP_CURVES[curve]} (curve ${curve})`), "iec-60898-1");

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
