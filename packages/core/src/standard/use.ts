import type { Rule } from "../judge/rule.js";
import { StandardError } from "../judge/settings.js";
import type { RepositoryFiles } from "../repository/files.js";
import { readStandards, type Standards } from "./chain.js";
import { namingMistakes } from "./check.js";
import type { StandardMistake } from "./file.js";
import { loosenings } from "./loosening.js";

/** @throws StandardError with every mistake, each with file, line and column. */
export function refuse(mistakes: readonly StandardMistake[]): void {
  if (mistakes.length === 0) return;
  throw new StandardError(
    mistakes.map(({ file, place, says, mend }) => `${file}:${place.line}:${place.column}: ${says} ${mend}`).join("\n"),
  );
}

/** The house standards of a repository, well formed. @throws StandardError */
export function openStandards(files: RepositoryFiles): Standards {
  const { standards, mistakes } = readStandards(files);
  refuse(mistakes);
  return standards;
}

/**
 * Checks the house standards against the rules they are about: names, settings, and that no folder loosens what is
 * above it. `known` are ids of rules that exist and are not loaded this time.
 * @throws StandardError
 */
export function checkStandards(standards: Standards, rules: readonly Rule[], known: readonly string[]): void {
  refuse(namingMistakes(standards, rules, known));
  refuse(loosenings(standards, rules));
}
