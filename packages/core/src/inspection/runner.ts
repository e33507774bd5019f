import { printer } from "@plumbmark/calc";
import type { Mistake } from "../document/mistake.js";
import { systemOf } from "../model/reading/system.js";
import type { RepositoryFiles } from "../repository/files.js";
import { type ReadDocument, readDocument } from "../repository/outline.js";
import { chainFor } from "../standard/chain.js";
import { contextFrom, knownOutline } from "./context.js";
import { frozen } from "./frozen.js";
import { modelOf, modelsOf } from "./models.js";
import type { CheckEntry } from "./record.js";
import type { Rule } from "./rule.js";
import { runRule, type Subject } from "./run-rule.js";

/** Runs rules one by one, for a plugin's process and for trying a rule out. */
export interface Runner {
  /** Paths of the documents. */
  readonly documents: readonly string[];
  /** Mistakes of the documents, the catalogue and the stock list, with the file they stand in. */
  readonly mistakes: () => readonly (Mistake & { readonly file: string })[];
  /** Result of a rule on one document; that of a failing rule of a plugin is `plugin.failed`. */
  readonly run: (rule: Rule, file: string) => readonly CheckEntry[];
  /** Makes the models of all documents, for rules that look at all of them. */
  readonly read: () => void;
  /** Whether a rule has looked at the builds of other documents. */
  readonly looksAround: () => boolean;
  /** Forgets the model of a document that is done with. */
  readonly release: (file: string) => void;
}

/**
 * Makes a runner. The models are frozen, so that a rule that changes what it looks at fails itself and no other. Each
 * document is read when it is looked at.
 * @param known ids of rules that exist besides the ones that are run
 * @throws StandardError when the house standard cannot be used
 */
export function runner(files: RepositoryFiles, today: string, known: readonly string[] = []): Runner {
  const context = frozen(contextFrom(files, files.documents.map(knownOutline), today));
  const texts = new Map(files.documents.map((file) => [file.path, file]));
  const documents = [...texts.keys()];
  const opened = new Map<string, ReadDocument>();
  const openedOf = (path: string): ReadDocument => {
    const found = opened.get(path);
    if (found) return found;
    const file = texts.get(path);
    if (!file) throw new RangeError(`There is no build document ${path}.`);
    const fresh = readDocument(file, true);
    opened.set(path, fresh);
    return fresh;
  };
  let looked = false;
  const whole = (): readonly ReadDocument[] => {
    looked = true;
    return documents.map(openedOf);
  };
  const models = modelsOf(context, whole, known);
  const subjects = new Map<string, Subject>();
  const subjectOf = (file: string): Subject => {
    const found = subjects.get(file);
    if (found) return found;
    const { build } = modelOf(openedOf(file), models);
    const print = printer(systemOf(build.reader, build.practice));
    const chain = chainFor(context.standards, file);
    const subject = { build: frozen(build), print, chain, repository: models.repository };
    subjects.set(file, subject);
    return subject;
  };
  const read = (): void => void models.repository.builds.map(frozen);
  const release = (file: string): void => {
    subjects.delete(file);
    models.made.delete(openedOf(file));
    opened.delete(file);
  };
  const mistakes = () => [
    ...documents.flatMap((file) => subjectOf(file).build.mistakes.map((each) => ({ ...each, file }))),
    ...[...context.catalogue.mistakes].flatMap(([file, found]) => found.map((each) => ({ ...each, file }))),
    ...context.stock.mistakes.map((each) => ({ ...each, file: files.stock?.path ?? "" })),
  ];
  const run: Runner["run"] = (rule, file) => runRule(rule, subjectOf(file));
  return { documents, mistakes, run, read, looksAround: () => looked, release };
}
