import { choices, type HouseStandardSettings, type Rule } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { loadPlugins } from "../files/plugins.js";
import { openRepository, type Repository, type Wanted } from "../files/repository.js";
import { Trouble } from "../trouble.js";

/** A misspelt rule would leave the rule that was meant as it is by default, and nobody would notice. */
function refuseUnknownRules({ rules: set, name }: HouseStandardSettings, known: readonly string[]): void {
  const unknown = Object.keys(set).find((id) => !known.includes(id));
  if (unknown === undefined) return;
  throw new Trouble(
    `The house standard "${name}" sets the rule \`${unknown}\`, which does not exist.`,
    choices(known, unknown),
  );
}

/** A docs repository with every rule that applies to it: the built-in ones and those of its plugins. */
export async function open(wanted: Wanted): Promise<Repository & { readonly rules: readonly Rule[] }> {
  const repository = await openRepository(wanted);
  const { settings, standardFolder } = repository;
  const own = standardFolder === undefined ? [] : await loadPlugins(settings.plugins, standardFolder);
  const all = [...rules, ...own];
  refuseUnknownRules(settings, [...all.map(({ id }) => id), ...Object.keys(settings["own-rules"] ?? {})]);
  return { ...repository, rules: all };
}
