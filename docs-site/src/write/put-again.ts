import { linkSync, mkdirSync, rmSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Into } from "./put-file.js";

/** Tells whether a file is the one that was written, without reading it: its number, size and time of writing. */
export type FileStamp = string;

/** Undefined when there is no such file. */
export function fileStamp(path: string): FileStamp | undefined {
  const found = statSync(path, { throwIfNoEntry: false, bigint: true });
  return found?.isFile() ? `${found.ino} ${found.size} ${found.mtimeNs}` : undefined;
}

/** Puts a file there; whether it was this that put it, and not another sheet that shows the same picture. */
function linked(from: string, to: string): boolean {
  try {
    mkdirSync(dirname(to), { recursive: true });
    linkSync(from, to);
    return true;
  } catch {
    // It is there already, or it cannot be had so: the stamp tells.
    return false;
  }
}

const stampIfAny = (path: string): FileStamp | undefined => {
  try {
    return fileStamp(path);
  } catch {
    return undefined;
  }
};

/**
 * Puts files of the earlier site into the new one without making them, if every one still is the file that was written;
 * gives whether. Otherwise nothing is put there.
 */
export function putAgain({ fresh, folder }: Into, files: ReadonlyMap<string, FileStamp>): boolean {
  const put: string[] = [];
  for (const [path, stamp] of files) {
    const to = join(fresh, path);
    if (linked(join(folder, path), to)) put.push(to);
    if (stampIfAny(to) === stamp) continue;
    // What is linked must not stay: writing it anew would write into the earlier site.
    for (const each of put) rmSync(each, { force: true });
    return false;
  }
  return true;
}
