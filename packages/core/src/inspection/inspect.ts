import { isThere, targetOf } from "../document/links.js";
import type { Build } from "../model/build.js";
import { Repository } from "../model/repository.js";
import type { DocumentFile, RepositoryFiles } from "../repository/files.js";
import type { HouseStandardSettings } from "../repository/house-standard.js";
import { type ReadDocument, readDocument } from "../repository/outline.js";
import type { Catalogue } from "../repository/parts.js";
import type { Stock } from "../repository/stock.js";
import type { Standards } from "../standard/chain.js";
import { contextFrom, contextOf, type InspectionContext, knownOutline } from "./context.js";
import type { Inspected } from "./inspect-document.js";
import { buildOf, type Models, modelsOf } from "./models.js";
import { type InspectOptions, prepare } from "./prepare.js";
import type { DocumentEntry, InspectionRecord } from "./record.js";
import { recordOf } from "./record-of.js";
import type { Rule } from "./rule.js";

/** Whether a Markdown file is a build document: its front matter has the key `build`, or was meant to and cannot be read. */
export const isBuildDocument = (text: string): boolean =>
  /^---[ \t]*$[\s\S]*?^(?:\{\s*)?["']?build["']?\s*:/mu.test(text.slice(0, 200_000));

const waysOf = ({ context, links }: Build): Readonly<Record<string, boolean>> =>
  Object.fromEntries(
    links
      .map(({ url }) => (url === "" || url.startsWith("#") ? undefined : targetOf(url, context.file)))
      .filter((target) => target !== undefined)
      .map((target) => [target, isThere(context.files, target)]),
  );

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

/** Inspects every build document of a repository and keeps the models. @throws StandardError */
export function inspection(files: RepositoryFiles, rules: readonly Rule[], options: InspectOptions): Inspection {
  const context = contextOf(files, options.today);
  const { all, ids, inspectOne } = prepare(context, rules, options);
  const models = modelsOf(context, () => context.opened, ids);
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

/** Result of one document, and what it depends on besides the document, the parts, the stock and the house standards. */
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

/** Result of each document, for whoever stores it. @throws StandardError when the house standard cannot be used. */
export const inspectEach = (
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
): readonly Judged[] => files.documents.map(inspector(files, rules, options));

/** Result of one document, with its model. */
export type Modelled = Inspected & Judged;

/**
 * Inspects documents one by one and gives each with its model, which nothing here holds on to: those of `files`, or any
 * whose outlines are among the others. Their prose is read, to be shown.
 * @throws StandardError when the house standard cannot be used.
 */
export const modeller = (
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
): ((file: DocumentFile) => Modelled) =>
  modellerOf(
    (file) => readDocument(file, true),
    files,
    contextFrom(files, files.documents.map(knownOutline), options.today),
    rules,
    options,
  );

function inspectorOf(
  files: RepositoryFiles,
  context: InspectionContext,
  rules: readonly Rule[],
  options: InspectOptions,
): (file: DocumentFile) => Judged {
  const model = modellerOf(readDocument, files, context, rules, options);
  return (file) => {
    const { entry, ways, looksAround } = model(file);
    return { entry, ways, looksAround };
  };
}

function modellerOf(
  read: (file: DocumentFile) => ReadDocument,
  files: RepositoryFiles,
  context: InspectionContext,
  rules: readonly Rule[],
  options: InspectOptions,
): (file: DocumentFile) => Modelled {
  const { ids, inspectOne } = prepare(context, rules, options);
  let looksAround = false;
  const whole = (): readonly Build[] => {
    looksAround = true;
    return files.documents.map((file) => buildOf(read(file), models).build);
  };
  const repository = new Repository(context, whole);
  const models: Models = { ...context, rules: ids, repository, made: new Map() };
  return (file) => {
    const inspected = inspectOne(read(file), { ...models, made: new Map() });
    return { ...inspected, ways: waysOf(inspected.build), looksAround };
  };
}
