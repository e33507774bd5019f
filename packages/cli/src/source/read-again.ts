import { closeSync, fstatSync, openSync, readSync } from "node:fs";
import { gitBlobName } from "./blob-name.js";
import { AT_ONCE, decode, LARGEST } from "./read-text.js";

function bytesOf(file: number): Buffer | undefined {
  const found = fstatSync(file);
  if (!found.isFile() || found.size > LARGEST) return undefined;
  const bytes = Buffer.alloc(found.size);
  return readSync(file, bytes, 0, bytes.length, 0) === bytes.length ? bytes : undefined;
}

/** Reads a file once more; undefined when its bytes are not those that git would give this name, or cannot be had. */
export function readAgain(path: string, id: string): string | undefined {
  let file: number | undefined;
  try {
    file = openSync(path, AT_ONCE);
    const bytes = bytesOf(file);
    const text = bytes && gitBlobName(bytes) === id ? decode(bytes) : undefined;
    return text && "text" in text ? text.text : undefined;
  } catch {
    return undefined;
  } finally {
    if (file !== undefined) closeSync(file);
  }
}
