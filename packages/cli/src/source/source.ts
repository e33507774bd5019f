import type { Text } from "./read-text.js";

/** Files below a root, to be read. Paths are relative to the root, with forward slashes. */
export interface Tree {
  /** Files that match one of the patterns, sorted, and what keeps files from being found: reading it tells why. */
  readonly find: (patterns: readonly string[]) => Promise<readonly string[]>;
  /** The texts of files, in the order asked for; what cannot be read is told as a problem. */
  readonly read: (paths: readonly string[]) => Promise<readonly Text[]>;
  /** Where the link at a path leads, as it is written; undefined for what is no link. Left out where there are no links. */
  readonly linkAt?: (path: string) => Promise<string | undefined>;
  /** The text of a file that was read before, where its content still has that name; undefined when it has not. */
  readonly again?: (path: string, id: string) => string | undefined;
  /** Names of the contents of files, where they can be had without reading them. */
  readonly named?: NamedContents;
}

/** Contents that have names; both take and give them in the same order. */
export interface NamedContents {
  /** The name of each file's content; undefined for what is no plain file. */
  readonly names: (paths: readonly string[]) => readonly (string | undefined)[];
  /** Has contents ready for `now`, all at once. */
  readonly load: (names: readonly string[]) => Promise<void>;
  /** The texts of contents. */
  readonly now: (names: readonly string[]) => ReadonlyMap<string, Text>;
}

/** What is at a path; `other` is neither file nor folder, or cannot be told. */
export type EntryKind = "file" | "folder" | "other";

/** Where files come from: the disk, or what git keeps of it. Paths are absolute. */
export interface FileSource {
  readonly treeAt: (root: string) => Tree;
  /** The text of one file; links are followed inside `root`, and wherever they lead when there is none. */
  readonly text: (path: string, root?: string) => Promise<Text>;
  /** What is at a path, links followed; undefined when there is nothing. */
  readonly kind: (path: string) => Promise<EntryKind | undefined>;
}
