import { dirname, resolve } from "node:path";
import { fromRoot, isOutside } from "../source/paths.js";
import type { FileSource } from "../source/source.js";
import { Trouble } from "../terminal/trouble.js";

/** One path of the command line, made absolute. */
export interface Asked {
  readonly written: string;
  readonly path: string;
  readonly folder: boolean;
}

export async function readAsked(source: FileSource, folder: string, written: string): Promise<Asked> {
  const path = resolve(folder, written);
  const kind = await source.kind(path);
  if (kind === undefined)
    throw new Trouble(`There is no file or folder \`${written}\`.`, `Check its name; paths start from ${folder}.`);
  return { written, path, folder: kind === "folder" };
}

export const folderOf = (asked: Asked): string => (asked.folder ? asked.path : dirname(asked.path));

/** The nearest folder that holds all of these. */
export function commonFolder(folders: readonly string[]): string {
  const [first, ...others] = folders as readonly [string, ...string[]];
  const holds = others.every((other) => !isOutside(fromRoot(first, other)));
  return holds ? first : commonFolder([dirname(first), ...others]);
}

/** Whether a path, relative to the root, is one of those asked for or below one of them. */
export const covers = (asked: Asked, root: string, path: string): boolean => {
  const wanted = fromRoot(root, asked.path);
  return wanted === "" || path === wanted || (asked.folder && path.startsWith(`${wanted}/`));
};
