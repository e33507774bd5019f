import { type Gap, missing, type Value } from "../../formula/value.js";
import { gaugeOf } from "../conductors/resistance.js";

/** An ampacity that no table at hand gives, with the reason. */
export const none = (because: string, path = ""): Value<"current"> =>
  missing("current", { path, what: "ampacity", because } satisfies Gap);

/** Reads a table by gauge. A metric size has no row in the NEC tables and stays missing. */
export function byGauge(
  conductor: Value,
  read: (awg: string) => Value<"current"> | undefined,
  table: string,
): Value<"current"> {
  if (!conductor.known) return missing("current", ...conductor.gaps);
  const path = conductor.origin.from === "written" ? conductor.origin.path : "";
  const awg = gaugeOf(conductor.value);
  if (awg === undefined)
    return none(`${table} is by AWG gauge; a metric cord needs its current rating stated on the part.`, path);
  return read(awg) ?? none(`${table} has no row for ${awg} AWG.`, path);
}
