import { realpath } from "node:fs/promises";
import { isAbsolute, relative, resolve, sep } from "node:path";
import { glob } from "tinyglobby";
import { Trouble } from "../trouble.js";

/** A path as it is written everywhere in the record: relative to the root, with forward slashes. */
export const fromRoot = (root: string, path: string): string => relative(root, path).split(sep).join("/");

export const isOutside = (path: string): boolean => path === ".." || path.startsWith("../") || isAbsolute(path);

/** Whether a path, every link followed, lies outside the root. */
export async function leadsOutside(root: string, path: string): Promise<boolean> {
  try {
    return isOutside(fromRoot(await realpath(root), await realpath(resolve(root, path))));
  } catch {
    return false;
  }
}

/** Files under the root that match one of the patterns of a house standard, sorted. */
export async function findFiles(root: string, patterns: readonly string[]): Promise<readonly string[]> {
  const astray = patterns.find((pattern) => isAbsolute(pattern) || pattern.split("/").includes(".."));
  if (astray !== undefined) {
    throw new Trouble(
      `The house standard names \`${astray}\`, which leads outside its folder.`,
      "Name files by their path below the house standard.",
    );
  }
  const found = await glob([...patterns], {
    cwd: root,
    expandDirectories: false,
    ignore: ["**/node_modules/**", "**/.git/**"],
  });
  return found.map((path) => path.split("\\").join("/")).sort();
}
