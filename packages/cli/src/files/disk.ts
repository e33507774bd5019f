import { stat } from "node:fs/promises";
import { resolve } from "node:path";
import { findFiles, leadsOutside } from "./find-files.js";
import { readText, type Text } from "./read-text.js";
import type { Origin, Tree } from "./tree.js";

const OUTSIDE: Text = {
  problem: { says: "The link leads outside the docs repository.", mend: "Put the file itself there." },
};

const treeAt = (root: string): Tree => ({
  find: (patterns) => findFiles(root, patterns),
  read: async (paths) => {
    const texts: Text[] = [];
    // One after another: thousands of files at once would run out of file handles.
    for (const path of paths)
      texts.push((await leadsOutside(root, path)) ? OUTSIDE : await readText(resolve(root, path)));
    return texts;
  },
});

const kind = (path: string): Promise<"file" | "folder" | undefined> =>
  stat(path).then(
    (found) => (found.isFile() ? "file" : found.isDirectory() ? "folder" : undefined),
    () => undefined,
  );

/** Files as they lie on the disk. */
export const disk: Origin = {
  treeAt,
  text: readText,
  isFile: async (path) => (await kind(path)) === "file",
  isFolder: async (path) => (await kind(path)) === "folder",
};
