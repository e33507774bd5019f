import { createHash } from "node:crypto";
import { join } from "node:path";
import { isThere, pathsOf, type RepositoryFiles, type Rule } from "@plumbmark/core";
import {
  dependenciesHold,
  fileStamp,
  type Into,
  pictureDigest,
  putAgain,
  type SheetPlaces,
  type Unshown,
} from "@plumbmark/docs-site";
import { pictureReader } from "../files/read-picture.js";
import { broughtBy, outcomesOn } from "../threads/brought.js";
import type { Made, MadeOf } from "../threads/sheets.js";
import { makeManySheets } from "../threads/sheets-many.js";
import { edition } from "./edition.js";
import { isFailure } from "./failure.js";
import { documentKey, frameKey, sharedBy } from "./keys.js";
import type { NamedFile } from "./outlines.js";
import type { KeptSheet, StandingSheets } from "./standing-sheets.js";

/** What one publish leaves for the next one in the same process: the sheets by path of their documents. */
export type KeptSheets = ReadonlyMap<string, KeptSheet>;

/** What is to be published, as far as sheets rest on it. */
export interface Published {
  readonly files: RepositoryFiles;
  readonly rules: readonly Rule[];
  readonly today: string;
  readonly root: string;
  readonly places: SheetPlaces;
  /** What earlier processes left in the site. */
  readonly standing?: StandingSheets | undefined;
}

/** Whether sheets rest on nothing but what their keys are made of. */
const canBeKept = (rules: readonly Rule[]): boolean =>
  rules.every(({ plugin, over, result }) => result !== undefined || (plugin === undefined && !over));

const hash = (data: unknown): string => createHash("sha256").update(JSON.stringify(data)).digest("hex");

/** Names are sorted as it is done where whoever publishes lives. */
const locale = new Intl.Collator().resolvedOptions().locale;

type KeyOf = (file: NamedFile) => string | undefined;

/** The keys of sheets; undefined for those that cannot be kept. */
function sheetKeys({ files, rules, today, places }: Published): KeyOf {
  if (!canBeKept(rules)) return () => undefined;
  const brought = broughtBy(rules);
  const frame = hash([frameKey(files, edition ?? "", today, brought), rules.map(({ id }) => id), locale]);
  const shared = sharedBy(files.documents.flatMap(({ outline }) => (outline ? [outline] : [])));
  const made = (file: NamedFile): string | undefined => {
    if (file.id === undefined) return undefined;
    const outcomes = outcomesOn(rules, file.path);
    if (outcomes.some(isFailure)) return undefined;
    return hash([documentKey(frame, file.id, file, shared, outcomes), places.get(file.path)]);
  };
  const keys = new Map(files.documents.map((file) => [file.path, made(file)]));
  return ({ path }) => keys.get(path);
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
function putKept(kept: KeptSheets, published: Published, keyOf: KeyOf, into: Into): KeptSheets {
  const { files, root, places, standing } = published;
  const paths = pathsOf(files);
  const pictureHash = pictureHashes(root);
  const there = (path: string): boolean => isThere(paths, path);
  const pageOf = (path: string): string | undefined => places.get(path)?.page;
  const put = files.documents.flatMap((file): readonly (readonly [string, KeptSheet])[] => {
    const key = keyOf(file);
    if (key === undefined) return [];
    const found = kept.get(file.path) ?? standing?.get(file.path, key);
    const holds = found?.key === key && dependenciesHold(found.dependencies, there, pageOf, pictureHash);
    return holds && putAgain(into, found.stamps) ? [[file.path, found]] : [];
  });
  return new Map(put);
}

const stampsOf = ({ put }: MadeOf, { fresh }: Into): KeptSheet["stamps"] =>
  new Map(put.map(({ path }) => [path, fileStamp(join(fresh, path)) ?? ""]));

/** The sheets of all documents, in their order, and what is kept of them for the next time. */
export interface SheetsKept {
  readonly made: readonly Made[];
  readonly kept: KeptSheets;
  /** Pictures that sheets made this time do not show, and why. */
  readonly unshown: readonly Unshown[];
}

/**
 * Makes the sheets of documents whose outlines are known, but those that stand in the earlier site as they would be made.
 * @param earlier what the publish before kept, in this process; undefined when no other will follow in it, so that
 * nothing need be kept for one
 * @throws StandardError when the house standard cannot be used.
 */
export async function makeSheetsKept(
  published: Published,
  into: Into,
  earlier: KeptSheets | undefined,
  onFile: () => void,
): Promise<SheetsKept> {
  const { files } = published;
  const documents: readonly NamedFile[] = files.documents;
  const keyOf = sheetKeys(published);
  const again = putKept(earlier ?? new Map(), published, keyOf, into);
  const left = documents.filter(({ path }) => !again.has(path));
  const others = documents.flatMap(({ path, outline }) => (again.has(path) && outline ? [outline] : []));
  const { standing: _, ...plain } = published;
  const made = await makeManySheets({ ...plain, files: { ...files, documents: left, others }, into }, onFile);
  const fresh = new Map(left.map((file, index) => [file.path, made[index] as MadeOf]));
  const kept = new Map(again);
  for (const file of left) {
    const key = keyOf(file);
    const own = fresh.get(file.path) as MadeOf;
    const { summary, dependencies, put, unshown } = own;
    if (key === undefined || dependencies.looksAround) continue;
    if (earlier) kept.set(file.path, { key, summary, dependencies, stamps: stampsOf(own, into) });
    // Of a picture that is not shown is told each time.
    if (unshown.length === 0) published.standing?.set(file.path, { key, summary, dependencies }, put);
  }
  const whole = ({ path }: NamedFile): Made => fresh.get(path) ?? putAsBefore(again.get(path) as KeptSheet);
  return { made: documents.map(whole), kept, unshown: made.flatMap(({ unshown }) => unshown) };
}

const putAsBefore = ({ summary, stamps }: KeptSheet): Made => ({
  summary,
  put: [...stamps.keys()].map((path) => ({ path, unchanged: true })),
});
