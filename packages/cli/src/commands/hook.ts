import { realpath } from "node:fs/promises";
import { relative, resolve } from "node:path";
import { disk } from "../files/disk.js";
import { findStandard } from "../files/find-standard.js";
import { hookPath, hookText, putHook, removeHook } from "../git/hook-file.js";
import { topOf } from "../git/top.js";
import type { Surroundings } from "../surroundings.js";
import { Trouble } from "../trouble.js";

/** The docs repository the hook is for, from the top of the work tree. */
async function docsOf(folder: string, top: string): Promise<string> {
  const standard = await findStandard(folder, disk);
  if (standard === undefined)
    throw new Trouble(
      `No house standard is in ${folder} or above it.`,
      "Go to the docs repository the hook is for, or begin one with `plumbmark start`.",
    );
  const docs = relative(top, await realpath(resolve(standard, "..")));
  if (docs.startsWith(".."))
    throw new Trouble(`The docs repository ${docs} is outside the work tree ${top}.`, "Put it under git first.");
  // A folder that begins with a dash is no option.
  return docs === "" ? "." : `./${docs}`;
}

/** Puts the pre-commit hook into the git repository, or takes it away; gives the exit status. */
export async function hookCommand(options: { readonly remove?: true }, around: Surroundings): Promise<number> {
  const top = await topOf(around.folder);
  const path = await hookPath(around.folder, top);
  if (options.remove) {
    around.print((await removeHook(path)) ? `The hook ${path} is gone.\n` : "There was no hook.\n");
    return 0;
  }
  const program = [process.execPath, resolve(process.argv[1] ?? "")];
  const done = await putHook(path, hookText(await docsOf(around.folder, top), program));
  around.print(
    `${done ? "The hook is" : "The hook was already"} in ${path}\nIt refuses a commit while a build document that the commit changes, or concerns, is not ready.\n`,
  );
  return 0;
}
