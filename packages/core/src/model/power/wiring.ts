import {
  buildingAmpacity,
  gaugeOf,
  iecWireAmpacity,
  LAID,
  leastOf,
  missing,
  smallConductorBreaker,
  type Value,
} from "@plumbmark/calc";
import type { Circuit } from "./circuit.js";
import { ambientOf } from "./cord.js";

/**
 * Largest breaker on the building wiring, A. By gauge its ampacity at 60 °C (NEC 310.16) with the cap of the small
 * sizes; a metric size by IEC 60364-5-52 and how it is laid.
 */
export function wiringBreaker(circuit: Circuit): Value<"current"> {
  const { conductor, build, path } = circuit;
  const { reader } = build;
  const around =
    reader.optional(`${path}.wiring.ambient`, "temperature", "temperature around the wiring", circuit.label) ??
    ambientOf(build);
  if (around && !around.known) return missing("current", ...around.gaps);
  const beside = `${path}.wiring.together`;
  const together = reader.data(beside) === undefined ? 1 : reader.count(beside, 1000);
  if (together === 0)
    return missing("current", { path: beside, what: "number of circuits laid together", of: circuit.label });
  const warm = around ? { ambient: around.value } : {};
  if (conductor.known && gaugeOf(conductor.value) === undefined) {
    const method = reader.data(`${path}.wiring.method`);
    const laid = LAID.find((each) => each === method);
    if (method !== undefined && laid === undefined)
      return missing("current", { path: `${path}.wiring.method`, what: "way of laying the wiring" });
    return iecWireAmpacity(conductor, { ...warm, together, threePhase: circuit.threePhase, ...(laid ? { laid } : {}) });
  }
  const [each, cap] = [circuit.threePhase ? 3 : 2, smallConductorBreaker(conductor)];
  const ampacity = buildingAmpacity(conductor, 60, { ...warm, conductors: each * together });
  return cap.known ? leastOf([ampacity, cap], "current", "greatest breaker") : ampacity;
}
