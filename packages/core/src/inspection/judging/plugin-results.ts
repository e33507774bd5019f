import { validate } from "../../document/validate.js";
import type { Data } from "../../document/yaml/yaml.js";
import type { CheckEntry } from "../record.js";
import { PLUGIN_FAILED, refusedEntry, unusedEntry } from "./plugin-failed.js";
import type { Rule } from "./rule.js";

/**
 * Whether these are checks as the record has them; anything may come from the process of a plugin.
 * @param ids rules they may be of
 */
export function areSound(checks: unknown, ids: readonly string[]): checks is readonly CheckEntry[] {
  const none = { checks: 0, holds: 0, fails: 0, open: 0, waived: 0 };
  const document = { file: "", verdict: "ready", counts: none, checks };
  const totals = { documents: 1, ready: 1, draft: 0, "not-ready": 0, ...none };
  const data = { record: 2, standard: "", standards: [], documents: [document], totals } as unknown as Data;
  return (
    validate("record", { data, places: new Map(), keys: new Map(), mistakes: [] }).length === 0 &&
    (checks as readonly CheckEntry[]).every(({ rule, outcome }) => ids.includes(rule) && outcome !== "waived")
  );
}

/** What a rule states, without the code that judges it: plain data. */
export type StatedRule = Omit<Rule, "checks" | "outcome">;

/** Result of a rule on one document, or why it could not be run there. */
export type RuleResult = { readonly checks: readonly CheckEntry[] } | { readonly failed: string };

/** Results of the plugins of a house standard. Plain data, so that it can be handed from one process to another. */
export interface PluginResults {
  readonly rules: readonly {
    readonly stated: StatedRule;
    /** By the document's path. */
    readonly outcomes: Readonly<Record<string, RuleResult>>;
  }[];
  /** Plugins that could not be used at all, and why; every document says so. */
  readonly failed: readonly {
    readonly plugin: string;
    readonly reason: string;
    /** A package that is not installed, where that is why. */
    readonly absent?: string;
  }[];
  /** Plugins that were refused by whoever inspects: what they would have found is open. */
  readonly refused: readonly string[];
}

const never = (): never => {
  throw new Error("a rule that was carried out elsewhere has only its outcome");
};

/** What is said of plugins as a whole, on every document alike. */
const whole = (outcome: readonly CheckEntry[]): Rule => ({
  id: PLUGIN_FAILED,
  states: "Every rule of every plugin that the house standard names is carried out.",
  level: "shall",
  why: "A rule that was not carried out has found nothing, and nothing found must not look like nothing wrong.",
  judged: "Every plugin is loaded and its rules are carried out, each within its limits of time and memory.",
  sources: ["house"],
  checks: never,
  result: () => outcome,
});

/** A rule that was run elsewhere and hands out its results, by the document's path. */
export const ruleWithResults = (stated: StatedRule, find: (file: string) => RuleResult | undefined): Rule => ({
  ...stated,
  checks: never,
  result: (file) => {
    const outcome = find(file);
    if (!outcome) throw new Error("it was not carried out");
    if ("failed" in outcome) throw new Error(outcome.failed);
    return outcome.checks;
  },
});

/** Result on a document of a rule that was run elsewhere: plain data, from which it can be made again. */
export function resultOn({ id, result }: Rule, file: string): RuleResult {
  if (!result) throw new TypeError(`The rule ${id} was not carried out elsewhere.`);
  try {
    return { checks: result(file) };
  } catch (cause) {
    return { failed: cause instanceof Error ? cause.message : String(cause) };
  }
}

/** Rules that hand out the results of plugins, and the rule that all of them are run. */
export function pluginRules({ rules, failed, refused }: PluginResults): readonly Rule[] {
  return [
    ...rules.map(({ stated, outcomes }) =>
      ruleWithResults(stated, (file) => (Object.hasOwn(outcomes, file) ? outcomes[file] : undefined)),
    ),
    whole([...failed.map(unusedEntry), ...refused.map(refusedEntry)]),
  ];
}

/** Plugins that could not be used, or were refused: nobody knows the names of their rules. */
export const unusedPlugins = (rules: readonly Rule[]): readonly CheckEntry[] =>
  rules.flatMap(({ id, result }) => (id === PLUGIN_FAILED ? (result?.("") ?? []) : []));
