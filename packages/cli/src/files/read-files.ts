import { resolve } from "node:path";
import type { SourceFile } from "@plumbmark/core";
import { leadsOutside } from "./find-files.js";
import { type Problem, readText } from "./read-text.js";

/** A file that was to be read and could not be. It counts as not ready: what is not read cannot pass. */
export interface Unreadable extends Problem {
  readonly path: string;
}

export interface ReadFiles {
  readonly files: readonly SourceFile[];
  readonly unreadable: readonly Unreadable[];
}

const OUTSIDE: Problem = {
  says: "The link leads outside the docs repository.",
  mend: "Put the file itself there.",
};

/** Reads files of the docs repository; `paths` are relative to `root`. */
export async function readFiles(root: string, paths: readonly string[]): Promise<ReadFiles> {
  const files: SourceFile[] = [];
  const unreadable: Unreadable[] = [];
  for (const path of paths) {
    const read = (await leadsOutside(root, path)) ? { problem: OUTSIDE } : await readText(resolve(root, path));
    if ("text" in read) files.push({ path, text: read.text });
    else unreadable.push({ path, ...read.problem });
  }
  return { files, unreadable };
}
