import type { DocumentFile, RepositoryFiles } from "../repository/files.js";
import type { HouseStandardSettings } from "../repository/house-standard.js";
import type { Catalogue } from "../repository/parts.js";
import type { Stock } from "../repository/stock.js";
import type { Standards } from "../standard/chain.js";
import type { Inspected } from "./inspect-document.js";
import type { Rule } from "./judging/rule.js";
import { openRepository } from "./open-repository.js";
import type { InspectOptions } from "./prepare.js";
import type { DocumentEntry, InspectionRecord } from "./record.js";

// Ways to inspect from before there was `openRepository`. Each goes when nobody takes it any more.

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
  const repository = openRepository(files, rules, { ...options, keep: "models" });
  const builds = new Map(repository.documents.map((path) => [path, repository.one(path)]));
  const { standard, standards, catalogue, stock } = repository;
  return { record: repository.all(), standard, standards, rules: repository.rules, catalogue, stock, builds };
}

/** Inspects every build document of a repository. @throws StandardError when the house standard cannot be used. */
export const inspect = (files: RepositoryFiles, rules: readonly Rule[], options: InspectOptions): InspectionRecord =>
  openRepository(files, rules, options).all();

/** Result of one document, and what it depends on besides the document, the parts, the stock and the house standards. */
export interface Judged {
  readonly entry: DocumentEntry;
  /** Paths its links were looked for at, and whether a file or a folder is there. */
  readonly ways: Readonly<Record<string, boolean>>;
  /** Whether a rule looked at the other builds; it may then rest on anything in them. */
  readonly looksAround: boolean;
}

/** Result of one document, with its model. */
export type Modelled = Inspected & Judged;

function opener(files: RepositoryFiles, rules: readonly Rule[], options: InspectOptions, prose: boolean) {
  const repository = openRepository(files, rules, { ...options, prose, keep: "nothing" });
  void repository.rules;
  return (file: DocumentFile): Modelled => {
    const { dependencies, ...inspected } = repository.one(file);
    return { ...inspected, ways: dependencies.paths, looksAround: dependencies.otherBuilds };
  };
}

/**
 * Inspects documents one by one: those of `files`, or any whose outlines are among the others.
 * @throws StandardError when the house standard cannot be used.
 */
export function inspector(
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
): (file: DocumentFile) => Judged {
  const model = opener(files, rules, options, false);
  return (file) => {
    const { entry, ways, looksAround } = model(file);
    return { entry, ways, looksAround };
  };
}

/** Result of each document, for whoever stores it. @throws StandardError when the house standard cannot be used. */
export const inspectEach = (
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
): readonly Judged[] => files.documents.map(inspector(files, rules, options));

/**
 * Inspects documents one by one and gives each with its model, which nothing here holds on to. Their prose is read, to
 * be shown.
 * @throws StandardError when the house standard cannot be used.
 */
export const modeller = (
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
): ((file: DocumentFile) => Modelled) => opener(files, rules, options, true);
