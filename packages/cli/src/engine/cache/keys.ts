import { createHash } from "node:crypto";
import {
  type DocumentFile,
  type Outline,
  type RepositoryFiles,
  type RuleResult,
  type SourceFile,
  stockFiles,
} from "@plumbmark/core";
import type { TransferredResults } from "../workers/plugin-results.js";

/** A hash of plain data. */
export const hashOf = (data: unknown): string => createHash("sha256").update(JSON.stringify(data)).digest("hex");

const whole = (file: SourceFile | undefined) => file && [file.path, file.text];

/**
 * The key of everything that all documents rest on: parts, stock, surveys, house standards, the day, what was carried out
 * elsewhere, and Plumbmark itself.
 */
export function contextKey(
  files: RepositoryFiles,
  edition: string,
  today: string,
  brought?: TransferredResults,
): string {
  const { houseStandard, folderStandards = [], parts, surveys = [], papers = [] } = files;
  const folders = folderStandards.map((file) => [...(whole(file) ?? []), file.folder]);
  return hashOf([
    edition,
    process.version,
    today,
    whole(houseStandard),
    folders,
    parts.map(whole),
    stockFiles(files).map(whole),
    surveys.map(whole),
    papers,
    brought ?? null,
  ]);
}

/** Documents by the names and lots they share. */
export interface Shared {
  readonly names: ReadonlyMap<string, readonly string[]>;
  readonly lots: ReadonlyMap<string, readonly Outline["promises"][number][]>;
}

export function sharedBy(outlines: readonly Outline[]): Shared {
  const names = new Map<string, string[]>();
  const lots = new Map<string, Outline["promises"][number][]>();
  const put = <T>(map: Map<string, T[]>, key: string, value: T): void => {
    const list = map.get(key);
    if (list) list.push(value);
    else map.set(key, [value]);
  };
  for (const { name, path, promises } of [...outlines].sort((one, other) => (one.path < other.path ? -1 : 1))) {
    if (name !== undefined) put(names, name, path);
    for (const promise of promises) put(lots, promise.lot, promise);
  }
  return { names, lots };
}

/**
 * The key of one document: its content, its place, the context, what others share with it, and what plugins came to.
 * @param shares what others use of what it uses
 */
export function documentKey(
  frame: string,
  id: string,
  { path, outline }: DocumentFile,
  shared: Shared,
  shares: unknown,
  outcomes: readonly RuleResult[],
): string {
  const name = outline?.name;
  const lots = [...new Set(outline?.promises.map(({ lot }) => lot))].sort();
  return hashOf([
    frame,
    id,
    path,
    name === undefined ? [] : shared.names.get(name),
    lots.map((lot) => shared.lots.get(lot)),
    shares,
    outcomes,
  ]);
}
