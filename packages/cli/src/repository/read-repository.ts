import { resolve } from "node:path";
import { asStock, type HouseStandardSettings, type RepositoryFiles } from "@plumbmark/core";
import type { ResultCache } from "../engine/cache/cache.js";
import type { Store } from "../engine/cache/store.js";
import { disk } from "../source/disk.js";
import { fromRoot, isOutside } from "../source/paths.js";
import type { FileSource, Tree } from "../source/source.js";
import { Trouble } from "../terminal/trouble.js";
import { type Asked, commonFolder, covers, folderOf, readAsked } from "./asked.js";
import { findStandard, STANDARD } from "./find-standard.js";
import { readFolderStandards } from "./folder-standards.js";
import { openStandard } from "./house-standard.js";
import { readDocuments } from "./read-documents.js";
import { type ReadFiles, readFiles, type Unreadable } from "./read-files.js";
import { recallReading } from "./readings.js";
import { readStockFiles } from "./stock-files.js";
import { strays } from "./strays.js";
import { readSurveyFiles } from "./survey-files.js";
import { unmatchedIn } from "./unmatched.js";

/** A docs repository with its files read. */
export interface DocsRepository {
  readonly root: string;
  readonly files: RepositoryFiles;
  readonly settings: HouseStandardSettings;
  readonly standardFolder?: string;
  readonly unreadable: readonly Unreadable[];
  /** What is to be told besides: which house standard is used, patterns of it that match no file, with their places. */
  readonly remarks: readonly string[];
  readonly asked: readonly Asked[];
  /** Whether a document was asked for; all are when no path was given. */
  readonly wants: (path: string) => boolean;
  /** Has the texts of documents ready; without it each is read when it is first looked at. */
  readonly load: (paths: readonly string[]) => Promise<void>;
  readonly cache: ResultCache | undefined;
}

export interface Wanted {
  readonly folder: string;
  readonly paths: readonly string[];
  readonly standard?: string | undefined;
  /** Where the files are read from; the disk when nothing is said. */
  readonly source?: FileSource | undefined;
  /** The day of the inspection: it tells which edition of a house standard is in force. */
  readonly today: string;
  /** What is cached for a docs repository: a document whose outline is cached need not be read. */
  readonly cacheFor?: ((root: string) => ResultCache | undefined) | undefined;
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

/** The same files; what each house standard among them was read as is looked up. */
const recalling = (source: FileSource, store: Store | undefined): FileSource => ({
  ...source,
  text: async (path, root) => {
    const found = await source.text(path, root);
    if ("text" in found) recallReading(found, store);
    return found;
  },
});

/** A folder may keep documents and parts alike from being found. */
const once = (unreadable: readonly Unreadable[]): readonly Unreadable[] => [
  ...new Map(unreadable.map((each) => [each.path, each])).values(),
];

/** Finds the docs repository the paths belong to and reads it. Trouble when that cannot be done. */
export async function readRepository({
  folder,
  paths: written,
  standard,
  today,
  source = disk,
  cacheFor = () => undefined,
}: Wanted): Promise<DocsRepository> {
  const asked = await Promise.all(written.map((path) => readAsked(source, folder, path)));
  const start = asked.length > 0 ? commonFolder(asked.map(folderOf)) : folder;
  const { path: found, remarks } = await findStandard(start, source);
  const root = found ? resolve(found, "..") : start;
  const tree = source.treeAt(root);
  refuseOutside(root, asked);
  if (found === undefined && standard === undefined) await refuseFolderAbove(root, tree);
  // A house standard that is named is the one on the disk, whatever the documents come from.
  const [chosen, from] = standard === undefined ? [found, source] : [resolve(folder, standard), disk];
  const cache = cacheFor(root);
  const outlines = cache?.outlines;
  const within = standard === undefined ? root : undefined;
  const opened = await openStandard(recalling(from, outlines), within, chosen, standard ?? STANDARD, today);
  const { file, settings, folder: standardFolder } = opened;
  const folderStandards =
    found === undefined ? [] : await readFolderStandards(recalling(source, outlines), root, today);
  const surveys = await readSurveyFiles(tree, settings.surveys);
  const surveyed = new Set(surveys.files.map(({ path }) => path));
  const matched = await documentPaths(tree, root, chosen === undefined ? undefined : settings.documents, asked);
  const paths = matched.filter((path) => !surveyed.has(path));
  const unmatched = await strays(tree, chosen === undefined ? undefined : settings.documents, [...paths, ...surveyed]);
  const documents = await readDocuments(tree, paths, outlines);
  const parts = await readParts(tree, settings.parts, chosen !== undefined);
  const stock = await readStockFiles(source, root, opened);
  for (const file of [...parts.files, ...stock.files]) recallReading(file, outlines);
  return {
    root,
    settings,
    asked,
    ...(standardFolder === undefined ? {} : { standardFolder }),
    files: {
      ...(file ? { houseStandard: file } : {}),
      folderStandards,
      parts: parts.files,
      ...asStock(stock.files),
      ...(surveys.files.length > 0 ? { surveys: surveys.files } : {}),
      papers: await tree.find(settings.papers),
      documents: documents.files,
    },
    remarks: [
      ...remarks,
      ...unmatchedIn(opened, {
        documents: paths,
        parts: [...parts.files, ...parts.unreadable].map(({ path }) => path),
      }),
    ],
    unreadable: once([
      ...unmatched,
      ...documents.unreadable,
      ...parts.unreadable,
      ...surveys.unreadable,
      ...stock.unreadable,
    ]),
    load: documents.load,
    cache,
    wants: (path) => asked.length === 0 || asked.some((each) => covers(each, root, path)),
  };
}
