import { readQuantity } from "@plumbmark/calc";
import type { Extent } from "../search/shapes.js";

const FORM = /^(?:(exactly|at most|at least|about)\s+)?(.+)$/u;

/** Reads `at most 10 ft`; a bare length is the most. Undefined when no length is written. */
export function readExtent(text: string): Extent | undefined {
  const match = FORM.exec(text.trim());
  if (!match) return undefined;
  const reading = readQuantity(match[2] as string, ["length"]);
  if (!reading.ok || !(reading.quantity.value > 0)) return undefined;
  return { how: (match[1] as Extent["how"] | undefined) ?? "at most", length: reading.quantity.value };
}
