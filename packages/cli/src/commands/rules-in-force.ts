import { dirname, resolve } from "node:path";
import {
  chainFor,
  checkStandards,
  type ListedRule,
  listRule,
  mergedStandard,
  openStandards,
  ownRules,
  type Rule,
  type StandardChain,
  unusedPlugins,
} from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { rulesOfPlugins } from "../plugins/plugins.js";
import { plain } from "../report/lines.js";
import { findStandard, STANDARD } from "../repository/find-standard.js";
import { readFolderStandards } from "../repository/folder-standards.js";
import { openStandard } from "../repository/house-standard.js";
import { disk } from "../source/disk.js";
import { fromRoot } from "../source/paths.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

/** Every rule as it is in force in one folder of a docs repository. */
export interface RulesInForce {
  readonly chain: StandardChain;
  readonly practice: "us" | "iec";
  readonly rules: readonly ListedRule[];
}

/** A list without the rules of a plugin would look as if they did not exist. */
function refuseUnused(listed: readonly Rule[]): void {
  const [unused] = unusedPlugins(listed);
  if (unused) throw new Trouble(unused.says, "Mend it, or take it out of the house standard.");
}

/** The rules in force in the folder the command is given in; without a house standard above it, the defaults. */
export async function rulesInForce(standard: string | undefined, context: CommandContext): Promise<RulesInForce> {
  const { folder, today } = context;
  const { path: found, remarks } = await findStandard(folder, disk);
  for (const remark of remarks) context.warn(`plumbmark: ${plain(remark)}\n`);
  const root = found ? dirname(found) : folder;
  const chosen = standard === undefined ? found : resolve(folder, standard);
  const within = standard === undefined ? root : undefined;
  const { file, settings, folder: home } = await openStandard(disk, within, chosen, standard ?? STANDARD, today);
  const folderStandards = found ? await readFolderStandards(disk, root, today) : [];
  const standards = openStandards({
    ...(file ? { houseStandard: file } : {}),
    folderStandards,
    parts: [],
    documents: [],
  });
  const taken = rules.map(({ id }) => id);
  const listed = await rulesOfPlugins({ settings, standard: file, folder: home, taken, warn: context.warn });
  refuseUnused(listed);
  const coded: readonly Rule[] = [...rules, ...listed];
  const own = [standards.root, ...standards.folders].map((each) => [each, ownRules(each)] as const);
  const all = [...coded, ...own.flatMap(([, each]) => each)];
  checkStandards(
    standards,
    all,
    all.map(({ id }) => id),
  );
  const chain = chainFor(standards, fromRoot(root, folder));
  const { practice } = mergedStandard(chain);
  const here = [...coded, ...own.filter(([each]) => chain.includes(each)).flatMap(([, each]) => each)];
  const sorted = here.toSorted((one, other) => (one.id < other.id ? -1 : 1));
  return { chain, practice, rules: sorted.map((rule) => listRule(rule, chain, practice)) };
}
