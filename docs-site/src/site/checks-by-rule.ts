import type { DocumentSummary, OutcomeCounts } from "./document-summary.js";
import type { SiteWithDocuments } from "./site.js";

/** How the checks of one rule came out in one build. */
export interface RuleInDocument {
  readonly document: DocumentSummary;
  readonly counts: OutcomeCounts;
}

const kept = new WeakMap<SiteWithDocuments, ReadonlyMap<string, readonly RuleInDocument[]>>();

function sorted({ documents }: SiteWithDocuments): ReadonlyMap<string, readonly RuleInDocument[]> {
  const rules = new Map<string, RuleInDocument[]>();
  for (const document of documents)
    for (const [rule, counts] of Object.entries(document.judged)) {
      const all = rules.get(rule);
      if (all) all.push({ document, counts });
      else rules.set(rule, [{ document, counts }]);
    }
  return rules;
}

/** What a rule had to say of every build; gone through once for all rules. */
export function judgedBy(rule: string, site: SiteWithDocuments): readonly RuleInDocument[] {
  const all = kept.get(site) ?? sorted(site);
  kept.set(site, all);
  return all.get(rule) ?? [];
}
