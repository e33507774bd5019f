import type { System } from "@plumbmark/calc";
import type { Data } from "../document/yaml/yaml.js";
import type { Build } from "../model/build.js";
import { noting, Reads } from "../model/reading/reads.js";
import { applyWaivers, waiverEntries } from "../waivers/apply.js";
import type { DocumentModel } from "./document-model.js";
import type { InspectionTask } from "./judge-document.js";
import { type CheckEntry, countsOf, type DocumentEntry, verdictOf } from "./record.js";
import { explainMistakes } from "./second-look/explain-mistakes.js";
import { sureChecks } from "./second-look/sure-checks.js";
import { withTurns } from "./second-look/with-turns.js";
import { useEntries } from "./together/uses.js";

/** A document's entry of the record with the model it was judged by. */
export interface Inspected {
  readonly entry: DocumentEntry;
  readonly build: Build;
  /** System of units its author writes in. */
  readonly system: System;
  /** The same checks, each with the figure at which it turns; only where that is told later than the rest. */
  readonly turned?: () => readonly CheckEntry[];
}

/** What it uses; while it is written, not worked out again while what that rests on is the same. */
function usesIn({ build, kept }: DocumentModel): Pick<DocumentEntry, "uses"> {
  const reads = new Reads();
  const uses = kept?.uses ?? { entries: kept ? noting(reads, () => useEntries(build)) : useEntries(build), reads };
  if (kept) kept.uses = uses;
  return uses.entries ? { uses: uses.entries } : {};
}

/** A draft is approved by nobody, and what cannot be read has no content to approve. */
function approvalIn(build: Build): Pick<DocumentEntry, "approval"> {
  if (build.reader.text("status") === "draft") return {};
  const { state, code, by, on, given } = build.approval;
  if (code === undefined) return {};
  const said = Object.entries({ by: by?.name, on, given }).filter(([, text]) => text !== undefined);
  return { approval: { state, code, ...Object.fromEntries(said) } };
}

const sortedByLine = (checks: readonly CheckEntry[]): readonly CheckEntry[] =>
  checks
    .map((check, index) => ({ check, index }))
    .sort((a, b) => a.check.at.line - b.check.at.line || a.index - b.index)
    .map(({ check }) => check);

/** Puts every rule to a document and makes its entry; the checks that hold are listed if the subject says so. */
export function inspectDocument(model: DocumentModel, asked: InspectionTask): Inspected {
  const { build, system } = model;
  const { chain, every = true } = asked.subject;
  const waived = applyWaivers(explainMistakes(model, sureChecks(model, asked), asked), build);
  const turned = (): readonly CheckEntry[] => sortedByLine(withTurns(waived, model, asked));
  const later = model.kept !== undefined;
  const sorted = later || asked.turns === false ? sortedByLine(waived) : turned();
  const listed = (checks: readonly CheckEntry[]): readonly CheckEntry[] =>
    every ? checks : checks.filter((check) => check.outcome !== "holds");
  const data = (build.reader.placed.data ?? {}) as Record<string, Data>;
  const text = (key: string): Record<string, string> =>
    typeof data[key] === "string" ? { [key]: data[key] as string } : {};
  const entry: DocumentEntry = {
    file: build.context.file,
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
    checks: listed(sorted),
    ...(build.waivers.length > 0 ? { waivers: waiverEntries(build) } : {}),
    ...usesIn(model),
  };
  return { entry, build, system, ...(later ? { turned: () => listed(turned()) } : {}) };
}
