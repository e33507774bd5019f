import { apparentPower, assumed, type Known, loadCurrent, sum, type Value } from "@plumbmark/calc";
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
