import type { ResultCache } from "../engine/cache/cache.js";
import { isFailure } from "../engine/cache/failure.js";
import { cachedResults, joinedOutcomes, keysOf, storeResults, withoutCached } from "./cached-results.js";
import { type PluginInput, type PluginOutcome, type PluginRun, runPlugin } from "./run-plugin.js";
import type { Target } from "./target.js";

const isSound = ({ rules, failed }: PluginOutcome): boolean =>
  failed.length === 0 && !rules.some(({ outcomes }) => Object.values(outcomes).some(isFailure));

/**
 * Runs every rule of a plugin, or gives its cached results while its code and everything they rest on are the same: then
 * no process is started for it. What failed is tried again each time, and what prints is let print.
 */
export async function runCached(
  target: Target,
  run: PluginRun,
  input: PluginInput,
  cache: ResultCache | undefined,
): Promise<PluginOutcome> {
  const keys = cache && (await keysOf(target, run, input, cache));
  if (!cache || !keys) return runPlugin(target, run, input);
  const known = cachedResults(keys, input, cache);
  const left = known ? withoutCached(known, input) : input;
  if (known && left.wanted.length === 0) return known;
  let hasPrinted = false;
  const warn = (text: string): void => {
    hasPrinted = true;
    run.warn(text);
  };
  const outcome = await runPlugin(target, { ...run, warn }, left);
  // Its code may have been changed while it was loaded.
  const isSame = keys.context === (await keysOf(target, run, input, cache))?.context;
  if (!hasPrinted && isSound(outcome) && isSame) storeResults(keys, outcome, left, cache);
  return known ? joinedOutcomes(known, outcome) : outcome;
}
