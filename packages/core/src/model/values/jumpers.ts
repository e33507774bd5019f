import { Jumpers } from "../cabling/jumpers.js";
import type { Chain } from "../data/chain.js";
import type { Run } from "../power/run.js";
import { under, type ValueEntry } from "./entries.js";

/** Length of a jumper, and what its longest step asks for without slack. */
export function jumperValues(line: Run | Chain, kind: "power" | "data"): readonly ValueEntry[] {
  const jumpers = new Jumpers(line, kind);
  return under(`${line.path}.jumper`, { length: () => jumpers.length, "longest-step": () => jumpers.needed(0) });
}
