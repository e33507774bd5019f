import fc from "fast-check";
import { inject } from "vitest";
import type { Effort } from "./effort.js";

declare module "vitest" {
  export interface ProvidedContext {
    readonly effort: Effort;
  }
}

// Every property of every project begins at the seed of the run. One that fails tells it, with the path to the case.
const { seed, runs } = inject("effort");
fc.configureGlobal({ seed, numRuns: runs });
