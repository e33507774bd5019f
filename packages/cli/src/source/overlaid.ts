import { resolve } from "node:path";
import type { FileSource } from "./source.js";

/** A source in which some files have other texts: what is open in an editor, or is about to be written. */
export function overlaid(source: FileSource, texts: ReadonlyMap<string, string>): FileSource {
  if (texts.size === 0) return source;
  return {
    ...source,
    text: async (path, root) => {
      const text = texts.get(resolve(path));
      return text === undefined ? source.text(path, root) : { text };
    },
    treeAt: (root) => {
      // Names of contents are those of what lies below.
      const { named: _named, again: _again, ...tree } = source.treeAt(root);
      return {
        ...tree,
        read: async (paths) => {
          const read = await tree.read(paths);
          return paths.map((path, index) => {
            const text = texts.get(resolve(root, path));
            return text === undefined ? (read[index] as (typeof read)[number]) : { text };
          });
        },
      };
    },
  };
}
