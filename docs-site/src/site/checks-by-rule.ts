import type { Counts, Listed } from "./document-summary.js";
import type { Whole } from "./site.js";

/** How the checks of one rule came out in one build. */
export interface Judged {
  readonly document: Listed;
  readonly counts: Counts;
}

const kept = new WeakMap<Whole, ReadonlyMap<string, readonly Judged[]>>();

function sorted({ documents }: Whole): ReadonlyMap<string, readonly Judged[]> {
  const rules = new Map<string, Judged[]>();
  for (const document of documents)
    for (const [rule, counts] of Object.entries(document.judged)) {
      const all = rules.get(rule);
      if (all) all.push({ document, counts });
      else rules.set(rule, [{ document, counts }]);
    }
  return rules;
}

/** What a rule had to say of every build; gone through once for all rules. */
export function judgedBy(rule: string, site: Whole): readonly Judged[] {
  const all = kept.get(site) ?? sorted(site);
  kept.set(site, all);
  return all.get(rule) ?? [];
}
