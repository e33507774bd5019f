import { randomBytes } from "node:crypto";
import { chmodSync, linkSync, mkdirSync, renameSync, rmdirSync, rmSync, writeFileSync } from "node:fs";
import { besidePath, missingAbove } from "./beside.js";

export interface WriteOptions {
  /** Mode of the file; the system's usual one when nothing is said. */
  readonly mode?: number;
  /** Mode of the folders that are made above it; the system's usual one when nothing is said. */
  readonly folderMode?: number;
  /** Wait until the content is on the disk before it is moved: an empty file after a power cut would do harm. */
  readonly flush?: boolean;
  /** Never replace a file that came into the place meanwhile; it throws EEXIST then. */
  readonly onlyNew?: boolean;
}

/** A disk that refused to write may refuse to clear up, too: the next run does. */
function quietly(work: () => void): void {
  try {
    work();
  } catch {
    // The error that is told is the first one.
  }
}

/** One folder at a time: `recursive` tries for ever where nothing can be made, as in /proc. */
function makeFolder(path: string, mode: number | undefined): void {
  try {
    mkdirSync(path, { mode });
  } catch (error) {
    // Another run may have made it meanwhile.
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
  }
}

/** A link fails where something is; a disk without links cannot tell, and the file is moved there. */
function moveNew(from: string, to: string): void {
  try {
    linkSync(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") throw error;
    renameSync(from, to);
  }
}

/**
 * Writes a file whole or not at all: it is written beside its place and moved there in one step, so that nobody ever
 * reads half of it. Folders above it are made. A link in its place is replaced, and what it leads to is left alone.
 * @throws the system's error; nothing is changed then
 */
export function writeInPlace(path: string, content: string | Uint8Array, options: WriteOptions = {}): void {
  const { mode, folderMode, flush = false, onlyNew = false } = options;
  const beside = besidePath(path, randomBytes(3).toString("hex"));
  const folders = missingAbove(path);
  let isWritten = false;
  try {
    for (const folder of folders.toReversed()) makeFolder(folder, folderMode);
    // `wx`: what somebody put there to be written through is refused.
    writeFileSync(beside, content, { flag: "wx", flush });
    if (mode !== undefined) chmodSync(beside, mode);
    (onlyNew ? moveNew : renameSync)(beside, path);
    isWritten = true;
  } finally {
    quietly(() => rmSync(beside, { force: true }));
    if (!isWritten) for (const folder of folders) quietly(() => rmdirSync(folder));
  }
}
