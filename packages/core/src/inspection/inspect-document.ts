import { printer, type System } from "@plumbmark/calc";
import { asMeant } from "../document/edited.js";
import type { Mistake } from "../document/mistake.js";
import type { Unsure, World } from "../document/unsure.js";
import type { Data } from "../document/yaml/yaml.js";
import { type Cause, withCauses } from "../findings/consequences.js";
import { TURNS } from "../findings/turns.js";
import { otherEnds, restingOnGuesses, withinBounds, withoutGuesses } from "../findings/unsure-checks.js";
import type { Build } from "../model/build.js";
import { type ReadDocument, readDocument, withChanges } from "../repository/outline.js";
import { catalogueIn } from "../repository/parts.js";
import { applyWaivers, waiverEntries } from "../waivers/apply.js";
import { type DocumentModel, modelOf } from "./document-model.js";
import type { Rule } from "./judging/rule.js";
import { runRule, type Subject } from "./judging/run-rule.js";
import { mistakeEntry } from "./mistake-entry.js";
import { type CheckEntry, countsOf, type DocumentEntry, verdictOf } from "./record.js";
import type { Snapshot } from "./snapshot.js";
import { type Attempt, turnsAt, type Written } from "./turning.js";

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

/** A document that is inspected, and what it is inspected by. */
export interface InspectionTask {
  readonly document: ReadDocument;
  readonly snapshot: Snapshot;
  /** Everything to run rules by but the build. */
  readonly subject: Omit<Subject, "build" | "print">;
  readonly rules: readonly Rule[];
}

/** Puts every rule to a document, whose mistakes come first; waivers are not looked at yet. */
function judged({ build, system, mistakes }: DocumentModel, { subject, rules }: InspectionTask): readonly CheckEntry[] {
  const print = printer(system);
  const checks: CheckEntry[] = mistakes.map((mistake) => mistakeEntry(mistake, "shall"));
  for (const rule of waiversLast(rules)) {
    const found = runRule(rule, { ...subject, build, print });
    // A rule that could not be run has found nothing, and what it would have found is not known.
    if (found.every((check) => check.rule === rule.id))
      build.context.findings.set(rule.id, [...checks.filter((check) => check.rule === rule.id), ...found]);
    checks.push(...found);
  }
  return checks;
}

/** Mistakes of the catalogue: a check waits for one only if it would come out otherwise without it. */
const catalogueCauses = ({ catalogue }: Snapshot): readonly Cause[] =>
  [...catalogue.mistakes].flatMap(([file, mistakes]) => mistakes.map((mistake) => ({ file, mistake })));

const isForm = ({ rule }: Mistake): boolean => rule === "document.front-matter";

/** Tells what only follows from mistakes: first of the document's form, then of the catalogue, then of what the document refers to. */
function explained(model: DocumentModel, checks: readonly CheckEntry[], asked: InspectionTask): readonly CheckEntry[] {
  const { mistakes } = model;
  const { document, snapshot } = asked;
  const catalogue = catalogueCauses(snapshot);
  if (mistakes.length === 0 && catalogue.length === 0) return checks;
  const meant = (which: (mistake: Mistake) => boolean, by: Snapshot): readonly CheckEntry[] | undefined => {
    const read = (text: string): DocumentModel => withText(text, model, by, asked);
    const text = asMeant(document.file.text, (each) => read(each).mistakes.filter(which));
    const same = text === document.file.text && by === snapshot;
    return same ? undefined : judged(read(text), { ...asked, subject: { ...asked.subject, every: false } });
  };
  const unread = (document.placed?.data ?? null) === null;
  let left = checks;
  const marked = new Map<CheckEntry, CheckEntry>();
  const mark = (causes: readonly Cause[], which: (mistake: Mistake) => boolean, by: Snapshot): void => {
    if (causes.length === 0) return;
    const made = withCauses(left, causes, { meant: meant(which, by), unread: unread && by === snapshot });
    for (const [at, check] of left.entries()) if (made[at] !== check) marked.set(check, made[at] as CheckEntry);
    left = left.filter((check) => !marked.has(check));
  };
  const own = (which: (mistake: Mistake) => boolean): readonly Cause[] =>
    mistakes.filter(which).map((mistake) => ({ mistake }));
  mark(own(isForm), isForm, snapshot);
  // A part that is not found may stand in a file that cannot be read.
  if (catalogue.length > 0) mark(catalogue, () => true, snapshot.withCatalogue(snapshot.catalogue.meant()));
  mark(
    own((mistake) => !isForm(mistake)),
    () => true,
    snapshot,
  );
  return checks.map((check) => marked.get(check) ?? check);
}

/** A document with another text; what is laid over it is laid over that, too, where it still leads to something. */
function rewritten(document: ReadDocument, text: string): ReadDocument {
  const other = readDocument({ ...document.file, text });
  const [first, ...others] = document.changes ?? [];
  if (!first) return other;
  try {
    return withChanges(other, [first, ...others]);
  } catch (error) {
    if (error instanceof RangeError) return document;
    throw error;
  }
}

/** The model of another text in place of a document's; what it looks at is noted with the rest. */
function withText(
  text: string,
  { build, trace }: DocumentModel,
  snapshot: Snapshot,
  { document }: InspectionTask,
): DocumentModel {
  const read = text === document.file.text ? document : rewritten(document, text);
  return modelOf(read, snapshot.withDocument(read), build.context.rules, trace);
}

/** Guesses and bounds of a document and of the catalogue; a part's stand under its name. */
const unsureIn = ({ unsure }: DocumentModel, { catalogue }: Snapshot): readonly Unsure[] => [
  ...unsure,
  ...[...catalogue.parts.values()].flatMap((part) =>
    part.unsure.map((each) => ({ ...each, path: `${part.name}.${each.path}` })),
  ),
];

/** The checks of a document; where something is not sure, what rests on it is looked at in other worlds and opened. */
function sureChecks(model: DocumentModel, asked: InspectionTask): readonly CheckEntry[] {
  const { document, snapshot, subject } = asked;
  const unsure = unsureIn(model, snapshot);
  if (unsure.length === 0) return judged(model, asked);
  // What holds has to be looked at again.
  const all = { ...asked, subject: { ...subject, every: true } };
  const inOther = (world: World): readonly CheckEntry[] => {
    const other = snapshot.withCatalogue(catalogueIn(snapshot.catalogue, world));
    return judged(modelOf(document, other, model.build.context.rules, model.trace, world), all);
  };
  const bounds = unsure.filter(({ other }) => other !== undefined);
  const guesses = unsure.filter(({ sure }) => sure === "guess");
  const ends = bounds.length === 0 ? [] : otherEnds(bounds);
  const bounded = withinBounds(
    judged(model, all),
    ends.map(({ at, world }) => ({ at, checks: inOther(world) })),
  );
  return guesses.length === 0 ? bounded : restingOnGuesses(bounded, guesses, inOther(withoutGuesses(guesses)));
}

/** So many findings of a document are told what would turn them. */
const MOST_TURNED = 16;

/** Tells of what does not hold and is going to be printed at which figure it would come out otherwise. */
function withTurns(checks: readonly CheckEntry[], model: DocumentModel, asked: InspectionTask): readonly CheckEntry[] {
  const { document, snapshot, rules, subject } = asked;
  const { build, system, trace } = model;
  const isTold = (check: CheckEntry): boolean =>
    check[TURNS] !== undefined && check.outcome !== "holds" && check.outcome !== "waived" && !check["follows-from"];
  const told = checks.filter(isTold).slice(0, MOST_TURNED);
  if (told.length === 0) return checks;
  const { reader } = build;
  const run = (id: string, by: DocumentModel): readonly CheckEntry[] => {
    const rule = rules.find((each) => each.id === id);
    return rule ? runRule(rule, { ...subject, build: by.build, print: printer(system), every: true }) : [];
  };
  const written: Written = {
    known: (path) => reader.quantities.get(path),
    whole: (path) => {
      const data = reader.data(path);
      return typeof data === "number" ? data : undefined;
    },
    system,
  };
  const attempt: Attempt = (rule, path, figure) => {
    // A pointer counts the items of a list from nought.
    const keys = path.split(".");
    const isThere = (length: number): boolean => {
      const data = reader.data(keys.slice(0, length).join("."));
      return typeof data === "object" && data !== null;
    };
    // What a figure stands in may not be written either: it is put there with it.
    const missing = keys.findIndex((_, index) => index > 0 && !isThere(index));
    const depth = missing < 0 ? keys.length : missing;
    const value = keys.slice(depth).reduceRight<Data>((inner, key) => ({ [key]: inner }), figure);
    const pointer = keys
      .slice(0, depth)
      .map((key, index) => (Array.isArray(reader.data(keys.slice(0, index).join("."))) ? String(Number(key) - 1) : key))
      .map((key) => `/${key}`)
      .join("");
    const read = withChanges(document, [{ op: "add", document: document.file.path, path: pointer, value }]);
    return run(rule, modelOf(read, snapshot.withDocument(read), build.context.rules, trace));
  };
  // Of several checks at one place each is found again by its turn among them.
  const as = new Map<string, readonly CheckEntry[]>();
  const indexOf = (check: CheckEntry): number => {
    const found = as.get(check.rule) ?? run(check.rule, model);
    as.set(check.rule, found);
    return found.filter(({ at }) => at.path === check.at.path).findIndex(({ says }) => says === check.says);
  };
  return checks.map((check) => {
    const index = told.includes(check) ? indexOf(check) : -1;
    const turns = index < 0 ? undefined : turnsAt(check, index, written, attempt);
    return turns ? { ...check, "turns-at": turns } : check;
  });
}

/** Puts every rule to a document and makes its entry; the checks that hold are listed if the subject says so. */
export function inspectDocument(model: DocumentModel, asked: InspectionTask): Inspected {
  const { build, system } = model;
  const { chain, every = true } = asked.subject;
  const waived = applyWaivers(explained(model, sureChecks(model, asked), asked), build);
  const sorted = withTurns(waived, model, asked)
    .map((check, index) => ({ check, index }))
    .sort((a, b) => a.check.at.line - b.check.at.line || a.index - b.index)
    .map(({ check }) => check);
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
    checks: every ? sorted : sorted.filter((check) => check.outcome !== "holds"),
    ...(build.waivers.length > 0 ? { waivers: waiverEntries(build) } : {}),
  };
  return { entry, build, system };
}
