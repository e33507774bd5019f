import type { Mistake } from "../document/mistake.js";
import type { RepositoryFiles } from "../repository/files.js";
import type { Rule } from "./judging/rule.js";
import { openRepository } from "./open-repository.js";
import type { CheckEntry } from "./record.js";

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
  /**
   * Paths of the documents whose content the result of the last run depends on. What a rule saw of other documents may
   * have been remembered by its plugin, so it counts for every later run, too.
   */
  readonly contents: () => readonly string[];
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
  const repository = openRepository(files, [], { today, known, frozen: true, keep: "models", prose: true });
  const { documents, catalogue, stock } = repository;
  let looked = false;
  let last: readonly string[] = [];
  const others = new Set<string>();
  const mistakes = () => [
    ...documents.flatMap((file) => repository.model(file).build.mistakes.map((each) => ({ ...each, file }))),
    ...[...catalogue.mistakes].flatMap(([file, found]) => found.map((each) => ({ ...each, file }))),
    ...stock.mistakes.map((each) => ({ ...each, file: files.stock?.path ?? "" })),
  ];
  const run: Runner["run"] = (rule, file) => {
    let isLookedAt = false;
    const note = (path: string): void => {
      if (path === file && rule.over === undefined) isLookedAt = true;
      else others.add(path);
    };
    const { checks, otherBuilds } = repository.run(rule, file, note);
    looked ||= otherBuilds;
    // Where it stands, and its words, are read from the document a check is about.
    last = isLookedAt || checks.length > 0 ? [file] : [];
    return checks;
  };
  const read = (): void => repository.readAll();
  const release = (file: string): void => repository.release(file);
  return { documents, mistakes, run, read, looksAround: () => looked, contents: () => [...others, ...last], release };
}
