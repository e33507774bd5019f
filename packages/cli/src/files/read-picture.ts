import { closeSync, constants, fstatSync, openSync, readFileSync, realpathSync } from "node:fs";
import { relative, resolve } from "node:path";
import { isOutside } from "./find-files.js";
import { systemFault } from "./system-fault.js";

/** A picture larger than this would make a sheet that a phone on site cannot load. */
const LARGEST = 20_000_000;

/** A picture that is not shown, and why. */
export type Unshown = readonly [path: string, why: string];

/** What is no file any more once it is opened would keep whoever reads it waiting. */
const AT_ONCE = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

function read(root: string, path: string): Uint8Array | string {
  const place = realpathSync(resolve(root, path));
  if (isOutside(relative(realpathSync(root), place))) return "it lies outside the docs repository";
  const file = openSync(place, AT_ONCE);
  try {
    const found = fstatSync(file);
    if (!found.isFile()) return "it is not a file";
    if (found.size > LARGEST) return `it is ${(found.size / 1e6).toFixed(1)} MB large; ${LARGEST / 1e6} MB are shown`;
    return readFileSync(file);
  } finally {
    closeSync(file);
  }
}

const reasonOf = (error: unknown, path: string): string => {
  const fault = systemFault(error);
  return fault ? fault.says.replace(/^.*?: /u, "").replace(/\.$/u, "") : `${path} is no path`;
};

/** Reads pictures below a root. The sheet shows the words of one that cannot be had; `unshown` is told why. */
export const pictureReader =
  (root: string, unshown: (picture: Unshown) => void) =>
  (path: string): Uint8Array | undefined => {
    let found: Uint8Array | string;
    try {
      found = read(root, path);
    } catch (error) {
      found = reasonOf(error, path);
    }
    if (typeof found !== "string") return found;
    unshown([path, found]);
    return undefined;
  };
