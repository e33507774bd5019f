import { continuousShare, type Known, readQuantity, tabled } from "@plumbmark/calc";
import { written } from "../../document/nothing-written.js";
import type { DesignSource } from "../reading/design-source.js";

/**
 * Share of its rating the breaker of a circuit or supply at `path` may carry for hours: what the house standard sets;
 * else all of a breaker and assembly whose listing for 100 % is stated; else the practice's.
 */
export function continuousShareOf(build: DesignSource, path: string): Known {
  const own = build.context.standard.requirements["power.circuit-load"]?.share;
  const reading = typeof own === "string" || typeof own === "number" ? readQuantity(own, ["ratio"]) : undefined;
  if (reading?.ok) return tabled(reading.quantity.value, "ratio", "house", "continuous share of the house standard");
  // `true` names no listing, and lifts nothing: without one the breaker is like any other.
  return written(build.reader.data(`${path}.rated-100.listing`)) !== undefined
    ? tabled(1, "ratio", "nec-210.20a-100", "breaker and assembly listed for 100 %")
    : continuousShare(build.practice);
}
