import { formula } from "../formula/formula.js";
import { tabled, type Value } from "../formula/value.js";
import type { TripCurve } from "./inrush.js";

/** Multiples at which a breaker of a curve opens at once for certain, in less than 0.1 s (IEC 60898-1). */
export const OPENS_AT = { B: 5, C: 10, D: 20 } as const;

/** Least voltage of a public supply as a share of the nominal one (Cmin of BS 7671 since 2015). */
export const C_MIN = 0.95;

/**
 * Greatest impedance of the loop a fault to earth goes round, so that the breaker opens in 0.4 s. The 5 s column is left
 * out on purpose: for curves C and D it is printed in more than one way.
 */
export const faultLoop = formula({
  id: "power.fault-loop",
  title: "Greatest earth-fault loop impedance",
  symbol: "Zs",
  kind: "resistance",
  inputs: {
    c: { kind: "ratio", is: "least voltage as a share of the nominal one", above: 0, most: 1 },
    U: { kind: "voltage", is: "nominal voltage to earth", above: 0 },
    k: { kind: "factor", is: "multiple of the rating at which the breaker opens at once", above: 0 },
    In: { kind: "current", is: "breaker rating", above: 0 },
  },
  expression: "c × U ÷ (k × In)",
  source: "bs-7671-zs",
  validity: "disconnection in 0.4 s by a breaker of curve B, C or D; the loop at its temperature in service",
  example: {
    given: { c: 0.95, U: 230, k: 5, In: 32 },
    gives: 1.37,
    within: 0.005,
    from: "BS 7671 Table 41.3, 32 A curve B (sparkyhub.co.uk)",
  },
  compute: ({ c, U, k, In }) => (c * U) / (k * In),
});

/** The same for a breaker of a curve. */
export const faultLoopMost = (
  voltage: Value<"voltage">,
  rating: Value<"current">,
  curve: TripCurve,
): Value<"resistance"> =>
  faultLoop.of({
    c: tabled(C_MIN, "ratio", "bs-7671-zs", "least voltage of the supply"),
    U: voltage,
    k: tabled(OPENS_AT[curve], "factor", "iec-60898-1", `multiple at which curve ${curve} opens at once`),
    In: rating,
  });
