/** What a run is asked for by its environment; read by the configuration and handed to the tests. */
export interface Effort {
  /** Full counts, every step: `npm run deep`. */
  readonly deep: boolean;
  /** Where the random cases of every property begin. */
  readonly seed: number;
  /** Cases of a property that does not say how many it needs. */
  readonly runs: number;
}

/** A whole number of the environment, or what stands in for it; anything else is a mistake of whoever set it. */
function whole(name: string, otherwise: () => number): number {
  const written = process.env[name];
  if (written === undefined || written === "") return otherwise();
  if (!/^\d{1,10}$/u.test(written) || Number(written) > 2 ** 31 - 1)
    throw new Error(`${name} is ${written}; a whole number of at most 2147483647 is allowed.`);
  return Number(written);
}

const RUNS = 100;
/** How many times as many cases a deep run tries. */
const DEEPER = 20;

export const deep = process.env.PLUMBMARK_DEEP === "1";

/** Another start in every run, so that a year of runs tries what one cannot; told, so that each can be had again. */
const seed = whole("PLUMBMARK_SEED", () => Math.floor(Math.random() * 2 ** 31));
// The configuration and the reporter each have this module anew: both are to have the one seed that is told.
process.env.PLUMBMARK_SEED = String(seed);

export const effort: Effort = {
  deep,
  seed,
  runs: deep ? RUNS * DEEPER : RUNS,
};
