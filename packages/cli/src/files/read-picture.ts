import { readFileSync, realpathSync, statSync } from "node:fs";
import { relative, resolve } from "node:path";
import { isOutside } from "./find-files.js";

/** A picture larger than this would make a sheet that a phone on site cannot load. */
const LARGEST = 20_000_000;

/** Reads pictures below a root; what is not there, too large or outside, links followed, is undefined. */
export const pictureReader =
  (root: string) =>
  (path: string): Uint8Array | undefined => {
    try {
      const file = realpathSync(resolve(root, path));
      const found = statSync(file);
      if (isOutside(relative(realpathSync(root), file)) || !found.isFile() || found.size > LARGEST) return undefined;
      return readFileSync(file);
    } catch {
      // Whether it is not there or may not be read: the sheet shows its words instead, and `document.links` tells why.
      return undefined;
    }
  };
