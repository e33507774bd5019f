import { apparentPower, assumed, type Known, loadCurrent, sum, times, type Value } from "@plumbmark/calc";
import type { Circuit } from "./circuit.js";

/** Watts of a load whose power factor nobody wrote down count as volt-amperes; the working says so. */
const UNITY = assumed(1, "factor", "practice", "power factor of the other load, which is not written down");

/** Other load of a circuit in volt-amperes: as written in VA, or watts at power factor 1; undefined when there is none. */
export function otherLoadOf({ build, path, label }: Circuit): Value<"apparent-power"> | undefined {
  if (build.reader.isNone(`${path}.other-load`)) return undefined;
  const written: Value | undefined = build.reader.optional(`${path}.other-load`, "power", "other load", label);
  if (!written) return undefined;
  return written.known && written.kind === "apparent-power"
    ? (written as Known<"apparent-power">)
    : apparentPower.of({ P: written, pf: UNITY });
}

/** Everything on a circuit besides its panels: the devices it serves, and what is written as its other load. */
export function loadsBeside(circuit: Circuit): readonly Value<"apparent-power">[] {
  const other = otherLoadOf(circuit);
  return [...circuit.devices.map(({ load }) => load), ...(other ? [other] : [])];
}

/** The same as one current at a voltage; none when there is nothing. */
export function currentBeside(circuit: Circuit, voltage: Value): readonly Value<"current">[] {
  const currents = loadsBeside(circuit).map((each) => loadCurrent.of({ S: each, V: voltage }));
  return currents.length > 1 ? [sum(currents, "current", "I")] : currents;
}

/**
 * What a circuit carries if the watts of its other load are twice as many volt-amperes: small power supplies and lamps
 * with a power factor of 0.5 are common. Undefined where no watts are written.
 */
export function currentAtHalfFactor(circuit: Circuit): Value<"current"> | undefined {
  const other = otherLoadOf(circuit);
  if (other?.known && circuit.build.reader.quantities.get(`${circuit.path}.other-load`)?.kind === "power") {
    const V = circuit.threePhase ? times(circuit.voltage, 1 / Math.sqrt(3), "1 ÷ √3") : circuit.voltage;
    return sum([circuit.current, loadCurrent.of({ S: other, V })], "current", "I");
  }
  return undefined;
}
