import type { CheckEntry } from "./record.js";
import type { Rule } from "./rule.js";

/** What a rule states, without the code that judges it: plain data. */
export type StatedRule = Omit<Rule, "checks" | "outcome">;

/** What a rule came to on one document, or why it could not be carried out there. */
export type RuleOutcome = { readonly checks: readonly CheckEntry[] } | { readonly failed: string };

/** What the plugins of a house standard came to. Plain data, so that it can be handed from one process to another. */
export interface PluginOutcomes {
  readonly rules: readonly {
    readonly stated: StatedRule;
    /** By the document's path. */
    readonly outcomes: Readonly<Record<string, RuleOutcome>>;
  }[];
  /** Plugins that could not be used at all, and why; every document says so. */
  readonly failed: readonly { readonly plugin: string; readonly reason: string }[];
  /** Plugins that were refused by whoever inspects: what they would have found is open. */
  readonly refused: readonly string[];
}

const never = (): never => {
  throw new Error("a rule that was carried out elsewhere has only its outcome");
};

/** A plugin as a whole: its rules are not known by name, so it stands for them all. */
const whole = (plugin: string, outcome: NonNullable<Rule["outcome"]>): Rule => ({
  id: "plugin.failed",
  states: "Every rule of every plugin that the house standard names is carried out.",
  level: "shall",
  why: "A rule that was not carried out has found nothing, and nothing found must not look like nothing wrong.",
  judged: "Every plugin is loaded and its rules are carried out, each within its limits of time and memory.",
  sources: ["house"],
  plugin,
  checks: never,
  outcome,
});

const refusedEntry = (plugin: string): CheckEntry => ({
  rule: "plugin.failed",
  from: plugin,
  level: "shall",
  outcome: "open",
  at: { path: "", line: 1, column: 1, endLine: 1, endColumn: 1 },
  says: `The plugin ${plugin} was refused for this inspection, so its rules judged nothing.`,
  mend: "Inspect without `--no-plugins` where the plugin may run.",
  sources: [],
});

/** Rules that hand out what plugins came to. */
export function pluginRules({ rules, failed, refused }: PluginOutcomes): readonly Rule[] {
  const carriedOut = rules.map(
    ({ stated, outcomes }): Rule => ({
      ...stated,
      checks: never,
      outcome: (file) => {
        const outcome = Object.hasOwn(outcomes, file) ? outcomes[file] : undefined;
        if (!outcome) throw new Error("it was not carried out");
        if ("failed" in outcome) throw new Error(outcome.failed);
        return outcome.checks;
      },
    }),
  );
  return [
    ...carriedOut,
    ...failed.map(({ plugin, reason }) =>
      whole(plugin, () => {
        throw new Error(reason);
      }),
    ),
    ...refused.map((plugin) => whole(plugin, () => [refusedEntry(plugin)])),
  ];
}

/** Whether it stands for a plugin as a whole, and is no rule of its own. */
export const isWholePlugin = ({ id }: { readonly id: string }): boolean => id === "plugin.failed";
