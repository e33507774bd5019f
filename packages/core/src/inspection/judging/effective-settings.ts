import type { StandardChain } from "../../standard/chain.js";
import { bySupport, type InForce, inForce, strictest } from "../../standard/in-force.js";
import { SUPPORTS, type Support } from "../../standard/levels.js";
import type { Level, Setting } from "../../standard/setting.js";
import type { Rule } from "./rule.js";

/** Level and settings of a rule as they are in force, without where they come from. */
export interface EffectiveSettings {
  readonly level: Level;
  readonly settings: Readonly<Record<string, Setting>>;
}

interface OfRule {
  /** Whether it asks for more of faces held in one way. */
  readonly varies: boolean;
  readonly effective: Map<string, EffectiveSettings>;
}

/** Worked out once: a house standard asks the same of every document below it. */
const known = new WeakMap<StandardChain, Map<Rule, OfRule>>();

function ofRule(rule: Rule, chain: StandardChain): OfRule {
  const rules = known.get(chain) ?? new Map<Rule, OfRule>();
  known.set(chain, rules);
  const varies = (): boolean => SUPPORTS.some((support) => bySupport(rule, chain, support));
  const found = rules.get(rule) ?? { varies: varies(), effective: new Map() };
  rules.set(rule, found);
  return found;
}

/** Whether a house standard asks for more of faces held in one way than of others. */
export const varies = (rule: Rule, chain: StandardChain): boolean => ofRule(rule, chain).varies;

/** Level and settings in force for a thing that serves faces held in these ways. */
function forSupports(rule: Rule, chain: StandardChain, practice: "us" | "iec", supports: readonly Support[]): InForce {
  const [first, ...others] = supports.map((support) => inForce(rule, chain, practice, support));
  return first ? strictest(rule, [first, ...others]) : inForce(rule, chain, practice);
}

const plain = ({ level, settings }: InForce): EffectiveSettings => ({
  level: level.value,
  // Every document is judged by the same ones: no rule may change them for the next.
  settings: Object.freeze(Object.fromEntries(Object.entries(settings).map(([key, { value }]) => [key, value]))),
});

/** What is in force of a rule for a thing that serves faces held in these ways; the whole build when none is named. */
export function effectiveSettings(
  rule: Rule,
  chain: StandardChain,
  practice: "us" | "iec",
  supports: readonly Support[] = [],
): EffectiveSettings {
  const { effective } = ofRule(rule, chain);
  const key = [practice, ...supports].join(" ");
  const found = effective.get(key) ?? plain(forSupports(rule, chain, practice, supports));
  effective.set(key, found);
  return found;
}
