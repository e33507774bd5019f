import { cp, mkdir, readdir, rename, rm, rmdir } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { Trouble } from "../trouble.js";

/** The names in a folder; undefined when there is no such folder. */
async function listing(folder: string): Promise<readonly string[] | undefined> {
  try {
    return await readdir(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    if ((error as NodeJS.ErrnoException).code === "ENOTDIR")
      throw new Trouble(`${folder} is a file.`, "Name a new folder.");
    throw error;
  }
}

const LEFT_OUT = new Set(["node_modules", ".git"]);

/**
 * Copies a docs repository to a folder that is new or empty. It is copied beside the folder first and then moved
 * into place, so that an interrupted copy never looks like a whole one.
 */
export async function copyStarter(from: string, to: string): Promise<void> {
  const there = await listing(to);
  if (there !== undefined && there.length > 0) {
    throw new Trouble(`${to} is not empty.`, "Name a new folder or an empty one; nothing was changed.");
  }
  const beside = join(dirname(to), `.${basename(to)}-${process.pid}`);
  try {
    await mkdir(dirname(to), { recursive: true });
    await cp(from, beside, {
      recursive: true,
      errorOnExist: true,
      force: false,
      filter: (path) => !LEFT_OUT.has(basename(path)),
    });
    if (there !== undefined) await rmdir(to);
    await rename(beside, to);
  } catch (error) {
    await rm(beside, { recursive: true, force: true });
    throw new Trouble(
      `The docs repository cannot be written to ${to}: ${(error as Error).message}`,
      "Check that the folder may be written to.",
    );
  }
}
