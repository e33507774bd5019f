import { isAbsolute, relative, sep } from "node:path";

/** A path as it is written everywhere in the record: relative to the root, with forward slashes. */
export const fromRoot = (root: string, path: string): string => relative(root, path).split(sep).join("/");

export const isOutside = (path: string): boolean => path === ".." || path.startsWith("../") || isAbsolute(path);
