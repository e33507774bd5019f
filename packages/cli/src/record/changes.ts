import {
  type AgainstEntry,
  type CheckEntry,
  type DocumentEntry,
  type InspectionRecord,
  totalsOf,
  type Verdict,
  verdictOf,
} from "@plumbmark/core";

/** One document whose verdict is another by the new house standard, with the checks that make it so. */
export interface VerdictChange {
  readonly file: string;
  readonly was: Verdict;
  readonly is: Verdict;
  /** Checks that stand against it now and did not before. */
  readonly appears: readonly CheckEntry[];
  /** Checks that stood against it and do no longer. */
  readonly goes: readonly CheckEntry[];
}

/**
 * An approval is of the house standard, too: another one ends it. Which documents the other one changes besides is what
 * is asked, so that alone is not held against them.
 */
function apartFromItsEnd(entry: DocumentEntry): DocumentEntry {
  const checks = entry.checks.filter(
    ({ rule, at, outcome }) => rule !== "document.sign-off" || at.path !== "approved.code" || outcome !== "fails",
  );
  if (checks.length === entry.checks.length) return entry;
  const counts = { ...entry.counts, checks: entry.counts.checks - 1, fails: entry.counts.fails - 1 };
  return { ...entry, checks, counts, verdict: verdictOf(checks, entry.status) };
}

/** A record for comparing house standards: that another one ends every approval is not held against a document. */
export const apartFromApprovals = (record: InspectionRecord): InspectionRecord => {
  const documents = record.documents.map(apartFromItsEnd);
  return { ...record, documents, totals: totalsOf(documents) };
};

/** What counts against a verdict. */
export const against = (checks: readonly CheckEntry[]): readonly CheckEntry[] =>
  checks.filter(({ level, outcome }) => level === "shall" && (outcome === "fails" || outcome === "open"));

const keyOf = ({ rule, at, outcome }: CheckEntry): string => `${rule} ${outcome} ${at.path}`;

export const without = (checks: readonly CheckEntry[], others: readonly CheckEntry[]): readonly CheckEntry[] => {
  const known = new Set(others.map(keyOf));
  return checks.filter((check) => !known.has(keyOf(check)));
};

/** Documents whose verdict differs between two records of the same files. */
export function verdictChanges(now: InspectionRecord, before: InspectionRecord): readonly VerdictChange[] {
  const earlier = new Map(before.documents.map((each) => [each.file, each]));
  return now.documents.flatMap((document) => {
    const was = earlier.get(document.file);
    if (!was || was.verdict === document.verdict) return [];
    const [is, then] = [against(document.checks), against(was.checks)];
    const change = { appears: without(is, then), goes: without(then, is) };
    return [{ file: document.file, was: was.verdict, is: document.verdict, ...change }];
  });
}

/** The comparison as it stands in a record. */
export const changesEntry = (before: InspectionRecord, changes: readonly VerdictChange[]): AgainstEntry => ({
  standard: before.standard,
  documents: changes.map(({ file, was, is }) => ({ file, was, is })),
});
