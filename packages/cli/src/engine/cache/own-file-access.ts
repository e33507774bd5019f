import { closeSync, constants, fstatSync, openSync, readFileSync } from "node:fs";
import { isOursAlone } from "./location.js";

/** Neither a link nor anything that would keep a reader waiting is opened (`O_NOFOLLOW` and `O_NONBLOCK` of POSIX). */
const PLAINLY = (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);

/** Opens a file that only its user can have written and does something with it; undefined when it is none. */
export function withOwnFile<T>(path: string, flags: number, work: (file: number, size: number) => T): T | undefined {
  let file: number | undefined;
  try {
    file = openSync(path, flags | PLAINLY);
    const found = fstatSync(file);
    return found.isFile() && isOursAlone(found) ? work(file, found.size) : undefined;
  } catch {
    return undefined;
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

/** What is in a file that only its user can have written; undefined when it is none, or larger than that. */
export const readOwnFile = (path: string, largest = Number.MAX_SAFE_INTEGER): Buffer | undefined =>
  withOwnFile(path, constants.O_RDONLY, (file, size) => (size <= largest ? readFileSync(file) : undefined));
