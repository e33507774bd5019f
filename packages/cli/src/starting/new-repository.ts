import { mkdir, readdir, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { removeLeftovers } from "@plumbmark/in-place";
import { findStandard } from "../repository/find-standard.js";
import { disk } from "../source/disk.js";
import { Trouble } from "../terminal/trouble.js";
import { type PutFiles, putFiles } from "./put-files.js";
import { putFolder } from "./put-folder.js";
import type { StartFile } from "./starter-files.js";

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

/** One docs repository in another would be a folder of it, and judged by the house standards of both. */
async function refuseInside(to: string): Promise<void> {
  const { path } = await findStandard(to, disk);
  if (path === undefined) return;
  throw new Trouble(
    `${dirname(path) === to ? `${to} is a docs repository already` : `${to} lies in the docs repository ${dirname(path)}`}; nothing was changed.`,
    "Write a new document with `plumbmark start build NAME`, or name a folder elsewhere.",
  );
}

async function write(to: string, files: readonly StartFile[]): Promise<void> {
  for (const { path, text, mode } of files) {
    await mkdir(dirname(join(to, path)), { recursive: true });
    await writeFile(join(to, path), text, mode === undefined ? {} : { mode });
  }
}

async function refuseFull(to: string): Promise<void> {
  const there = await listing(to);
  if (there !== undefined && there.length > 0)
    throw new Trouble(`${to} is not empty any more.`, "Look what came into it, and begin again.");
}

/**
 * Makes a docs repository of a folder. One that is new or empty is made beside and moved into place whole; in one with
 * something in it, or in which the command is given, nothing that is there is changed.
 */
export async function newRepository(to: string, files: readonly StartFile[], standingIn: string): Promise<PutFiles> {
  // Also where it is refused: what a run that was ended has left is of no use to anybody.
  await removeLeftovers(to);
  const there = await listing(to);
  await refuseInside(to);
  if (there === undefined || (there.length === 0 && to !== standingIn)) {
    await putFolder(
      "The docs repository",
      to,
      () => refuseFull(to),
      (fresh) => write(fresh, files),
    );
    return { written: files.map(({ path }) => path), left: [] };
  }
  return putFiles(to, files);
}
