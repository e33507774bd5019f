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

/** Folders that never hold documents of ours. */
export const NEVER: readonly string[] = ["**/node_modules/**", "**/.git/**"];

/** @throws Trouble when a pattern leads out of the folder of the house standard. */
export function refuseAstray(patterns: readonly string[]): void {
  const astray = patterns.find((pattern) => isAbsolute(pattern) || pattern.split("/").includes(".."));
  if (astray !== undefined) {
    throw new Trouble(
      `The house standard names \`${astray}\`, which leads outside its folder.`,
      "Name files by their path below the house standard.",
    );
  }
}

/** Files under the root that match one of the patterns of a house standard, sorted. */
export async function findFiles(root: string, patterns: readonly string[]): Promise<readonly string[]> {
  refuseAstray(patterns);
  const found = await glob([...patterns], { cwd: root, expandDirectories: false, ignore: [...NEVER] });
  return found.map((path) => path.split("\\").join("/")).sort();
}
