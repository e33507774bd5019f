import { posix } from "node:path";
import { gitBlobName } from "./blob-name.js";
import { fromRoot, isOutside } from "./paths.js";
import { readPatterns } from "./patterns.js";
import { decode, LIES_OUTSIDE, type Text } from "./read-text.js";
import type { FileSource } from "./source.js";

const ABSENT: Text = { problem: { says: "The file is not there.", mend: "Check its name and folder." } };
const A_FOLDER: Text = { problem: { says: "This is a folder.", mend: "Name a file here." } };

/** Files that are held in memory, by absolute path with forward slashes: what an editor has not saved yet, or a test. */
export function memorySource(files: ReadonlyMap<string, string | Uint8Array>): FileSource {
  const bytesOf = (content: string | Uint8Array): Buffer => Buffer.from(content);
  const isFolder = (path: string): boolean => [...files.keys()].some((each) => each.startsWith(`${path}/`));
  const read = (path: string, root: string): Text => {
    if (isOutside(fromRoot(root, path))) return LIES_OUTSIDE;
    const content = files.get(path);
    if (content === undefined) return isFolder(path) ? A_FOLDER : ABSENT;
    const bytes = bytesOf(content);
    return { ...decode(bytes), id: gitBlobName(bytes) };
  };
  const below = (root: string): readonly string[] =>
    [...files.keys()].map((path) => fromRoot(root, path)).filter((path) => !isOutside(path));
  return {
    treeAt: (root) => ({
      find: async (patterns) => below(root).filter(readPatterns(patterns).fits).sort(),
      read: async (paths) => paths.map((path) => read(posix.join(root, path), root)),
    }),
    text: async (path, root = "/") => read(path, root),
    kind: async (path) => (files.has(path) ? "file" : isFolder(path) ? "folder" : undefined),
  };
}
