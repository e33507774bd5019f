import { contractProblems, type Rule } from "@plumbmark/core";
import type { Case, CaseContext, CaseOutcome } from "./case.js";
import { compare } from "./compare.js";
import { type FoundCheck, runCase } from "./run-case.js";

export type { Case, CaseContext, CaseOutcome, Expectation } from "./case.js";
export type { FoundCheck } from "./run-case.js";

/** One thing to try: `name` for the test runner, `run` throws an Error that tells what was expected and what was found. */
export interface Trial {
  readonly name: string;
  readonly run: () => void;
}

const OUTCOMES: readonly CaseOutcome[] = ["holds", "fails", "open"];

function refuse(heading: string, lines: readonly string[]): void {
  if (lines.length > 0) throw new Error(`${heading}\n${lines.join("\n")}`);
}

const outcomesOf = ({ expects }: Case): readonly CaseOutcome[] =>
  typeof expects === "string" ? [expects] : expects.map(({ outcome }) => outcome);

/** A rule whose limits nothing ever meets, or breaks, has not been tried out. */
function uncovered(cases: readonly Case[], never: readonly CaseOutcome[]): readonly string[] {
  const covered = cases.flatMap(outcomesOf);
  return OUTCOMES.filter((each) => !never.includes(each) && !covered.includes(each)).map(
    (each) => `  there is no case that ${each === "open" ? "is open" : each}`,
  );
}

function tryCase(rule: Rule, trial: Case, context: CaseContext): void {
  const heading = `${rule.id}, ${trial.name}`;
  const { checks, slips } = runCase(rule, trial, context);
  refuse(
    `${heading}: the case itself has mistakes`,
    slips.map((slip) => `  ${slip}`),
  );
  refuse(heading, compare(trial.expects, checks));
}

/**
 * What there is to try of a rule, for any test runner: `for (const { name, run } of trials(rule, cases)) test(name, run);`.
 * The first is the contract: page, id, sources, settings, and a case of each outcome.
 */
export const trials = (rule: Rule, cases: readonly Case[], context: CaseContext = {}): readonly Trial[] => [
  {
    name: "keeps the contract",
    run: () =>
      refuse(`The rule ${String(rule.id)} does not keep its contract`, [
        ...contractProblems(rule).map((problem) => `  ${problem}`),
        ...uncovered(cases, context.never ?? []),
      ]),
  },
  ...cases.map((each) => ({ name: each.name, run: () => tryCase(rule, each, context) })),
];

/** Tries everything at once. @throws Error with every comparison that does not agree */
export function tryOut(rule: Rule, cases: readonly Case[], context: CaseContext = {}): void {
  const found = trials(rule, cases, context).flatMap(({ run }) => {
    try {
      run();
      return [];
    } catch (error) {
      return [error instanceof Error ? error.message : String(error)];
    }
  });
  if (found.length > 0) throw new Error(found.join("\n\n"));
}

/** The checks of a rule on a case, to look at one by one. */
export const checksOf = (rule: Rule, trial: Case, context: CaseContext = {}): readonly FoundCheck[] =>
  runCase(rule, trial, context).checks;
