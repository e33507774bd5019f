import type { Text } from "./read-text.js";

/** Files below a root, to be read. Paths are relative to the root, with forward slashes. */
export interface Tree {
  /** Files that match one of the patterns, sorted. */
  readonly find: (patterns: readonly string[]) => Promise<readonly string[]>;
  /** The texts of files, in the order asked for; what cannot be read is told as a problem. */
  readonly read: (paths: readonly string[]) => Promise<readonly Text[]>;
}

/** Where files come from: the disk, or what git keeps of it. Paths are absolute. */
export interface Origin {
  readonly treeAt: (root: string) => Tree;
  /** The text of one file, links followed wherever they lead. */
  readonly text: (path: string) => Promise<Text>;
  readonly isFile: (path: string) => Promise<boolean>;
  readonly isFolder: (path: string) => Promise<boolean>;
}
