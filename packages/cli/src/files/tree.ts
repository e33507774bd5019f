import type { Text } from "./read-text.js";

/** Files below a root, to be read. Paths are relative to the root, with forward slashes. */
export interface Tree {
  /** Files that match one of the patterns, sorted. */
  readonly find: (patterns: readonly string[]) => Promise<readonly string[]>;
  /** The texts of files, in the order asked for; what cannot be read is told as a problem. */
  readonly read: (paths: readonly string[]) => Promise<readonly Text[]>;
  /** Names of the contents of files, where they can be had without reading them. */
  readonly named?: Named;
}

/** Contents that have names; both take and give them in the same order. */
export interface Named {
  /** The name of each file's content; undefined for what is no plain file. */
  readonly names: (paths: readonly string[]) => readonly (string | undefined)[];
  /** Has contents ready for `now`, all at once. */
  readonly load: (names: readonly string[]) => Promise<void>;
  /** The texts of contents. */
  readonly now: (names: readonly string[]) => ReadonlyMap<string, Text>;
}

/** Where files come from: the disk, or what git keeps of it. Paths are absolute. */
export interface Origin {
  readonly treeAt: (root: string) => Tree;
  /** The text of one file, links followed wherever they lead. */
  readonly text: (path: string) => Promise<Text>;
  readonly isFile: (path: string) => Promise<boolean>;
  readonly isFolder: (path: string) => Promise<boolean>;
}
