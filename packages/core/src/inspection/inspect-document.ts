import { printer, type System } from "@plumbmark/calc";
import { asMeant } from "../document/edited.js";
import type { Mistake } from "../document/mistake.js";
import type { Data } from "../document/yaml.js";
import { type Cause, withCauses } from "../findings/consequences.js";
import type { Build } from "../model/build.js";
import { systemOf } from "../model/reading/system.js";
import { promisesOf } from "../model/stock/bookings.js";
import { type ReadDocument, readDocument } from "../repository/outline.js";
import type { StandardChain } from "../standard/chain.js";
import { applyWaivers, waiverEntries } from "../waivers/apply.js";
import { mistakeEntry } from "./mistake-entry.js";
import { buildOf, type Models, modelOf } from "./models.js";
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

interface Judged extends ReturnType<typeof buildOf> {
  readonly system: System;
  readonly checks: readonly CheckEntry[];
}

/** Puts every rule to a document, whose mistakes come first; waivers are not looked at yet. */
function judged(made: ReturnType<typeof buildOf>, { context, chain, rules, every }: Asked): Judged {
  const { build, mistakes } = made;
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
  return { build, mistakes, system, checks };
}

interface Asked {
  readonly context: Models;
  readonly chain: StandardChain;
  readonly rules: readonly Rule[];
  readonly every: boolean;
}

/** Mistakes of the catalogue: a check waits for one only if it would come out otherwise without it. */
const catalogueCauses = ({ catalogue }: Models): readonly Cause[] =>
  [...catalogue.mistakes].flatMap(([file, mistakes]) => mistakes.map((mistake) => ({ file, mistake })));

const isForm = ({ rule }: Mistake): boolean => rule === "document.front-matter";

/** Tells what only follows from mistakes: first of the document's form, then of the catalogue, then of what the document refers to. */
function explained({ checks, mistakes }: Judged, opened: ReadDocument, asked: Asked): readonly CheckEntry[] {
  const { context } = asked;
  const catalogue = catalogueCauses(context);
  if (mistakes.length === 0 && catalogue.length === 0) return checks;
  const meant = (which: (mistake: Mistake) => boolean, models: Models): readonly CheckEntry[] | undefined => {
    const read = (text: string): ReturnType<typeof buildOf> => asWritten({ ...opened.file, text }, models);
    const text = asMeant(opened.file.text, (each) => read(each).mistakes.filter(which));
    const same = text === opened.file.text && models === context;
    return same ? undefined : judged(read(text), { ...asked, every: false }).checks;
  };
  const unread = (opened.placed?.data ?? null) === null;
  let left = checks;
  const marked = new Map<CheckEntry, CheckEntry>();
  const mark = (causes: readonly Cause[], which: (mistake: Mistake) => boolean, models: Models): void => {
    if (causes.length === 0) return;
    const made = withCauses(left, causes, { meant: meant(which, models), unread: unread && models === context });
    for (const [at, check] of left.entries()) if (made[at] !== check) marked.set(check, made[at] as CheckEntry);
    left = left.filter((check) => !marked.has(check));
  };
  const own = (which: (mistake: Mistake) => boolean): readonly Cause[] =>
    mistakes.filter(which).map((mistake) => ({ mistake }));
  mark(own(isForm), isForm, context);
  // A part that is not found may stand in a file that cannot be read.
  if (catalogue.length > 0) mark(catalogue, () => true, { ...context, catalogue: context.catalogue.meant() });
  mark(
    own((mistake) => !isForm(mistake)),
    () => true,
    context,
  );
  return checks.map((check) => marked.get(check) ?? check);
}

/** The model of another text in place of a document's, with what it takes out of the stock. */
function asWritten(file: ReadDocument["file"], models: Models): ReturnType<typeof buildOf> {
  const opened = readDocument(file);
  const others = models.promises.filter((each) => each.file !== file.path);
  return buildOf(opened, { ...models, promises: [...others, ...promisesOf(file.path, opened.placed?.data)] });
}

export function inspectDocument(
  opened: ReadDocument,
  context: Models,
  chain: StandardChain,
  rules: readonly Rule[],
  every: boolean,
): Inspected {
  const asked = { context, chain, rules, every };
  const first = judged(modelOf(opened, context), asked);
  const { build, system } = first;
  const waived = applyWaivers(explained(first, opened, asked), build, context.today);
  const sorted = waived
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
