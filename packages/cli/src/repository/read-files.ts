import type { SourceFile } from "@plumbmark/core";
import type { ReadProblem } from "../source/read-text.js";
import type { Tree } from "../source/source.js";

/** A file that was to be read and could not be. It counts as not ready: what is not read cannot pass. */
export interface Unreadable extends ReadProblem {
  readonly path: string;
}

export interface ReadFiles {
  readonly files: readonly (SourceFile & { readonly id?: string })[];
  readonly unreadable: readonly Unreadable[];
}

/** Reads files of the docs repository; `paths` are relative to its root. */
export async function readFiles(tree: Tree, paths: readonly string[]): Promise<ReadFiles> {
  const files: (SourceFile & { readonly id?: string })[] = [];
  const unreadable: Unreadable[] = [];
  for (const [index, read] of (await tree.read(paths)).entries()) {
    const path = paths[index] as string;
    if ("text" in read) files.push({ path, ...read });
    else unreadable.push({ path, ...read.problem });
  }
  return { files, unreadable };
}
