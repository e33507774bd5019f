import {
  bookedIn,
  type DocumentFile,
  type InspectOptions,
  ledgerOf,
  type OtherDocument,
  type Outline,
  openRepository,
  type RepositoryFiles,
  type SharedUse,
  sharedKey,
  withWay,
} from "@plumbmark/core";
import { fileWithOutline, type NamedFile } from "../../repository/outlines.js";
import { readUses } from "../workers/read-uses.js";
import type { ResultCache } from "./cache.js";
import { contextKey, hashOf } from "./keys.js";

/** Documents with what those use that are there on the days of another. */
export interface WithUses {
  readonly documents: readonly NamedFile[];
  readonly others: readonly OtherDocument[];
  /** What a document shares with whom: whatever is judged of it rests on that. */
  readonly shares: (path: string) => unknown;
}

const nobody = (): never => {
  throw new Error("nobody asked what this document uses");
};

const digests = new WeakMap<object, string>();

/** Tells a booking from any other: each is worked out once, and is in what hundreds of others share. */
function digestOf(booking: object): string {
  const digest = digests.get(booking) ?? hashOf(booking).slice(0, 32);
  digests.set(booking, digest);
  return digest;
}

/** What is read of some documents, or looked up: it rests on their content and on what all documents are given alike. */
async function usesOfAll(
  wanted: readonly (NamedFile | OtherDocument)[],
  files: RepositoryFiles,
  options: InspectOptions,
  cache: ResultCache | undefined,
): Promise<ReadonlyMap<string, readonly SharedUse[]>> {
  const context = contextKey(files, cache?.edition ?? "", "");
  const keyOf = (file: { readonly path: string; readonly id?: string }): string | undefined =>
    file.id === undefined ? undefined : `uses-${hashOf([context, file.path, file.id])}`;
  const found = new Map<string, readonly SharedUse[]>();
  const left: (NamedFile | OtherDocument)[] = [];
  for (const file of wanted) {
    const key = cache ? keyOf(file) : undefined;
    const known = key === undefined ? undefined : (cache?.outlines.get(key) as readonly SharedUse[] | undefined);
    if (known) found.set(file.path, known);
    else left.push(file);
  }
  const read = await readUses(files, left as readonly DocumentFile[], options);
  for (const [index, file] of left.entries()) {
    const uses = read[index] as readonly SharedUse[];
    found.set(file.path, uses);
    const key = keyOf(file);
    if (key !== undefined) cache?.outlines.set(key, uses);
  }
  return found;
}

const withUses = <O extends OtherDocument>(outline: O, uses: readonly SharedUse[] | undefined): O =>
  uses ? (Object.defineProperties({ uses }, Object.getOwnPropertyDescriptors(outline)) as unknown as O) : outline;

/**
 * Works out what documents use, of those that are there on the days of one that is going to be judged.
 * @throws StandardError when the house standards cannot be used
 */
export async function usesAround(
  files: RepositoryFiles,
  documents: readonly NamedFile[],
  options: InspectOptions,
  cache: ResultCache | undefined,
): Promise<WithUses> {
  const others = files.others ?? [];
  const { days } = openRepository({ ...files, documents: [], others: [] }, [], options).stock;
  const own = documents.flatMap(({ outline }) => (outline ? [outline] : []));
  const outlines: readonly Outline[] = [...own, ...others];
  const around = ledgerOf(outlines, days, nobody);
  const wanted = new Set<string>();
  for (const { path, stay } of own) {
    const there = around.near(stay && withWay(stay, days)).filter((each) => each.path !== path);
    for (const each of there) wanted.add(each.path);
    if (there.length > 0) wanted.add(path);
  }
  const near = [...documents, ...others].filter(({ path }) => wanted.has(path));
  const known = await usesOfAll(near, files, options, cache);
  const told = outlines.map((each) => withUses(each, known.get(each.path)));
  const byPath = new Map(told.map((each) => [each.path, each]));
  const ledger = ledgerOf(told, days, (path) => known.get(path) ?? nobody());
  return {
    documents: documents.map((file) => (file.outline ? fileWithOutline(file, byPath.get(file.path) as Outline) : file)),
    others: others.map((each) => byPath.get(each.path) as OtherDocument),
    shares: (path) => {
      const outline = byPath.get(path);
      if (!outline?.uses) return [];
      const booked = bookedIn(outline, outline.uses, days);
      const keys = new Map(booked.map((each) => [sharedKey(each), each.stay]));
      return [...keys].map(([key, stay]) => ledger.on(key, stay, path).map(digestOf));
    },
  };
}
