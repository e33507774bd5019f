import { realpath } from "node:fs/promises";
import { relative, resolve } from "node:path";
import { hookPaths, hookText, putHook, removeHook } from "../git/hook-file.js";
import { topOf } from "../git/top.js";
import { findStandard } from "../repository/find-standard.js";
import { disk } from "../source/disk.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

/** The docs repository the hook is for, from the top of the work tree. */
async function docsOf(folder: string, top: string): Promise<string> {
  const { path: standard } = await findStandard(folder, disk);
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

/** Git asks no hook of ours there, or can be told not to. */
const UNGUARDED =
  "No hook guards a commit made with --no-verify, a merge that only moves the branch forward, a rebase, a cherry-pick, a revert made elsewhere, or what others push: have a pipeline run `plumbmark inspect` as well.";

const removed = async (paths: readonly string[]): Promise<readonly string[]> => {
  const gone: string[] = [];
  for (const path of paths) if (await removeHook(path)) gone.push(path);
  return gone;
};

/** Puts the hooks into the git repository, or takes them away; gives the exit status. */
export async function hookCommand(options: { readonly remove?: true }, context: CommandContext): Promise<number> {
  const top = await topOf(context.folder);
  const paths = await hookPaths(context.folder, top);
  if (options.remove) {
    const gone = await removed(paths);
    context.print(
      gone.length > 0 ? gone.map((path) => `The hook ${path} is gone.\n`).join("") : "There was no hook.\n",
    );
    return 0;
  }
  const program = [process.execPath, resolve(process.argv[1] ?? "")];
  const text = hookText(await docsOf(context.folder, top), program);
  for (const path of paths) {
    const done = await putHook(path, text);
    context.print(`${done ? "The hook is" : "The hook was already"} in ${path}\n`);
  }
  context.print(
    `They refuse a commit, and a merge that makes one, while a build document that it changes, or concerns, is not ready.\n${UNGUARDED}\n`,
  );
  return 0;
}
