import { curveRides, missing, peakRidden, TRIP_CURVES, type TripCurve, tabled, type Value } from "@plumbmark/calc";
import type { Circuit } from "./circuit.js";

const isCurve = (curve: string): curve is TripCurve => Object.hasOwn(TRIP_CURVES, curve);

/**
 * Peak of a switch-on current the breaker rides through, A: as written from its data sheet; else by its curve; else by
 * the house's multiple of its rating (r.m.s., 0 for none). In iec practice a breaker of unknown curve is of B at least;
 * breakers of us practice have no such curves, so that without maker or house nothing is known.
 */
export function peakRiddenBy(circuit: Circuit, multiple: number): Value<"current"> {
  const { ridesThrough, curve, breaker, path, label, build } = circuit;
  if (ridesThrough) return ridesThrough as Value<"current">;
  if (curve !== undefined && !isCurve(curve)) {
    const because = `${label}: how much a breaker of the curve ${curve} rides through is not known.`;
    return missing("current", { path: `${path}.curve`, what: "trip curve", because });
  }
  if (curve !== undefined) return curveRides(breaker, curve);
  if (multiple > 0)
    return peakRidden.of({ In: breaker, k: tabled(multiple, "factor", "house", "multiple of the house standard") });
  if (build.practice === "iec") return curveRides(breaker, "B");
  const because = `${label}: what its breaker rides through at switch-on is not written down.`;
  return missing("current", { path: `${path}.rides-through`, what: "peak the breaker rides through", because });
}
