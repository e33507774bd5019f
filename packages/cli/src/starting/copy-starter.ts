import { readdir } from "node:fs/promises";
import { Trouble } from "../terminal/trouble.js";
import { copyFolder, putFolder } from "./put-folder.js";

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

/** A folder is replaced whole; whoever stands in it would be left standing in one that is gone. */
async function refuse(to: string, standing: string): Promise<void> {
  const there = await listing(to);
  if (there !== undefined && there.length > 0)
    throw new Trouble(
      `${to} is not empty.`,
      there.includes(".git")
        ? "Name a new folder inside it, which git then sees; nothing was changed."
        : "Name a new folder or an empty one; nothing was changed.",
    );
  if (there !== undefined && to === standing)
    throw new Trouble(
      `${to} is the folder you are in, and would be replaced under you.`,
      "Go to the folder above it, and name it from there.",
    );
}

/** Copies a docs repository to a folder that is new or empty, and is not the one the command is given in. */
export const copyStarter = (from: string, to: string, standing: string): Promise<void> =>
  putFolder(
    "The docs repository",
    to,
    () => refuse(to, standing),
    (fresh) => copyFolder(from, fresh, undefined, LEFT_OUT),
  );
