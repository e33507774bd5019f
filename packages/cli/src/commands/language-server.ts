import { readdir } from "node:fs/promises";
import { join, resolve } from "node:path";
import { type FileRole, surveyKind } from "@plumbmark/core";
import { type Host, isWish, type RepositoryOnDisk, SITE, serve } from "@plumbmark/editor";
import { rules } from "@plumbmark/rules";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node.js";
import { plainMeans } from "../engine/plain.js";
import { rulesOfPlugins } from "../plugins/plugins.js";
import { isMeantAsBuild } from "../repository/build-document.js";
import { STANDARD } from "../repository/find-standard.js";
import { readFiles } from "../repository/read-files.js";
import { type DocsRepository, readRepository } from "../repository/read-repository.js";
import { disk } from "../source/disk.js";
import { fromRoot } from "../source/paths.js";
import { readPatterns } from "../source/patterns.js";
import { readText } from "../source/read-text.js";
import { localDay } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

const today = (): string => localDay(new Date());

/** What a file of a docs repository would be that nobody has saved yet, by its name and its text. */
const roles =
  ({ settings, files: { houseStandard } }: DocsRepository): RepositoryOnDisk["roleOf"] =>
  (path, text): FileRole | undefined => {
    const fits = (patterns: readonly string[]): boolean => readPatterns(patterns).fits(path);
    if (/\.ya?ml$/iu.test(path)) {
      if (path === STANDARD) return "house standard";
      if (path.endsWith(`/${STANDARD}`)) return "folder standard";
      if (fits([settings.stock ?? []].flat())) return "stock";
      if (fits(settings.wishes) && isWish(text)) return "wish";
      return fits(settings.parts) ? "parts" : undefined;
    }
    if (fits(settings.surveys) && surveyKind(text) !== "other") return "survey";
    const isAsked = houseStandard === undefined || fits(settings.documents);
    return isAsked && isMeantAsBuild(text) ? "document" : undefined;
  };

/** Pages of the site a docs repository was published to; none where it was not, or somewhere else. */
async function pagesIn(root: string): Promise<ReadonlySet<string>> {
  const folders = ["rules", "builds"].map((name) => `${SITE}/${name}`);
  const names = async (folder: string): Promise<readonly string[]> => {
    const found = await readdir(join(root, folder)).catch(() => []);
    return found.filter((name) => name.endsWith(".html")).map((name) => `${folder}/${name}`);
  };
  return new Set((await Promise.all(folders.map(names))).flat());
}

function hostOf(version: string): Host {
  const read = new Map<string, DocsRepository>();
  return {
    version,
    today,
    open: async (path) => {
      const folder = (await disk.kind(path)) === "folder" ? path : resolve(path, "..");
      try {
        const repository = await readRepository({ folder, paths: [], today: today() });
        const { root, files: inspected, settings } = repository;
        read.set(root, repository);
        const pages = await pagesIn(root);
        const tree = disk.treeAt(root);
        const { files: wishes } = await readFiles(tree, await tree.find(settings.wishes));
        const files = { ...inspected, wishes };
        return { root, files, rules, plugins: settings["rules-from"], pages, roleOf: roles(repository) };
      } catch (error) {
        throw error instanceof Trouble ? new Error(`${error.says} ${error.mend}`) : error;
      }
    },
    text: async (path) => {
      const found = await readText(path);
      return "text" in found ? found.text : undefined;
    },
    pluginRules: async (root, files, wanted) => {
      const repository = read.get(root);
      if (!repository) return [];
      const { settings, standardFolder } = repository;
      const documents = await plainMeans.outline(files, undefined);
      return rulesOfPlugins({
        settings,
        standard: files.houseStandard,
        folder: standardFolder,
        taken: rules.map(({ id }) => id),
        warn: (text) => void process.stderr.write(text),
        on: {
          files: { ...files, documents },
          today: today(),
          wanted: wanted.map((each) => fromRoot(root, resolve(root, each))),
        },
      });
    },
  };
}

/** Serves an editor on standard input and output until it ends the conversation; the status is then the protocol's. */
export async function languageServerCommand(version: string): Promise<number> {
  const connection = createConnection(ProposedFeatures.all, process.stdin, process.stdout);
  serve(connection, hostOf(version));
  return new Promise<number>(() => undefined);
}
