import {
  type DocumentFile,
  openRepository,
  outdated,
  pluginRules,
  type RepositoryFiles,
  type Rule,
  readStandards,
} from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { codeFolder } from "../plugins/code-as-stated.js";
import { rulesOfPlugins } from "../plugins/plugins.js";
import { plain } from "../report/lines.js";
import { type DocsRepository, readRepository } from "../repository/read-repository.js";
import { disk } from "../source/disk.js";
import type { ResultCache } from "./cache/cache.js";
import type { EngineRequest, Means } from "./engine.js";

/** A docs repository that was read, with every rule that applies to it. */
export interface Opened extends DocsRepository {
  readonly rules: readonly Rule[];
  readonly cache: ResultCache | undefined;
}

/** What house standards still call by a name of before, a line for each; only a file that may do so is read for it. */
function outdatedIn(files: RepositoryFiles): readonly string[] {
  const { houseStandard, folderStandards = [] } = files;
  const texts = [...(houseStandard ? [houseStandard] : []), ...folderStandards].map(({ text }) => text);
  if (!texts.some((text) => /^(?:rules|plugins)\s*:/mu.test(text))) return [];
  return outdated(readStandards(files).standards).map(
    ({ file, place, says, mend }) => `${file}:${place.line}:${place.column}: ${says} ${mend}`,
  );
}

/** What a plugin's rules would be called is not known yet; all else that a house standard says has to be right. */
function refuseUnusable(files: RepositoryFiles, plugins: readonly string[], today: string): void {
  const unnamed = pluginRules({ rules: [], failed: [], refused: plugins });
  void openRepository({ ...files, documents: [], others: [] }, [...rules, ...unnamed], { today }).rules;
}

/**
 * Reads a docs repository and runs its plugins, once everything that needs none of them was found to be in order.
 * @throws Trouble, or StandardError when a house standard cannot be used
 */
export async function openWithRules(
  request: EngineRequest,
  { cacheFor, outline }: Pick<Means, "cacheFor" | "outline">,
): Promise<Opened> {
  const { plugins: arePluginsWanted = true, warn, today, source } = request;
  const repository = await readRepository({ ...request, cacheFor });
  const { settings, standardFolder, remarks, wants, cache } = repository;
  for (const line of [...outdatedIn(repository.files), ...remarks]) warn(`plumbmark: ${plain(line)}\n`);
  let { files } = repository;
  const willRun = arePluginsWanted && settings["rules-from"].length > 0;
  if (willRun) {
    refuseUnusable(files, settings["rules-from"], today);
    // A plugin is told what has to be known of the documents nobody asked for: they need not be read twice.
    files = { ...files, documents: await outline(files, cache) };
  }
  const elsewhere =
    willRun && source !== undefined && source !== disk && standardFolder !== undefined
      ? await codeFolder(source, standardFolder, settings["rules-from"])
      : undefined;
  const given = {
    settings,
    standard: files.houseStandard,
    folder: elsewhere?.folder ?? standardFolder,
    taken: rules.map(({ id }) => id),
    warn,
    refused: !arePluginsWanted,
    cache,
    on: { files, today, wanted: pathsOf(files.documents).filter(wants) },
  };
  const own = await rulesOfPlugins(given).finally(() => elsewhere?.end());
  return { ...repository, files, rules: [...rules, ...own] };
}

const pathsOf = (documents: readonly DocumentFile[]): readonly string[] => documents.map(({ path }) => path);
