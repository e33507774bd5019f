import { lstatSync, realpathSync, rmdirSync, rmSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { writeInPlace } from "@plumbmark/in-place";
import { isOutside } from "../source/paths.js";
import { notWritten } from "../terminal/system-fault.js";
import { Trouble } from "../terminal/trouble.js";
import type { StartFile } from "./starter-files.js";

/** What became of the files: those that were there are as they were. */
export interface PutFiles {
  readonly written: readonly string[];
  readonly left: readonly string[];
}

const exists = (path: string): boolean => {
  try {
    lstatSync(path);
    return true;
  } catch {
    return false;
  }
};

/** The nearest folder above a path that is there. */
const standing = (path: string): string => (exists(dirname(path)) ? dirname(path) : standing(dirname(path)));

/** A link on the way would lead the file somewhere else. */
function refuseAway(to: string, path: string): void {
  const real = realpathSync(standing(join(to, path)));
  const way = relative(realpathSync(to), real);
  if (way !== "" && isOutside(way))
    throw new Trouble(
      `${path} would be written to ${real}, outside of ${to}: a link leads there.`,
      "Name another folder.",
    );
}

/** Takes away what was written, and folders that were made for it. */
function takeBack(to: string, written: readonly string[], before: ReadonlySet<string>): void {
  for (const path of written.toReversed()) {
    rmSync(join(to, path), { force: true });
    for (let folder = dirname(path); folder !== "." && !before.has(folder); folder = dirname(folder))
      try {
        rmdirSync(join(to, folder));
      } catch {
        break;
      }
  }
}

const foldersOf = (path: string): readonly string[] =>
  path.includes("/") ? [dirname(path), ...foldersOf(dirname(path))] : [];

/**
 * Puts files into a folder in which there may be others, one after another. What is there is never touched; where one
 * cannot be written, those before it are taken away again.
 */
export function putFiles(to: string, files: readonly StartFile[]): PutFiles {
  const [written, left]: [string[], string[]] = [[], []];
  const before = new Set(files.flatMap(({ path }) => foldersOf(path)).filter((folder) => exists(join(to, folder))));
  try {
    for (const { path, text, mode } of files) {
      if (exists(join(to, path))) {
        left.push(path);
        continue;
      }
      refuseAway(to, path);
      writeInPlace(join(to, path), text, { onlyNew: true, ...(mode === undefined ? {} : { mode }) });
      written.push(path);
    }
  } catch (error) {
    takeBack(to, written, before);
    throw error instanceof Trouble ? error : notWritten("The docs repository", to, error);
  }
  return { written, left };
}
