import { printer, type System } from "@plumbmark/calc";
import { isThere, targetOf } from "../document/links.js";
import type { Mistake } from "../document/mistake.js";
import { START } from "../document/place.js";
import { readQuantities } from "../document/quantities.js";
import { validate } from "../document/validate.js";
import type { Data, Placed } from "../document/yaml.js";
import { buildSchema } from "../generated/schemas.js";
import type { Promised } from "../model/bookings.js";
import { Build } from "../model/build.js";
import { Reader } from "../model/reader.js";
import { Repository } from "../model/repository.js";
import { systemOf } from "../model/system.js";
import { ownRules } from "../own-rules/own-rules.js";
import type { DocumentFile, Outline, RepositoryFiles } from "../repository/files.js";
import type { HouseStandardSettings } from "../repository/house-standard.js";
import { type Opened, open, outlineOf } from "../repository/outline.js";
import { type Catalogue, readCatalogue } from "../repository/parts.js";
import { readStock, type Stock } from "../repository/stock.js";
import { type Chain, chainFor, mergedStandard, type Standards } from "../standard/chain.js";
import type { StandardFile } from "../standard/file.js";
import { checkStandards, openStandards } from "../standard/use.js";
import { applyWaivers, waiverEntries } from "../waivers/apply.js";
import { carryOut } from "./carry-out.js";
import { unusedPlugins } from "./outside.js";
import {
  type CheckEntry,
  countsOf,
  type DocumentEntry,
  type InspectionRecord,
  type StandardEntry,
  verdictOf,
} from "./record.js";
import type { Rule } from "./rule.js";
import { StandardError } from "./settings.js";

export interface InspectOptions {
  /** The day of the inspection, `2027-03-05`; waivers run out by it. */
  readonly today: string;
  /** List the checks that hold, too. */
  readonly every?: boolean;
  /** Ids of further rules that exist and are not applied this time; a waiver or a setting may name them. */
  readonly known?: readonly string[];
  /** Whether these very house standards were used before, by the same code: then no schema in them can be a mistake. */
  readonly accepted?: boolean;
}

/** Whether a Markdown file is a build document: its front matter has the key `build`, or was meant to and cannot be read. */
export const isBuildDocument = (text: string): boolean =>
  /^---[ \t]*$[\s\S]*?^(?:\{\s*)?["']?build["']?\s*:/mu.test(text.slice(0, 200_000));

const mistakeEntry = (mistake: Mistake, level: "shall"): CheckEntry => ({
  rule: mistake.rule,
  level,
  outcome: "fails",
  at: { path: mistake.path, ...mistake.place },
  says: mistake.says,
  mend: mistake.mend,
  sources: [],
});

/** Two rules of one name would be set, waived and listed as one. */
function refuseTwins(rules: readonly Rule[]): void {
  const ids = rules.map(({ id }) => id);
  const twin = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twin !== undefined)
    throw new StandardError(`${twin}: there is more than one rule of this name. Give one of them another.`);
}

/** Reads a document and makes its build model. */
export function buildOf(
  opened: Opened,
  context: Context,
): { readonly build: Build; readonly mistakes: readonly Mistake[] } {
  const placed: Placed = opened.placed ?? { data: null, places: new Map(), keys: new Map(), mistakes: [] };
  const sound = placed.mistakes.length === 0;
  const { values, mistakes: unread } = sound
    ? readQuantities(buildSchema, placed)
    : { values: new Map(), mistakes: [] };
  const shape = sound ? (placed.data === null ? [empty(opened)] : validate("build", placed)) : [];
  const reader = new Reader(placed, values, context.catalogue.parts);
  const sameName = context.names.get(opened.name ?? "") ?? [];
  const build = new Build(reader, opened.markdown, {
    file: opened.file.path,
    standard: mergedStandard(chainFor(context.standards, opened.file.path)),
    stock: context.stock,
    files: context.files,
    sameName,
    today: context.today,
    promises: context.promises,
    rules: context.rules ?? [],
    findings: new Map(),
    mistakes: [...placed.mistakes, ...shape, ...unread, ...(opened.markdown.refused ? [opened.markdown.refused] : [])],
  });
  return { build, mistakes: build.mistakes };
}

const empty = (opened: Opened): Mistake => ({
  rule: "document.front-matter",
  path: "",
  place: START,
  says: opened.file.text.trim() === "" ? "The file is empty." : "The file has no front matter that can be read.",
  mend: "Begin the file with a line `---`, the front matter with the key `build`, and a line `---`.",
});

export interface Context {
  /** The house standard of the root; a document in a folder with its own is judged by both. */
  readonly standard: HouseStandardSettings;
  readonly standards: Standards;
  readonly catalogue: Catalogue;
  readonly stock: ReturnType<typeof readStock>;
  readonly names: ReadonlyMap<string, readonly string[]>;
  readonly files: readonly string[];
  readonly today: string;
  readonly promises: readonly Promised[];
  /** Ids of the rules in force. */
  readonly rules?: readonly string[];
}

/** What surrounds the documents, and the models made of them so far: each document is read into one model. */
export interface Models extends Context {
  readonly repository: Repository;
  readonly made: Map<Opened, ReturnType<typeof buildOf>>;
}

/** The model of one document, made once. */
export function modelOf(opened: Opened, models: Models): ReturnType<typeof buildOf> {
  const made = models.made.get(opened) ?? buildOf(opened, models);
  models.made.set(opened, made);
  return made;
}

/** Makes the models of a repository's documents as they are asked for. */
export function modelsOf(context: ReturnType<typeof contextOf>, rules: readonly string[]): Models {
  const made: Models["made"] = new Map();
  const repository = new Repository(context, () => context.opened.map((each) => modelOf(each, models).build));
  const models: Models = { ...context, rules, made, repository };
  return models;
}

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

function inspectDocument(
  opened: Opened,
  context: Models,
  chain: Chain,
  rules: readonly Rule[],
  every: boolean,
): Inspected {
  const { build, mistakes } = modelOf(opened, context);
  const system = systemOf(build.reader, build.practice);
  const print = printer(system);
  const checks: CheckEntry[] = mistakes.map((mistake) => mistakeEntry(mistake, "shall"));
  for (const rule of waiversLast(rules)) {
    const found = carryOut(rule, { build, print, chain, repository: context.repository, every });
    // A rule that could not be carried out has found nothing, and what it would have found is not known.
    if (found.every((check) => check.rule === rule.id))
      build.around.findings.set(rule.id, [...checks.filter((check) => check.rule === rule.id), ...found]);
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
    checks: every ? sorted : sorted.filter((check) => check.outcome !== "holds"),
    ...(build.waivers.length > 0 ? { waivers: waiverEntries(build) } : {}),
  };
  return { entry, build, system };
}

const waysOf = ({ around, links }: Build): Readonly<Record<string, boolean>> =>
  Object.fromEntries(
    links
      .map(({ url }) => (url === "" || url.startsWith("#") ? undefined : targetOf(url, around.file)))
      .filter((target) => target !== undefined)
      .map((target) => [target, isThere(around.files, target)]),
  );

const fileEntry = (file: string, mistakes: readonly Mistake[]): DocumentEntry => {
  const checks = mistakes.map((mistake) => mistakeEntry(mistake, "shall"));
  return { file, verdict: "not ready", counts: countsOf(checks), checks };
};

const pathsOf = ({
  documents,
  others,
  parts,
  stock,
  houseStandard,
  folderStandards,
}: RepositoryFiles): readonly string[] =>
  [stock, houseStandard, ...documents, ...(others ?? []), ...parts, ...(folderStandards ?? [])].flatMap((file) =>
    file ? [file.path] : [],
  );

const standardEntry = ({ file, folder, settings }: StandardFile): StandardEntry => ({
  name: settings.name,
  ...(file === undefined ? {} : { file }),
  ...(folder === "" ? {} : { folder }),
  ...(settings.edition === undefined ? {} : { edition: settings.edition }),
  ...(settings["in-force"] === undefined ? {} : { "in-force": settings["in-force"] }),
});

/** Reads what surrounds the documents, whose outlines are given. @throws StandardError when the house standard cannot be used. */
export function contextFrom(files: RepositoryFiles, own: readonly Outline[], today: string): Context {
  const standards = openStandards(files);
  const outlines = [...own, ...(files.others ?? [])].sort((one, other) => (one.path < other.path ? -1 : 1));
  const names = new Map<string, string[]>();
  for (const { name, path } of outlines) if (name !== undefined) names.set(name, [...(names.get(name) ?? []), path]);
  return {
    standard: standards.root.settings,
    standards,
    catalogue: readCatalogue(files.parts),
    stock: readStock(files.stock),
    names,
    files: pathsOf(files),
    promises: outlines.flatMap(({ promises }) => promises),
    today,
  };
}

/** Reads what surrounds the documents, and the documents. @throws StandardError when the house standard cannot be used. */
export function contextOf(files: RepositoryFiles, today: string): Context & { readonly opened: readonly Opened[] } {
  const opened = files.documents.map(open);
  return { ...contextFrom(files, files.documents.map(knownOutline), today), opened };
}

/** Every rule and topic the house standards set or name, whether it exists or not. */
const namesSet = ({ root, folders }: Standards): readonly string[] =>
  [root, ...folders].flatMap(({ settings: { rules, topics, allows } }) => [
    ...Object.keys(rules),
    ...[...Object.keys(topics), ...allows].map((name) => (name.includes(".") ? name : `${name}.rules`)),
  ]);

/** The record of an inspection with the models behind it, for surfaces that show more than the record. */
export interface Inspection {
  readonly record: InspectionRecord;
  readonly standard: HouseStandardSettings;
  readonly standards: Standards;
  /** Every rule that was asked, those without code of any house standard among them. */
  readonly rules: readonly Rule[];
  readonly catalogue: Catalogue;
  readonly stock: Stock;
  /** By the document's path, in the record's order. */
  readonly builds: ReadonlyMap<string, Inspected>;
}

interface Prepared {
  /** Every rule that is asked. */
  readonly all: readonly Rule[];
  /** Ids a document may name; none are known for sure while a plugin could not be used. */
  readonly ids: readonly string[];
  readonly inspectOne: (opened: Opened, models: Models) => Inspected;
}

/** Puts the rules and the house standards together. @throws StandardError when they do not fit. */
function prepare({ standards }: Context, rules: readonly Rule[], options: InspectOptions): Prepared {
  const own = new Map([standards.root, ...standards.folders].map((each) => [each, ownRules(each, options.accepted)]));
  const all = [...rules, ...[...own.values()].flat()];
  const known = [...new Set([...all.map((rule) => rule.id), ...(options.known ?? [])])];
  // A plugin that could not be used has rules whose names nobody knows.
  const unnamed = unusedPlugins(rules).length > 0;
  refuseTwins(rules);
  checkStandards(standards, all, unnamed ? [...known, ...namesSet(standards)] : known);
  return {
    all,
    ids: unnamed ? [] : known,
    inspectOne: (opened, models) => {
      const chain = chainFor(standards, opened.file.path);
      const applied = [...rules, ...chain.flatMap((each) => own.get(each) ?? [])];
      return inspectDocument(opened, models, chain, applied, options.every ?? false);
    },
  };
}

function recordOf(files: RepositoryFiles, context: Context, entries: readonly DocumentEntry[]): InspectionRecord {
  const { standards } = context;
  const documents = [...entries];
  for (const [file, mistakes] of context.catalogue.mistakes) documents.push(fileEntry(file, mistakes));
  if (files.stock && context.stock.mistakes.length > 0)
    documents.push(fileEntry(files.stock.path, context.stock.mistakes));
  const total = (key: keyof DocumentEntry["counts"]): number =>
    documents.reduce((sum, { counts }) => sum + counts[key], 0);
  const ready = documents.filter(({ verdict }) => verdict === "ready").length;
  return {
    record: 1,
    standard: context.standard.name,
    standards: [standards.root, ...standards.folders].map(standardEntry),
    documents,
    totals: {
      documents: documents.length,
      ready,
      "not-ready": documents.length - ready,
      checks: total("checks"),
      holds: total("holds"),
      fails: total("fails"),
      open: total("open"),
      waived: total("waived"),
    },
  };
}

/** Inspects every build document of a repository and keeps the models. @throws StandardError */
export function inspection(files: RepositoryFiles, rules: readonly Rule[], options: InspectOptions): Inspection {
  const context = contextOf(files, options.today);
  const { all, ids, inspectOne } = prepare(context, rules, options);
  const models = modelsOf(context, ids);
  const inspected = context.opened.map((opened) => inspectOne(opened, models));
  const record = recordOf(
    files,
    context,
    inspected.map(({ entry }) => entry),
  );
  const { standard, standards, catalogue, stock } = context;
  const builds = new Map(inspected.map((each) => [each.entry.file, each]));
  return { record, standard, standards, rules: all, catalogue, stock, builds };
}

/**
 * Inspects every build document of a repository. One after another is read, judged and let go, so that memory does not
 * grow with their number; only a rule over the whole repository has all of them read.
 * @throws StandardError when the house standard cannot be used.
 */
export function inspect(files: RepositoryFiles, rules: readonly Rule[], options: InspectOptions): InspectionRecord {
  const context = contextFrom(files, files.documents.map(knownOutline), options.today);
  const inspectOne = inspectorOf(files, context, rules, options);
  const entries = files.documents.map((file) => inspectOne(file).entry);
  return recordOf(files, context, entries);
}

const knownOutline = (file: DocumentFile): Outline => file.outline ?? outlineOf(file);

/** What one document came to, and what that rests on besides the document, the parts, the stock and the house standards. */
export interface Judged {
  readonly entry: DocumentEntry;
  /** Paths its links were looked for at, and whether a file or a folder is there. */
  readonly ways: Readonly<Record<string, boolean>>;
  /** Whether a rule looked at the other builds; it may then rest on anything in them. */
  readonly looksAround: boolean;
}

/**
 * Inspects documents one by one: those of `files`, or any whose outlines are among the others.
 * @throws StandardError when the house standard cannot be used.
 */
export const inspector = (
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
): ((file: DocumentFile) => Judged) =>
  inspectorOf(files, contextFrom(files, files.documents.map(knownOutline), options.today), rules, options);

/** What each document comes to, for whoever keeps it. @throws StandardError when the house standard cannot be used. */
export const inspectEach = (
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
): readonly Judged[] => files.documents.map(inspector(files, rules, options));

/** What one document came to, with its model. */
export type Modelled = Inspected & Judged;

/**
 * Inspects documents one by one and gives each with its model, which nothing here holds on to: those of `files`, or any
 * whose outlines are among the others.
 * @throws StandardError when the house standard cannot be used.
 */
export const modeller = (
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
): ((file: DocumentFile) => Modelled) =>
  modellerOf(files, contextFrom(files, files.documents.map(knownOutline), options.today), rules, options);

function inspectorOf(...of: Parameters<typeof modellerOf>): (file: DocumentFile) => Judged {
  const model = modellerOf(...of);
  return (file) => {
    const { entry, ways, looksAround } = model(file);
    return { entry, ways, looksAround };
  };
}

function modellerOf(
  files: RepositoryFiles,
  context: Context,
  rules: readonly Rule[],
  options: InspectOptions,
): (file: DocumentFile) => Modelled {
  const { ids, inspectOne } = prepare(context, rules, options);
  let looksAround = false;
  const whole = (): readonly Build[] => {
    looksAround = true;
    return files.documents.map((file) => buildOf(open(file), models).build);
  };
  const repository = new Repository(context, whole);
  const models: Models = { ...context, rules: ids, repository, made: new Map() };
  return (file) => {
    const inspected = inspectOne(open(file), { ...models, made: new Map() });
    return { ...inspected, ways: waysOf(inspected.build), looksAround };
  };
}
