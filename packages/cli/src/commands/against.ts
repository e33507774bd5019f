import {
  type AgainstEntry,
  type DocumentEntry,
  type InspectionRecord,
  inspect,
  type Verdict,
  verdictOf,
} from "@plumbmark/core";
import type { Check } from "../report/form.js";
import { partOf } from "../report/part-of.js";
import { type Opening, open } from "./open.js";

/** One document whose verdict is another by the new house standard, with the checks that make it so. */
export interface Change {
  readonly file: string;
  readonly was: Verdict;
  readonly is: Verdict;
  /** Checks that stand against it now and did not before. */
  readonly appears: readonly Check[];
  /** Checks that stood against it and do no longer. */
  readonly goes: readonly Check[];
}

/**
 * An approval is of the house standard, too: another one ends it. Which documents the other one changes besides is what
 * is asked, so that alone is not held against them.
 */
function apartFromItsEnd(entry: DocumentEntry): DocumentEntry {
  const checks = entry.checks.filter(
    ({ rule, at, outcome }) => rule !== "document.sign-off" || at.path !== "approved.code" || outcome !== "fails",
  );
  return checks.length === entry.checks.length
    ? entry
    : {
        ...entry,
        checks,
        counts: { ...entry.counts, checks: entry.counts.checks - 1, fails: entry.counts.fails - 1 },
        verdict: verdictOf(checks, entry.status),
      };
}

/** The record of the documents that were asked for, by one house standard. */
export async function recordBy(wanted: Opening, every: boolean): Promise<InspectionRecord> {
  const { files, rules, unreadable, wants } = await open(wanted);
  const record = inspect(files, rules, { today: wanted.today, every });
  const documents = record.documents.map(apartFromItsEnd);
  return partOf(
    { ...record, documents },
    unreadable,
    (file) => !files.documents.some(({ path }) => path === file) || wants(file),
  );
}

/** What counts against a verdict. */
export const against = (checks: readonly Check[]): readonly Check[] =>
  checks.filter(({ level, outcome }) => level === "shall" && (outcome === "fails" || outcome === "open"));

const keyOf = ({ rule, at, outcome }: Check): string => `${rule} ${outcome} ${at.path}`;

export const without = (checks: readonly Check[], others: readonly Check[]): readonly Check[] => {
  const known = new Set(others.map(keyOf));
  return checks.filter((check) => !known.has(keyOf(check)));
};

/** A record for comparing house standards: that another one ends every approval is not held against a document. */
export const apartFromApprovals = (record: InspectionRecord): InspectionRecord => ({
  ...record,
  documents: record.documents.map(apartFromItsEnd),
});

/** Documents whose verdict differs between two records of the same files. */
export function changesBetween(now: InspectionRecord, before: InspectionRecord): readonly Change[] {
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
export const againstEntry = (before: InspectionRecord, changes: readonly Change[]): AgainstEntry => ({
  standard: before.standard,
  documents: changes.map(({ file, was, is }) => ({ file, was, is })),
});
