import { closeSync, constants, fstatSync, openSync, readFileSync, realpathSync } from "node:fs";
import { relative, resolve } from "node:path";
import { systemFault } from "../terminal/system-fault.js";
import { isOutside } from "./paths.js";

/** A picture larger than this would make a sheet that a phone on site cannot load. */
const LARGEST = 20_000_000;

const OUTSIDE = "it lies outside the docs repository";

/** What is no file any more once it is opened would keep whoever reads it waiting. */
const AT_ONCE = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

function read(root: string, path: string): Uint8Array | string {
  const written = resolve(root, path);
  if (isOutside(relative(root, written))) return OUTSIDE;
  const place = realpathSync(written);
  if (isOutside(relative(realpathSync(root), place))) return OUTSIDE;
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

const reasonOf = (error: unknown): string => {
  const fault = systemFault(error);
  return fault ? fault.says.replace(/^.*?: /u, "").replace(/\.$/u, "") : "no file can have this name";
};

/** Reads pictures below a root, or tells why one cannot be had. */
export const pictureReader =
  (root: string) =>
  (path: string): Uint8Array | string => {
    try {
      return read(root, path);
    } catch (error) {
      return reasonOf(error);
    }
  };
