import { type Rule, type RuleResult, resultOn, ruleWithResults, type StatedRule } from "@plumbmark/core";
import { rules as builtIn } from "@plumbmark/rules";

// Code cannot be sent to a worker. A rule of a plugin runs in the plugin's process, so what it states and its results are
// plain data, and a worker joins them to what its own rules find.

/** Rules that ran elsewhere, as plain data. */
export interface TransferredResults {
  readonly stated: readonly StatedRule[];
  /** Their results as a whole, on no document. */
  readonly whole: readonly RuleResult[];
}

const statedOf = ({ checks: _, result: __, ...stated }: Rule): StatedRule => stated;

const ranElsewhere = (rules: readonly Rule[]): readonly Rule[] => rules.filter(({ result }) => result !== undefined);

/** The results on a document of rules that ran elsewhere; on none, what is said of all. */
export const resultsOn = (rules: readonly Rule[], file = ""): readonly RuleResult[] =>
  ranElsewhere(rules).map((rule) => resultOn(rule, file));

export const pluginResultsOf = (rules: readonly Rule[]): TransferredResults => ({
  stated: ranElsewhere(rules).map(statedOf),
  whole: resultsOn(rules),
});

/** Whether these are rules a worker has by itself, and after them only such as ran elsewhere. */
export const isTransferable = (rules: readonly Rule[]): boolean =>
  rules.length >= builtIn.length &&
  rules.every((rule, index) => (index < builtIn.length ? rule === builtIn[index] : rule.result !== undefined));

/** All rules again, with the results of those of plugins on each document. */
export function rulesWith(
  { stated, whole }: TransferredResults,
  on: ReadonlyMap<string, readonly RuleResult[]>,
): readonly Rule[] {
  const found = (index: number) => (file: string) => (file === "" ? whole : on.get(file))?.[index];
  return [...builtIn, ...stated.map((each, index) => ruleWithResults(each, found(index)))];
}
