import { resolve } from "node:path";
import type { FolderStandard } from "@plumbmark/core";
import type { FileSource } from "../source/source.js";
import { editionOn } from "./editions.js";
import { STANDARD } from "./find-standard.js";

/** House standards of folders below the root, each in the edition that is in force. */
export async function readFolderStandards(
  source: FileSource,
  root: string,
  today: string,
): Promise<readonly FolderStandard[]> {
  const found = await source.treeAt(root).find([`*/**/${STANDARD}`]);
  // The cases of a rule may have house standards of their own; they are for the cases.
  // In a folder that may not be looked into no document is found either, which is told with the documents.
  const paths = found.filter((path) => path.endsWith(`/${STANDARD}`) && !path.startsWith("house-rules/"));
  return Promise.all(
    paths.map(async (path) => {
      const { path: shown, text } = await editionOn(source, root, resolve(root, path), path, today);
      return { folder: path.slice(0, -STANDARD.length - 1), path: shown, text };
    }),
  );
}
