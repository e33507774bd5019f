import type { RepositoryFiles } from "@plumbmark/core";
import {
  fileWithOutline,
  type NamedFile,
  outlineAt,
  type PlacelessOutline,
  withoutPlace,
} from "../../repository/outlines.js";
import { readOutlines } from "../workers/read-outlines.js";
import type { ResultCache } from "./cache.js";

/** The documents with their outlines: those that are cached, and those that have to be read. */
export async function withOutlines(
  files: RepositoryFiles,
  cache: ResultCache | undefined,
): Promise<readonly NamedFile[]> {
  const documents = (files.documents as readonly NamedFile[]).map((file) => {
    if (file.outline !== undefined) return file;
    const known = file.id === undefined ? undefined : cache?.outlines.get(file.id);
    return known ? fileWithOutline(file, outlineAt(known as PlacelessOutline, file.path)) : file;
  });
  const fresh = await readOutlines(documents.filter(({ outline }) => outline === undefined));
  const read = new Map(fresh.map((outline) => [outline.path, outline]));
  return documents.map((file) => {
    const outline = read.get(file.path);
    if (!outline) return file;
    if (file.id !== undefined) cache?.outlines.set(file.id, withoutPlace(outline));
    return fileWithOutline(file, outline);
  });
}
