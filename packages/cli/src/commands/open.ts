import type { Rule } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { loadPlugins } from "../files/plugins.js";
import { openRepository, type Repository, type Wanted } from "../files/repository.js";

/** A docs repository with every rule that applies to it: the built-in ones and those of its plugins. */
export async function open(wanted: Wanted): Promise<Repository & { readonly rules: readonly Rule[] }> {
  const repository = await openRepository(wanted);
  const { settings, standardFolder } = repository;
  const own = standardFolder === undefined ? [] : await loadPlugins(settings.plugins, standardFolder);
  return { ...repository, rules: [...rules, ...own] };
}
