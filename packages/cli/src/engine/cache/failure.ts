import type { RuleResult } from "@plumbmark/core";

/** What a plugin could not do this time it may do the next: it is not kept. */
export const isFailure = (outcome: RuleResult): boolean =>
  "failed" in outcome || outcome.checks.some(({ rule, outcome: came }) => rule === "plugin.failed" && came === "fails");
