import { type Rule, type RuleResult, resultOn, ruleWithResults, type StatedRule } from "@plumbmark/core";
import { rules as builtIn } from "@plumbmark/rules";

// Code cannot be sent to a thread. A rule of a plugin is carried out in the plugin's process, so what it states and what
// it came to are plain data, and a thread joins them to what its own rules find.

/** Rules that were carried out elsewhere, as plain data. */
export interface Brought {
  readonly stated: readonly StatedRule[];
  /** What they came to as a whole, on no document. */
  readonly whole: readonly RuleResult[];
}

const statedOf = ({ checks: _, result: __, ...stated }: Rule): StatedRule => stated;

const elsewhere = (rules: readonly Rule[]): readonly Rule[] => rules.filter(({ result }) => result !== undefined);

/** What rules that were carried out elsewhere came to on a document; on none, what is said of all. */
export const outcomesOn = (rules: readonly Rule[], file = ""): readonly RuleResult[] =>
  elsewhere(rules).map((rule) => resultOn(rule, file));

export const broughtBy = (rules: readonly Rule[]): Brought => ({
  stated: elsewhere(rules).map(statedOf),
  whole: outcomesOn(rules),
});

/** Whether these are rules a thread has by itself, and after them only such as were carried out elsewhere. */
export const canBeSent = (rules: readonly Rule[]): boolean =>
  rules.length >= builtIn.length &&
  rules.every((rule, index) => (index < builtIn.length ? rule === builtIn[index] : rule.result !== undefined));

/** All rules again, with what those of plugins came to on each document. */
export function rulesFrom({ stated, whole }: Brought, on: ReadonlyMap<string, readonly RuleResult[]>): readonly Rule[] {
  const found = (index: number) => (file: string) => (file === "" ? whole : on.get(file))?.[index];
  return [...builtIn, ...stated.map((each, index) => ruleWithResults(each, found(index)))];
}
