import type { CheckEntry } from "@plumbmark/core";
import type { Judged } from "./inspect-many.js";

type Sources = CheckEntry["sources"];

/**
 * Gives what documents came to with one and the same list wherever checks rest on the same sources. Every answer of a
 * thread brings the words of each source anew: of thousands of documents they would take more room than all the rest.
 */
export function shareSources(): (judged: Judged) => Judged {
  const known = new Map<string, Sources>();
  const same = (sources: Sources): Sources => {
    const key = JSON.stringify(sources);
    const found = known.get(key) ?? sources;
    known.set(key, found);
    return found;
  };
  return ({ entry, ...rest }) => ({
    entry: { ...entry, checks: entry.checks.map((check) => ({ ...check, sources: same(check.sources) })) },
    ...rest,
  });
}
