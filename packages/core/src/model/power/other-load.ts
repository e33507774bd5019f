import { loadCurrent, sum, type Value } from "@plumbmark/calc";
import type { Circuit } from "./circuit.js";

/** Other load of a circuit in volt-amperes; undefined when there is none. */
export function otherLoadOf({ build, path, label }: Circuit): Value<"apparent-power"> | undefined {
  if (build.reader.isNone(`${path}.other-load`)) return undefined;
  return build.reader.optional(`${path}.other-load`, "apparent-power", "other load", label);
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
