import { copyFile, mkdir, readdir, rename } from "node:fs/promises";
import { join } from "node:path";
import { placeBeside, removeLeftovers } from "@plumbmark/in-place";
import { notWritten } from "../terminal/system-fault.js";

/** Copies a file or has it made otherwise; `name` is that of the file. */
export type Copy = (from: string, to: string) => Promise<void>;

/** Copies a folder with everything in it but what is left out. */
export async function copyFolder(
  from: string,
  to: string,
  copy: Copy = copyFile,
  leftOut: ReadonlySet<string> = new Set(),
): Promise<void> {
  await mkdir(to, { recursive: true });
  for (const entry of await readdir(from, { withFileTypes: true })) {
    if (leftOut.has(entry.name)) continue;
    const [source, target] = [join(from, entry.name), join(to, entry.name)];
    await (entry.isDirectory() ? copyFolder(source, target, copy, leftOut) : copy(source, target));
  }
}

/**
 * Puts a folder where none is, or an empty one: it is made beside and moved into place, so that one that was
 * interrupted never looks like a whole one. `check` is asked what is there before anything is made.
 */
export async function putFolder(
  what: string,
  to: string,
  check: () => Promise<void>,
  make: (fresh: string) => Promise<void>,
): Promise<void> {
  try {
    await removeLeftovers(to);
    await check();
    const place = await placeBeside(to);
    try {
      await make(place.fresh);
      await rename(place.fresh, to);
    } finally {
      await place.remove();
    }
  } catch (error) {
    throw notWritten(what, to, error);
  }
}
