import { existsSync } from "node:fs";
import type { ViteUserConfig } from "vitest/config";

type Plugin = Extract<NonNullable<ViteUserConfig["plugins"]>[number], { readonly name: string }>;

/**
 * What the compiler made of the packages. The editor's is left to the runner: its server takes names from a package of
 * the older kind, which a bundler finds there and Node.js does not.
 */
export const isBuiltFile = /\/(?:packages\/(?!editor\/)[^/]+|docs-site|rules)\/dist\/.*\.js$/u;

const SOURCE = /^(?<folder>(?:packages\/(?!editor\/)[^/]+|docs-site)\/)src\/(?<file>.*)\.ts$|^rules\/(?<rule>.*)\.ts$/u;

/** Where the compiler puts a file of the sources, from the top of the workspace; undefined for what it makes nothing of. */
export function builtPath(path: string): string | undefined {
  const { folder, file, rule } = SOURCE.exec(path)?.groups ?? {};
  if (rule !== undefined) return `rules/dist/${rule}.js`;
  return folder === undefined ? undefined : `${folder}dist/${file}.js`;
}

/** Has the sources that a test names by their path taken from what was built of them: there is one of everything. */
export const built = (top: string): Plugin => ({
  name: "built",
  enforce: "pre",
  async resolveId(source, importer, options) {
    if (!source.startsWith(".")) return undefined;
    const found = await this.resolve(source, importer, { ...options, skipSelf: true });
    if (!found?.id.startsWith(top)) return undefined;
    const path = builtPath(found.id.slice(top.length));
    return path !== undefined && existsSync(top + path) ? { ...found, id: top + path } : undefined;
  },
});
