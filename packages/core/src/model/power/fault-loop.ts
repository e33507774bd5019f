import { faultLoopMost, missing, TRIP_CURVES, type TripCurve, times, type Value } from "@plumbmark/calc";
import type { Circuit } from "./circuit.js";

/** Voltage to earth: that between lines is √3 times it. */
const toEarth = ({ threePhase, betweenLines, voltage }: Circuit): Value<"voltage"> =>
  threePhase || betweenLines ? times(voltage, 1 / Math.sqrt(3), "1 ÷ √3") : voltage;

/** Greatest earth-fault loop impedance for the breaker to open in 0.4 s, Ω; missing without its curve. */
export function faultLoopAllowed(circuit: Circuit): Value<"resistance"> {
  const { curve, breaker, path, label } = circuit;
  if (curve === undefined || !Object.hasOwn(TRIP_CURVES, curve))
    return missing("resistance", { path: `${path}.curve`, what: "trip curve of the breaker", of: label });
  return faultLoopMost(toEarth(circuit), breaker, curve as TripCurve);
}
