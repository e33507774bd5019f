import { printer, type System } from "@plumbmark/calc";
import type { Data } from "../document/yaml.js";
import type { Build } from "../model/build.js";
import { systemOf } from "../model/reading/system.js";
import type { ReadDocument } from "../repository/outline.js";
import type { StandardChain } from "../standard/chain.js";
import { applyWaivers, waiverEntries } from "../waivers/apply.js";
import { mistakeEntry } from "./mistake-entry.js";
import { type Models, modelOf } from "./models.js";
import { type CheckEntry, countsOf, type DocumentEntry, verdictOf } from "./record.js";
import type { Rule } from "./rule.js";
import { runRule } from "./run-rule.js";

/** A document's entry of the record with the model it was judged by. */
export interface Inspected {
  readonly entry: DocumentEntry;
  readonly build: Build;
  /** System of units its author writes in. */
  readonly system: System;
}

/** What waivers excuse is known once everything else has been looked at. */
const waiversLast = (rules: readonly Rule[]): readonly Rule[] => {
  const last = (rule: Rule): boolean => rule.id === "document.waivers";
  return [...rules.filter((rule) => !last(rule)), ...rules.filter(last)];
};

/** A draft is approved by nobody, and what cannot be read has no content to approve. */
function approvalIn(build: Build): Pick<DocumentEntry, "approval"> {
  if (build.reader.text("status") === "draft") return {};
  const { state, code, by, on, given } = build.approval;
  if (code === undefined) return {};
  const said = Object.entries({ by: by?.name, on, given }).filter(([, text]) => text !== undefined);
  return { approval: { state, code, ...Object.fromEntries(said) } };
}

export function inspectDocument(
  opened: ReadDocument,
  context: Models,
  chain: StandardChain,
  rules: readonly Rule[],
  every: boolean,
): Inspected {
  const { build, mistakes } = modelOf(opened, context);
  const system = systemOf(build.reader, build.practice);
  const print = printer(system);
  const checks: CheckEntry[] = mistakes.map((mistake) => mistakeEntry(mistake, "shall"));
  for (const rule of waiversLast(rules)) {
    const found = runRule(rule, { build, print, chain, repository: context.repository, every });
    // A rule that could not be run has found nothing, and what it would have found is not known.
    if (found.every((check) => check.rule === rule.id))
      build.context.findings.set(rule.id, [...checks.filter((check) => check.rule === rule.id), ...found]);
    checks.push(...found);
  }
  const judged = applyWaivers(checks, build, context.today);
  const sorted = judged
    .map((check, index) => ({ check, index }))
    .sort((a, b) => a.check.at.line - b.check.at.line || a.index - b.index)
    .map(({ check }) => check);
  const data = (opened.placed?.data ?? {}) as Record<string, Data>;
  const text = (key: string): Record<string, string> =>
    typeof data[key] === "string" ? { [key]: data[key] as string } : {};
  const entry: DocumentEntry = {
    file: opened.file.path,
    ...text("build"),
    ...text("title"),
    ...(Number.isInteger(data.revision) || typeof data.revision === "string"
      ? { revision: data.revision as number | string }
      : {}),
    ...text("status"),
    ...(chain[0].file === undefined ? {} : { standards: chain.map(({ file }) => file as string) }),
    verdict: verdictOf(sorted, text("status").status),
    counts: countsOf(sorted),
    ...approvalIn(build),
    checks: every ? sorted : sorted.filter((check) => check.outcome !== "holds"),
    ...(build.waivers.length > 0 ? { waivers: waiverEntries(build) } : {}),
  };
  return { entry, build, system };
}
