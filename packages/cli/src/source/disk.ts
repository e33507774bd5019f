import { lstat, readlink, stat } from "node:fs/promises";
import { resolve } from "node:path";
import { findFiles, leadsOutside } from "./find-files.js";
import { fromRoot, isOutside } from "./paths.js";
import { readAgain } from "./read-again.js";
import { LEADS_OUTSIDE, LIES_OUTSIDE, readText, type Text } from "./read-text.js";
import type { EntryKind, FileSource, Tree } from "./source.js";

async function readInside(root: string, path: string): Promise<Text> {
  // What lies elsewhere by its name alone is not even looked for.
  if (isOutside(fromRoot(root, resolve(root, path)))) return LIES_OUTSIDE;
  return (await leadsOutside(root, path)) ? LEADS_OUTSIDE : readText(resolve(root, path));
}

/** Each folder is on the way to many files and is asked about once. */
function linksIn(root: string): (path: string) => Promise<string | undefined> {
  const known = new Map<string, Promise<string | undefined>>();
  return (path) => {
    const found = known.get(path) ?? readlink(resolve(root, path)).catch(() => undefined);
    known.set(path, found);
    return found;
  };
}

const treeAt = (root: string): Tree => ({
  linkAt: linksIn(root),
  find: (patterns) => findFiles(root, patterns),
  read: async (paths) => {
    const texts: Text[] = [];
    // One after another: thousands of files at once would run out of file handles.
    for (const path of paths) texts.push(await readInside(root, path));
    return texts;
  },
  again: (path, id) => readAgain(resolve(root, path), id),
});

const isAbsent = (error: unknown): boolean => ["ENOENT", "ENOTDIR"].includes((error as { code: string }).code);

/** A link is what it leads to; one that leads nowhere, and what may not be looked at, is there all the same. */
async function kind(path: string): Promise<EntryKind | undefined> {
  try {
    const found = await stat(path);
    return found.isFile() ? "file" : found.isDirectory() ? "folder" : "other";
  } catch (error) {
    if (!isAbsent(error)) return "other";
    return lstat(path).then(
      () => "other",
      () => undefined,
    );
  }
}

/** Files as they lie on the disk. */
export const disk: FileSource = {
  treeAt,
  text: (path, root) => (root ? readInside(root, path) : readText(path)),
  kind,
};
