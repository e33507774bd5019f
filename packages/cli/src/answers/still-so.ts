import { closeSync, constants, fstatSync, openSync, readdirSync, readSync, realpathSync, statSync } from "node:fs";
import { basename, dirname } from "node:path";
import { type Facts, kindOf, listingOf } from "../files/seen.js";
import { blobName } from "../kept/keys.js";

// Whether the disk is as it was seen. Every file is read again: a time of change can be set, a content cannot.

/** A link is not followed where none was, and nothing is waited for that has taken a file's place. */
const PLAINLY = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0) | (constants.O_NOFOLLOW ?? 0);

let room = Buffer.allocUnsafe(65_536);

function contentOf(path: string): string | undefined {
  const file = openSync(path, PLAINLY);
  try {
    const found = fstatSync(file);
    if (!found.isFile()) return undefined;
    if (found.size > room.length) room = Buffer.allocUnsafe(found.size * 2);
    return blobName(room.subarray(0, readSync(file, room, 0, found.size, 0)));
  } finally {
    closeSync(file);
  }
}

const kindAt = (path: string): string | null => {
  const found = statSync(path, { throwIfNoEntry: false });
  return found ? kindOf(found) : null;
};

const all = <T>(facts: Readonly<Record<string, T>>, same: (path: string, was: T) => boolean): boolean =>
  Object.entries(facts).every(([path, was]) => same(path, was));

/** Whether everything that was seen would be seen again. */
export function stillSo({ listings, kinds, ways, contents }: Facts): boolean {
  try {
    return (
      all(ways, (path, was) => realpathSync.native(path) === was) &&
      all(kinds, (path, was) => kindAt(path) === was) &&
      all(listings, (path, was) => listingOf(readdirSync(path, { withFileTypes: true })) === was) &&
      all(contents, (path, was) => contentOf(path) === was)
    );
  } catch {
    return false;
  }
}

/** The same facts in fewer: a file that is no link itself leads where its folder leads. */
export function condensed({ ways, contents, ...rest }: Facts): Facts {
  if (constants.O_NOFOLLOW === undefined) return { ways, contents, ...rest };
  const fewer: Record<string, string> = {};
  for (const [path, real] of Object.entries(ways)) {
    const isPlain = contents[path] !== undefined && basename(path) === basename(real);
    fewer[isPlain ? dirname(path) : path] = isPlain ? dirname(real) : real;
  }
  return { ...rest, contents, ways: fewer };
}
