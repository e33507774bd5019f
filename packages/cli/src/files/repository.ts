import { resolve } from "node:path";
import type { HouseStandardSettings, RepositoryFiles } from "@plumbmark/core";
import { recall } from "../kept/readings.js";
import type { Shelf } from "../kept/shelf.js";
import { Trouble } from "../trouble.js";
import { type Asked, commonFolder, covers, folderOf, readAsked } from "./asked.js";
import { disk } from "./disk.js";
import { fromRoot, isOutside } from "./find-files.js";
import { findStandard, STANDARD } from "./find-standard.js";
import { readFolderStandards } from "./folder-standards.js";
import { type HouseStandardFile, openStandard } from "./house-standard.js";
import { readDocuments } from "./read-documents.js";
import { type ReadFiles, readFiles, type Unreadable } from "./read-files.js";
import { strays } from "./strays.js";
import type { Origin, Tree } from "./tree.js";
import { unmatchedIn } from "./unmatched.js";

const USUAL_STOCK = "stock.yaml";

/** A docs repository with its files read. */
export interface Repository {
  readonly root: string;
  readonly files: RepositoryFiles;
  readonly settings: HouseStandardSettings;
  readonly standardFolder?: string;
  readonly unreadable: readonly Unreadable[];
  /** Patterns of the house standard that match no file, in words, with their places. */
  readonly unmatched: readonly string[];
  readonly asked: readonly Asked[];
  /** Whether a document was asked for; all are when no path was given. */
  readonly wants: (path: string) => boolean;
  /** Has the texts of documents ready; without it each is read when it is first looked at. */
  readonly load: (paths: readonly string[]) => Promise<void>;
}

export interface Wanted {
  readonly folder: string;
  readonly paths: readonly string[];
  readonly standard?: string | undefined;
  /** Where the files are read from; the disk when nothing is said. */
  readonly origin?: Origin;
  /** The day of the inspection: it tells which edition of a house standard is in force. */
  readonly today: string;
  /** Outlines that are kept for a docs repository: a document that has one need not be read. */
  readonly outlines?: ((root: string) => Shelf | undefined) | undefined;
}

/** Without a house standard of its own, a folder above a docs repository would be judged by the wrong one. */
async function refuseFolderAbove(root: string, tree: Tree): Promise<void> {
  const found = await tree.find([`*/${STANDARD}`, `*/*/${STANDARD}`, `*/*/*/${STANDARD}`]);
  const below = found.find((path) => path.endsWith(`/${STANDARD}`));
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
  tree: Tree,
  root: string,
  patterns: readonly string[] | undefined,
  asked: readonly Asked[],
): Promise<readonly string[]> {
  const named = asked.filter((each) => !each.folder).map((each) => fromRoot(root, each.path));
  const folders = asked.filter((each) => each.folder).map((each) => fromRoot(root, each.path));
  const below = (asked.length === 0 ? [""] : folders).map((folder) =>
    folder === "" ? "**/*.md" : `${folder}/**/*.md`,
  );
  return [...new Set([...(await tree.find(patterns ?? below)), ...named])].sort();
}

/** The parts named by the house standard; without one, those beside the documents or else the built-in catalogue. */
async function readParts(tree: Tree, patterns: readonly string[], own: boolean): Promise<ReadFiles> {
  const paths = await tree.find(patterns);
  if (own || paths.length > 0) return readFiles(tree, paths);
  // Where it is takes a while to find out, and it is seldom asked.
  const { starterRepository } = await import("@plumbmark/starter");
  const builtIn = disk.treeAt(starterRepository);
  return readFiles(builtIn, await builtIn.find(["parts/*.yaml"]));
}

/**
 * The stock list; only the one that goes without saying may be missing. What is no file of the repository is told where
 * the house standard names it, for the file itself has no line to show.
 */
async function readStock(
  origin: Origin,
  root: string,
  path: string | undefined,
  { file, at }: Pick<HouseStandardFile, "file" | "at">,
): Promise<ReadFiles> {
  const kind = path === undefined ? undefined : await origin.kind(resolve(root, path));
  if (path === undefined || (path === USUAL_STOCK && kind === undefined)) return { files: [], unreadable: [] };
  const read = await readFiles(origin.treeAt(root), [path]);
  const stockAt = at("stock");
  if (!file || !stockAt || kind === "file") return read;
  const named = ({ says, mend }: Unreadable): Unreadable => ({
    path: file.path,
    says: `\`stock\` names \`${path}\`. ${says}`,
    mend,
    at: stockAt,
  });
  return { ...read, unreadable: read.unreadable.map(named) };
}

/** The same files; what each house standard among them was read as is recalled. */
const recalling = (origin: Origin, shelf: Shelf | undefined): Origin => ({
  ...origin,
  text: async (path, root) => {
    const found = await origin.text(path, root);
    if ("text" in found) recall(found, shelf);
    return found;
  },
});

/** A folder may keep documents and parts alike from being found. */
const once = (unreadable: readonly Unreadable[]): readonly Unreadable[] => [
  ...new Map(unreadable.map((each) => [each.path, each])).values(),
];

/** Finds the docs repository the paths belong to and reads it. Trouble when that cannot be done. */
export async function openRepository({
  folder,
  paths: written,
  standard,
  today,
  origin = disk,
  outlines,
}: Wanted): Promise<Repository> {
  const asked = await Promise.all(written.map((path) => readAsked(origin, folder, path)));
  const start = asked.length > 0 ? commonFolder(asked.map(folderOf)) : folder;
  const found = await findStandard(start, origin);
  const root = found ? resolve(found, "..") : start;
  const tree = origin.treeAt(root);
  refuseOutside(root, asked);
  if (found === undefined && standard === undefined) await refuseFolderAbove(root, tree);
  // A house standard that is named is the one on the disk, whatever the documents come from.
  const [chosen, from] = standard === undefined ? [found, origin] : [resolve(folder, standard), disk];
  const shelf = outlines?.(root);
  const within = standard === undefined ? root : undefined;
  const opened = await openStandard(recalling(from, shelf), within, chosen, standard ?? STANDARD, today);
  const { file, settings, folder: standardFolder } = opened;
  const folderStandards = found === undefined ? [] : await readFolderStandards(recalling(origin, shelf), root, today);
  const paths = await documentPaths(tree, root, chosen === undefined ? undefined : settings.documents, asked);
  const documents = await readDocuments(tree, paths, shelf);
  const unmatched = await strays(tree, chosen === undefined ? undefined : settings.documents, paths);
  const parts = await readParts(tree, settings.parts, chosen !== undefined);
  const stock = await readStock(origin, root, settings.stock, opened);
  for (const file of [...parts.files, ...stock.files]) recall(file, shelf);
  return {
    root,
    settings,
    asked,
    ...(standardFolder === undefined ? {} : { standardFolder }),
    files: {
      ...(file ? { houseStandard: file } : {}),
      folderStandards,
      parts: parts.files,
      ...(stock.files[0] ? { stock: stock.files[0] } : {}),
      papers: await tree.find(settings.papers),
      documents: documents.files,
    },
    unmatched: unmatchedIn(opened, {
      documents: paths,
      parts: [...parts.files, ...parts.unreadable].map(({ path }) => path),
    }),
    unreadable: once([...unmatched, ...documents.unreadable, ...parts.unreadable, ...stock.unreadable]),
    load: documents.load,
    wants: (path) => asked.length === 0 || asked.some((each) => covers(each, root, path)),
  };
}
