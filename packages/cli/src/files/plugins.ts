import { isAbsolute, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { Rule } from "@plumbmark/core";
import { Trouble } from "../trouble.js";

const isRule = (value: unknown): value is Rule =>
  typeof value === "object" &&
  value !== null &&
  typeof (value as Rule).id === "string" &&
  typeof (value as { checks?: unknown }).checks === "function";

const MEND = "A plugin is a module with a list of rules: export const rules = [rule({ … })].";

async function loadPlugin(name: string, folder: string): Promise<readonly Rule[]> {
  const path = isAbsolute(name) || name.startsWith(".") ? pathToFileURL(resolve(folder, name)).href : name;
  const loaded = await import(path).catch((error: unknown) => {
    throw new Trouble(
      `The plugin \`${name}\` cannot be loaded: ${error instanceof Error ? error.message : String(error)}`,
      MEND,
    );
  });
  const rules: unknown = loaded.rules;
  if (!Array.isArray(rules) || !rules.every(isRule))
    throw new Trouble(`The plugin \`${name}\` has no list of rules.`, MEND);
  return rules;
}

/** The rules of the plugins a house standard names, in its order. A plugin is code: it runs as the person who inspects. */
export async function loadPlugins(names: readonly string[], folder: string): Promise<readonly Rule[]> {
  const rules: Rule[] = [];
  for (const name of names) rules.push(...(await loadPlugin(name, folder)));
  return rules;
}
