import type { Build } from "../../model/build.js";
import type { StandardChain } from "../../standard/chain.js";
import type { Support } from "../../standard/levels.js";
import type { Level, Setting } from "../../standard/setting.js";
import { supportsAt } from "../../standard/supports.js";
import { effectiveSettings, varies } from "./effective-settings.js";
import type { RawCheck, Rule } from "./rule.js";

/** A check as its rule yields it, with the level in force for the thing it is about. */
export interface Yielded {
  readonly raw: RawCheck;
  readonly level: Exclude<Level, "none">;
}

/** Asks the rule for its checks on the build, by the settings in force. */
export type Ask = (settings: Readonly<Record<string, Setting>>) => Iterable<RawCheck>;

/** Every way a thing of this build can be supported, as rules come upon it. */
function waysOf(build: Build): ReadonlyMap<string, readonly Support[]> {
  const things = [build, ...build.faces, ...build.circuits, ...build.runs, ...build.chains, ...build.bars];
  const ways = things.map(({ path }) => supportsAt(build, path));
  return new Map(ways.map((way) => [way.join(" "), way]));
}

/**
 * Checks of one rule on one build. Where a house standard asks for more of faces held in one way, the rule is asked
 * once for each way, and each thing is judged by the settings of its own.
 */
export function* applyRule(rule: Rule, build: Build, chain: StandardChain, ask: Ask): Iterable<Yielded> {
  if (!varies(rule, chain)) {
    const { level, settings } = effectiveSettings(rule, chain, build.practice);
    if (level === "none") return;
    for (const raw of ask(settings)) yield { raw, level };
    return;
  }
  for (const [key, way] of waysOf(build)) {
    const { level, settings } = effectiveSettings(rule, chain, build.practice, way);
    if (level === "none") continue;
    for (const raw of ask(settings)) if (supportsAt(build, raw.at).join(" ") === key) yield { raw, level };
  }
}
