import { continuousShare, type Known, readQuantity, tabled } from "@plumbmark/calc";
import type { DesignSource } from "../reading/design-source.js";

/**
 * Share of its rating the breaker of a circuit or supply at `path` may carry for hours: what the house standard sets;
 * else all of a breaker and assembly listed for 100 %; else the practice's.
 */
export function continuousShareOf(build: DesignSource, path: string): Known {
  const own = build.context.standard.requirements["power.circuit-load"]?.share;
  const reading = typeof own === "string" || typeof own === "number" ? readQuantity(own, ["ratio"]) : undefined;
  if (reading?.ok) return tabled(reading.quantity.value, "ratio", "house", "continuous share of the house standard");
  return build.reader.data(`${path}.rated-100`) === true
    ? tabled(1, "ratio", "nec-210.20a-100", "breaker and assembly listed for 100 %")
    : continuousShare(build.practice);
}
