import { resolve } from "node:path";
import type { HouseStandardSettings, RepositoryFiles } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import { Trouble } from "../trouble.js";
import { type Asked, commonFolder, covers, folderOf, readAsked } from "./asked.js";
import { isMeantAsBuild } from "./build-document.js";
import { findFiles, fromRoot, isOutside } from "./find-files.js";
import { findStandard, isFile, STANDARD } from "./find-standard.js";
import { openStandard } from "./house-standard.js";
import { type ReadFiles, readFiles, type Unreadable } from "./read-files.js";

const USUAL_STOCK = "stock.yaml";

/** A docs repository with its files read. */
export interface Repository {
  readonly root: string;
  readonly files: RepositoryFiles;
  readonly settings: HouseStandardSettings;
  readonly standardFolder?: string;
  readonly unreadable: readonly Unreadable[];
  readonly asked: readonly Asked[];
  /** Whether a document was asked for; all are when no path was given. */
  readonly wants: (path: string) => boolean;
}

export interface Wanted {
  readonly folder: string;
  readonly paths: readonly string[];
  readonly standard?: string | undefined;
}

/** Without a house standard of its own, a folder above a docs repository would be judged by the wrong one. */
async function refuseFolderAbove(root: string): Promise<void> {
  const [below] = await findFiles(root, [`*/${STANDARD}`, `*/*/${STANDARD}`, `*/*/*/${STANDARD}`]);
  if (below !== undefined) {
    const folder = resolve(root, below, "..");
    throw new Trouble(
      `${root} has no ${STANDARD}, but a docs repository lies below it.`,
      `Name the docs repository, for instance ${folder}`,
    );
  }
}

const refuseOutside = (root: string, asked: readonly Asked[]): void => {
  const outside = asked.find((each) => isOutside(fromRoot(root, each.path)));
  if (outside)
    throw new Trouble(
      `\`${outside.written}\` is outside the docs repository ${root}.`,
      "Inspect one docs repository at a time.",
    );
};

/** Every document of the repository is read even if few are asked for: names and lots are shared between them. */
async function documentPaths(
  root: string,
  patterns: readonly string[] | undefined,
  asked: readonly Asked[],
): Promise<readonly string[]> {
  const named = asked.filter((each) => !each.folder).map((each) => fromRoot(root, each.path));
  const folders = asked.filter((each) => each.folder).map((each) => fromRoot(root, each.path));
  const below = (asked.length === 0 ? [""] : folders).map((folder) =>
    folder === "" ? "**/*.md" : `${folder}/**/*.md`,
  );
  return [...new Set([...(await findFiles(root, patterns ?? below)), ...named])].sort();
}

/** The parts named by the house standard; without one, those beside the documents or else the built-in catalogue. */
async function readParts(root: string, patterns: readonly string[], own: boolean): Promise<ReadFiles> {
  const paths = await findFiles(root, patterns);
  if (own || paths.length > 0) return readFiles(root, paths);
  return readFiles(starterRepository, await findFiles(starterRepository, ["parts/*.yaml"]));
}

/** The stock list; only the one that goes without saying may be missing. */
async function readStock(root: string, path: string | undefined): Promise<ReadFiles> {
  if (path === undefined || (path === USUAL_STOCK && !(await isFile(resolve(root, path)))))
    return { files: [], unreadable: [] };
  return readFiles(root, [path]);
}

/** Finds the docs repository the paths belong to and reads it. Trouble when that cannot be done. */
export async function openRepository({ folder, paths, standard }: Wanted): Promise<Repository> {
  const asked = await Promise.all(paths.map((path) => readAsked(folder, path)));
  const start = asked.length > 0 ? commonFolder(asked.map(folderOf)) : folder;
  const found = await findStandard(start);
  const root = found ? resolve(found, "..") : start;
  refuseOutside(root, asked);
  const chosen = standard === undefined ? found : resolve(folder, standard);
  if (chosen === undefined) await refuseFolderAbove(root);
  const { file, settings, folder: standardFolder } = await openStandard(chosen, standard ?? STANDARD);
  const documents = await readFiles(
    root,
    await documentPaths(root, chosen === undefined ? undefined : settings.documents, asked),
  );
  const parts = await readParts(root, settings.parts, chosen !== undefined);
  const stock = await readStock(root, settings.stock);
  return {
    root,
    settings,
    asked,
    ...(standardFolder === undefined ? {} : { standardFolder }),
    files: {
      ...(file ? { houseStandard: file } : {}),
      parts: parts.files,
      ...(stock.files[0] ? { stock: stock.files[0] } : {}),
      documents: documents.files.filter(({ text }) => isMeantAsBuild(text)),
    },
    unreadable: [...documents.unreadable, ...parts.unreadable, ...stock.unreadable],
    wants: (path) => asked.length === 0 || asked.some((each) => covers(each, root, path)),
  };
}
