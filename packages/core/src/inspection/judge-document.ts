import { printer } from "@plumbmark/calc";
import { noting, Reads } from "../model/reading/reads.js";
import type { ReadDocument } from "../repository/outline.js";
import type { DocumentModel, KeptFindings } from "./document-model.js";
import type { Rule } from "./judging/rule.js";
import { runRule, type Subject } from "./judging/run-rule.js";
import { mistakeEntry } from "./mistake-entry.js";
import type { CheckEntry } from "./record.js";
import type { Snapshot } from "./snapshot.js";

/** What waivers excuse is known once everything else has been looked at. */
const waiversLast = (rules: readonly Rule[]): readonly Rule[] => {
  const last = (rule: Rule): boolean => rule.id === "document.waivers";
  return [...rules.filter((rule) => !last(rule)), ...rules.filter(last)];
};

/** A document that is inspected, and what it is inspected by. */
export interface InspectionTask {
  readonly document: ReadDocument;
  readonly snapshot: Snapshot;
  /** Everything to run rules by but the build. */
  readonly subject: Omit<Subject, "build" | "print">;
  readonly rules: readonly Rule[];
  /** Whether it is told at which figures findings turn; true when left out. */
  readonly turns?: boolean;
}

/** What a rule finds is kept with what it looked at: while that is the same, it is not asked again. */
function kept(rule: Rule, every: boolean, { checks }: KeptFindings, run: () => readonly CheckEntry[]) {
  const known = checks.get(rule);
  if (known?.every === every) return known.found;
  const reads = new Reads();
  const found = noting(reads, run);
  checks.set(rule, { every, found, reads });
  return found;
}

/** Puts every rule to a document, whose mistakes come first; waivers are not looked at yet. */
export function judgeDocument(model: DocumentModel, { subject, rules }: InspectionTask): readonly CheckEntry[] {
  const { build, system, mistakes } = model;
  const { every = true } = subject;
  const print = printer(system);
  const checks: CheckEntry[] = mistakes.map((mistake) => mistakeEntry(mistake, "shall", build.text));
  for (const rule of waiversLast(rules)) {
    const asked = { ...subject, build, print };
    const found = model.kept ? kept(rule, every, model.kept, () => runRule(rule, asked)) : runRule(rule, asked);
    // A rule that could not be run has found nothing, and what it would have found is not known.
    if (found.every((check) => check.rule === rule.id))
      build.context.findings.set(rule.id, [...checks.filter((check) => check.rule === rule.id), ...found]);
    checks.push(...found);
  }
  return checks;
}
