import { printer } from "@plumbmark/calc";
import type { Mistake } from "../document/mistake.js";
import { systemOf } from "../model/system.js";
import type { RepositoryFiles } from "../repository/files.js";
import type { Opened } from "../repository/outline.js";
import { chainFor } from "../standard/chain.js";
import { carryOut, type Subject } from "./carry-out.js";
import { contextOf } from "./context.js";
import { frozen } from "./frozen.js";
import { modelOf, modelsOf } from "./models.js";
import type { CheckEntry } from "./record.js";
import type { Rule } from "./rule.js";

/** Carries out rules one by one, for a plugin's process and for trying a rule out. */
export interface Runner {
  /** Paths of the documents. */
  readonly documents: readonly string[];
  /** Mistakes of the documents, the catalogue and the stock list, with the file they stand in. */
  readonly mistakes: () => readonly (Mistake & { readonly file: string })[];
  /** What a rule comes to on one document; a rule of a plugin that fails comes to `plugin.failed`. */
  readonly run: (rule: Rule, file: string) => readonly CheckEntry[];
  /** Makes the models of all documents, for rules that look at all of them. */
  readonly read: () => void;
  /** Forgets the model of a document that is done with. */
  readonly release: (file: string) => void;
}

/**
 * Makes a runner. The models are frozen, so that a rule that changes what it looks at fails itself and no other.
 * @param known ids of rules that exist besides the ones that are run
 * @throws StandardError when the house standard cannot be used
 */
export function runner(files: RepositoryFiles, today: string, known: readonly string[] = []): Runner {
  const context = contextOf(files, today);
  const models = modelsOf(frozen(context), known);
  const opened = new Map(context.opened.map((each) => [each.file.path, each]));
  const subjects = new Map<string, Subject>();
  const subjectOf = (file: string): Subject => {
    const found = subjects.get(file);
    if (found) return found;
    const document = opened.get(file);
    if (!document) throw new RangeError(`There is no build document ${file}.`);
    const { build } = modelOf(document, models);
    const print = printer(systemOf(build.reader, build.practice));
    const chain = chainFor(context.standards, file);
    const subject = { build: frozen(build), print, chain, repository: models.repository };
    subjects.set(file, subject);
    return subject;
  };
  const read = (): void => void models.repository.builds.map(frozen);
  const release = (file: string): void => {
    subjects.delete(file);
    models.made.delete(opened.get(file) as Opened);
  };
  const documents = [...opened.keys()];
  const mistakes = () => [
    ...documents.flatMap((file) => subjectOf(file).build.mistakes.map((each) => ({ ...each, file }))),
    ...[...context.catalogue.mistakes].flatMap(([file, found]) => found.map((each) => ({ ...each, file }))),
    ...context.stock.mistakes.map((each) => ({ ...each, file: files.stock?.path ?? "" })),
  ];
  return { documents, mistakes, run: (rule, file) => carryOut(rule, subjectOf(file)), read, release };
}
