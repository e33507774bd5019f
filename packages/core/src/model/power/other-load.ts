import { apparentPower, assumed, type Known, loadCurrent, type Value } from "@plumbmark/calc";
import type { Circuit } from "./circuit.js";

/** Watts of a load whose power factor nobody wrote down count as volt-amperes; the working says so. */
const UNITY = assumed(1, "factor", "practice", "power factor of the other load, which is not written down");

/** Other load of a circuit in volt-amperes: as written in VA, or watts at power factor 1; undefined when none is written. */
export function otherLoadOf({ build, path, label }: Circuit): Value<"apparent-power"> | undefined {
  const written: Value | undefined = build.reader.optional(`${path}.other-load`, "power", "other load", label);
  if (!written) return undefined;
  return written.known && written.kind === "apparent-power"
    ? (written as Known<"apparent-power">)
    : apparentPower.of({ P: written, pf: UNITY });
}

/** The same as a current at a voltage; none when none is written. */
export function otherCurrent(circuit: Circuit, voltage: Value): readonly Value<"current">[] {
  const other = otherLoadOf(circuit);
  return other ? [loadCurrent.of({ S: other, V: voltage })] : [];
}
