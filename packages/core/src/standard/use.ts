import type { Rule } from "../inspection/judging/rule.js";
import type { RepositoryFiles } from "../repository/files.js";
import { oldKeys } from "../repository/old-keys.js";
import { readStandards, type Standards } from "./chain.js";
import { namingMistakes } from "./check.js";
import type { StandardMistake } from "./file.js";
import { loosenings } from "./loosening.js";
import { refuse } from "./refuse.js";

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

/** Keys of the house standards that are still read and have another name now, each with its place. */
export const outdated = ({ root, folders }: Standards): readonly StandardMistake[] =>
  [root, ...folders].flatMap(({ file, placed }) => oldKeys(placed).map((each) => ({ file: file ?? "", ...each })));
