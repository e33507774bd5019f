import type { CheckEntry } from "@plumbmark/core";
import type { Published } from "./documents.js";
import type { Site } from "./site.js";

/** The checks one rule made of one build. */
export interface Judged {
  readonly document: Published;
  readonly checks: CheckEntry[];
}

const kept = new WeakMap<Site, ReadonlyMap<string, readonly Judged[]>>();

function sorted({ documents }: Site): ReadonlyMap<string, readonly Judged[]> {
  const rules = new Map<string, Judged[]>();
  for (const document of documents)
    for (const check of document.entry.checks) {
      const all = rules.get(check.rule);
      const last = all?.at(-1);
      if (last?.document === document) last.checks.push(check);
      else if (all) all.push({ document, checks: [check] });
      else rules.set(check.rule, [{ document, checks: [check] }]);
    }
  return rules;
}

/** What a rule had to say of every build; gone through once for all rules. */
export function judgedBy(rule: string, site: Site): readonly Judged[] {
  const all = kept.get(site) ?? sorted(site);
  kept.set(site, all);
  return all.get(rule) ?? [];
}
