import type { Chain } from "../model/data/chain.js";
import type { Design } from "../model/design.js";
import type { Run } from "../model/power/run.js";

/**
 * How cables are labelled, the same at both ends: the name of the run or chain, then `F` for its feed, `J1`, `J2` …
 * for its jumpers in cable order, `R` for the return; `V1`, `V2` … along the picture path. Where a run and a chain
 * have one name, every label says which of the two it is.
 */
export function labeller(build: Design): (line: Run | Chain, cable: string) => string {
  const runs = new Set(build.runs.map(({ name }) => name));
  const ambiguous = build.chains.some(({ name }) => runs.has(name));
  return (line, cable) => {
    const sort = line.path.startsWith("power.") ? "power-" : "data-";
    return `${ambiguous ? sort : ""}${line.name}-${cable}`;
  };
}
