import { isThere, pathsOf, type Rule } from "@plumbmark/core";
import { dependenciesHold, pictureDigest, putAgain } from "@plumbmark/docs-site";
import type { NamedFile } from "../../repository/outlines.js";
import { pictureReader } from "../../source/read-picture.js";
import type { SheetsMade, SheetsWork } from "../publish-site.js";
import type { MadeSheet, SheetsInput, WrittenSheet } from "../sheet-writer.js";
import { pluginResultsOf, resultsOn } from "../workers/plugin-results.js";
import { makeManySheets } from "../workers/sheets-many.js";
import { isFailure } from "./failure.js";
import { contextKey, documentKey, hashOf, sharedBy } from "./keys.js";
import { type PublishedIndex, type PublishedSheet, publishedIndex } from "./published-index.js";
import { usesAround } from "./uses.js";

/** Whether sheets rest on nothing but what their keys are made of. */
const isCacheable = (rules: readonly Rule[]): boolean =>
  rules.every(({ plugin, over, result }) => result !== undefined || (plugin === undefined && !over));

/** Names are sorted as it is done where whoever publishes lives. */
const locale = new Intl.Collator().resolvedOptions().locale;

type KeyOf = (file: NamedFile) => string | undefined;

/** The keys of sheets; undefined for those that cannot be cached. */
function sheetKeys(
  { files, rules, today, places }: SheetsInput,
  shares: (path: string) => unknown,
  edition: string,
): KeyOf {
  if (!isCacheable(rules)) return () => undefined;
  const ids = rules.map(({ id }) => id);
  const context = hashOf([contextKey(files, edition, today, pluginResultsOf(rules)), ids, locale]);
  const shared = sharedBy(files.documents.flatMap(({ outline }) => (outline ? [outline] : [])));
  return (file) => {
    if (file.id === undefined) return undefined;
    const results = resultsOn(rules, file.path);
    if (results.some(isFailure)) return undefined;
    return hashOf([documentKey(context, file.id, file, shared, shares(file.path), results), places.get(file.path)]);
  };
}

/** Tells what is in a picture, read once for all sheets that show it. */
function pictureHashes(root: string): (path: string) => string | undefined {
  const read = pictureReader(root);
  const known = new Map<string, string | undefined>();
  return (path) => {
    if (!known.has(path)) known.set(path, pictureDigest(read(path)));
    return known.get(path);
  };
}

/** Puts the sheets that stand in the earlier site as they would be made; gives them by path of their documents. */
function putUnchanged(
  { files, root, places, into }: SheetsInput,
  keys: ReadonlyMap<string, string | undefined>,
  index: PublishedIndex,
): ReadonlyMap<string, PublishedSheet> {
  const paths = pathsOf(files);
  const there = (path: string): boolean => isThere(paths, path);
  const now = { pages: (path: string) => places.get(path)?.page, pictures: pictureHashes(root) };
  const put = new Map<string, PublishedSheet>();
  for (const { path } of files.documents) {
    const key = keys.get(path);
    const found = key === undefined ? undefined : index.get(path, key);
    if (found && dependenciesHold(found.dependencies, there, now) && putAgain(into, found.stamps)) put.set(path, found);
  }
  return put;
}

const asBefore = ({ summary, stamps }: PublishedSheet): MadeSheet => ({
  summary,
  put: [...stamps.keys()].map((path) => ({ path, unchanged: true })),
});

/**
 * Makes the sheets of documents whose outlines are known, but those that stand in the earlier site as they would be made.
 * @throws StandardError when the house standard cannot be used.
 */
export async function makeSheetsCached({ input: given, cache, onFile }: SheetsWork): Promise<SheetsMade> {
  const { documents: withUses, shares } = await usesAround(given.files, given.files.documents, given, cache);
  const input = { ...given, files: { ...given.files, documents: withUses } };
  const { files, into } = input;
  const index = cache && publishedIndex(cache.sheets, into.folder);
  const keyOf = cache ? sheetKeys(input, shares, cache.edition) : () => undefined;
  const keys = new Map(files.documents.map((file: NamedFile) => [file.path, keyOf(file)]));
  const unchanged = index ? putUnchanged(input, keys, index) : new Map<string, PublishedSheet>();
  const documents = files.documents.filter(({ path }) => !unchanged.has(path));
  const others = files.documents.flatMap(({ path, outline }) => (unchanged.has(path) && outline ? [outline] : []));
  const sheets = await makeManySheets({ ...input, files: { ...files, documents, others } }, onFile);
  const fresh = new Map<string, WrittenSheet>();
  for (const [at, { path }] of documents.entries()) {
    const sheet = sheets[at] as WrittenSheet;
    fresh.set(path, sheet);
    const key = keys.get(path);
    const { summary, dependencies, put, unshown } = sheet;
    // Of a picture that is not shown is told each time.
    if (key !== undefined && !dependencies.otherBuilds && unshown.length === 0)
      index?.set(path, { key, summary, dependencies }, put);
  }
  const made = ({ path }: NamedFile): MadeSheet => fresh.get(path) ?? asBefore(unchanged.get(path) as PublishedSheet);
  return {
    made: files.documents.map(made),
    anew: [...fresh.keys()],
    unshown: sheets.flatMap(({ unshown }) => unshown),
  };
}
