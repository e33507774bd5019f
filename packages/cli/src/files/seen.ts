import { createHash } from "node:crypto";
import type { Dirent, Stats } from "node:fs";
import type { Kind } from "./tree.js";

// What an inspection sees of the disk is written down here, so that it can be told later whether it would see the same.

/** What was seen of the disk. */
export interface Facts {
  /** Folders, with a digest of the names in them. */
  readonly listings: Record<string, string>;
  /** Paths, with what was there; null for nothing. */
  readonly kinds: Record<string, Kind | null>;
  /** Paths, with where they lead when every link is followed. */
  readonly ways: Record<string, string>;
  /** Files, with git's name of their content. */
  readonly contents: Record<string, string>;
}

/** Facts being gathered; `settled` is false when something could not be told, or was changed meanwhile. */
export interface Witness {
  readonly facts: Facts;
  settled: boolean;
}

let witness: Witness | undefined;

const empty = (): Record<string, never> => Object.create(null) as Record<string, never>;

/** Begins to write down what is seen from now on. */
export function beginToWitness(): Witness {
  witness = { facts: { listings: empty(), kinds: empty(), ways: empty(), contents: empty() }, settled: true };
  return witness;
}

/** Nothing can rest on what is seen this time. */
export function unsettle(): void {
  if (witness) witness.settled = false;
}

function note<K extends keyof Facts>(which: K, path: string, answer: Facts[K][string]): void {
  const known = witness?.facts[which] as Record<string, unknown> | undefined;
  if (!known) return;
  if (known[path] !== undefined && known[path] !== answer) unsettle();
  known[path] = answer;
}

const typeOf = (entry: Dirent): string =>
  entry.isFile() ? "file" : entry.isDirectory() ? "folder" : entry.isSymbolicLink() ? "link" : "other";

/** A digest of what is in a folder. */
export const listingOf = (entries: readonly Dirent[]): string => {
  const lines = entries.map((entry) => `${entry.name}\0${typeOf(entry)}`).sort();
  return createHash("sha1").update(lines.join("\n")).digest("hex");
};

export const kindOf = (found: Stats): Kind => (found.isFile() ? "file" : found.isDirectory() ? "folder" : "other");

export const noteListing = (path: string, entries: readonly Dirent[]): void => {
  if (witness) note("listings", path, listingOf(entries));
};
export const noteKind = (path: string, kind: Kind | undefined): void => note("kinds", path, kind ?? null);
export const noteWay = (path: string, real: string): void => note("ways", path, real);

/** @param id git's name of the content; undefined when it could not be read */
export const noteContent = (path: string, id: string | undefined): void =>
  id === undefined ? unsettle() : note("contents", path, id);
