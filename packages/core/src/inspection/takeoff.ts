import type { System } from "@plumbmark/calc";
import type { Mistake } from "../document/mistake.js";
import type { Build } from "../model/build.js";
import type { RepositoryFiles } from "../repository/files.js";
import type { Rule } from "./judging/rule.js";
import { openRepository } from "./open-repository.js";
import type { DocumentEntry } from "./record.js";

/** A document opened to be counted; with mistakes in it, what is counted may not be everything. */
export interface TakenOff {
  readonly build: Build;
  readonly system: System;
  readonly mistakes: readonly Mistake[];
  /** How it was judged: what is counted is printed with it. */
  readonly entry: DocumentEntry;
  /** Modules whose rules were not asked. */
  readonly unasked: readonly string[];
}

/**
 * Opens one document of the repository and judges it.
 * @throws RangeError when it is not among the documents, StandardError when the house standard cannot be used
 */
export function takeoff(files: RepositoryFiles, path: string, today: string, rules: readonly Rule[]): TakenOff {
  const repository = openRepository(files, rules, { today, every: true });
  const { build, system, entry } = repository.one(path);
  return { build, system, entry, mistakes: build.mistakes, unasked: repository.standard["rules-from"] };
}
