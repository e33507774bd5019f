import { ledgerOf, openRepository, readSurveys, type SourceFile, stayOf, withWay } from "@plumbmark/core";
import {
  draftedWish,
  type LotShapes,
  promisesIn,
  stockShapes,
  type WishEntry,
  type WishesInput,
} from "@plumbmark/docs-site";
import { readWish } from "@plumbmark/draft";
import type { NamedFile } from "../../repository/outlines.js";
import type { ResultCache } from "./cache.js";
import { contextKey, hashOf } from "./keys.js";

const nobody = (): never => {
  throw new Error("nobody asked what this document uses");
};

/**
 * The key of what came of a wish: its text, what all documents rest on, which names are taken, and the documents that
 * stand on its days. Undefined where one of them cannot be told from another.
 */
function keysOf({ files, rules, today }: WishesInput, edition: string): (file: SourceFile) => string | undefined {
  const frame = hashOf([
    contextKey(files, edition, today),
    rules.map(({ id, plugin }) => [id, plugin !== undefined]),
    files.documents.map(({ path, outline }) => [path, outline?.name]),
  ]);
  const surveys = readSurveys(files.surveys ?? []).byName;
  const { days } = openRepository({ ...files, documents: [], others: [] }, [], { today, accepted: true }).stock;
  const outlines = files.documents.flatMap(({ outline }) => (outline ? [outline] : []));
  const ledger = ledgerOf(outlines, days, nobody);
  const ids = new Map(files.documents.map((file: NamedFile) => [file.path, file.id]));
  return (file) => {
    const stay = stayOf(readWish(file, surveys).wish?.onSite);
    const near = stay ? ledger.near(withWay(stay, days)).map(({ path }) => [path, ids.get(path)] as const) : [];
    if (near.some(([, id]) => id === undefined)) return undefined;
    return hashOf([frame, file.path, file.text, near]);
  };
}

/** What came of each wish: looked up where it was drafted before from the same. @throws StandardError */
export function draftWishesCached(
  wishes: readonly SourceFile[],
  input: WishesInput,
  cache: ResultCache | undefined,
  progress: (words: string) => void,
): readonly WishEntry[] {
  if (wishes.length === 0) return [];
  const keyOf = cache ? keysOf(input, cache.edition) : () => undefined;
  return wishes.map((file) => {
    const key = keyOf(file);
    const known = key === undefined ? undefined : (cache?.wishes.get(key) as WishEntry | undefined);
    if (known) return known;
    progress(`Drafting ${file.path}`);
    const entry = draftedWish(file, input);
    if (key !== undefined) cache?.wishes.set(key, entry);
    return entry;
  });
}

/** What each lot can become on its free days: looked up where it was found out before from the same. @throws StandardError */
export function stockShapesCached(input: WishesInput, cache: ResultCache | undefined): readonly LotShapes[] {
  const { files, rules, today } = input;
  const promises = promisesIn(files);
  if (!cache) return stockShapes(input, promises);
  const ids = rules.map(({ id, plugin }) => [id, plugin !== undefined]);
  const key = `shapes-${hashOf([contextKey(files, cache.edition, today), ids, promises])}`;
  const known = cache.wishes.get(key) as readonly LotShapes[] | undefined;
  if (known) return known;
  const found = stockShapes(input, promises);
  cache.wishes.set(key, found);
  return found;
}
