import { readFile, rm, stat } from "node:fs/promises";
import { isAbsolute, join, relative, resolve } from "node:path";
import { removeLeftovers, writeInPlace } from "@plumbmark/in-place";
import { notWritten, systemFault } from "../terminal/system-fault.js";
import { Trouble } from "../terminal/trouble.js";
import { answer, text } from "./run.js";

const MARK = "# Put here by `plumbmark hook`; `plumbmark hook --remove` takes it away again.";

const quoted = (word: string): string => `'${word.replaceAll("'", "'\\''")}'`;

/**
 * The hook, for any shell of POSIX. It looks for the program where the docs repository has it installed, then where
 * the shell finds it, then where it was when the hook was made; a commit never passes because it was not found.
 */
export const hookText = (docs: string, program: readonly string[]): string => `#!/bin/sh
${MARK}
# A commit is refused while a build document it changes, or concerns, is not ready.
docs=${quoted(docs)}
if [ -x "$docs/node_modules/.bin/plumbmark" ]; then
  exec "$docs/node_modules/.bin/plumbmark" inspect --staged "$docs"
elif [ -x node_modules/.bin/plumbmark ]; then
  exec node_modules/.bin/plumbmark inspect --staged "$docs"
elif command -v plumbmark >/dev/null 2>&1; then
  exec plumbmark inspect --staged "$docs"
elif [ -x ${quoted(program[0] ?? "")} ] && [ -f ${quoted(program[1] ?? "")} ]; then
  exec ${program.map(quoted).join(" ")} inspect --staged "$docs"
fi
echo "plumbmark is not installed here, so what is staged was not inspected." >&2
echo "Install it, or commit with --no-verify and inspect later." >&2
exit 2
`;

const isInside = (folder: string, path: string): boolean => {
  const way = relative(folder, path);
  return !way.startsWith("..") && !isAbsolute(way);
};

const readIfThere = async (path: string): Promise<string | undefined> =>
  readFile(path, "utf8").catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return undefined;
    const why = systemFault(error)?.says ?? `${path}: ${error.message}`;
    throw new Trouble(`The hook there may be somebody's and cannot be read. ${why}`, "Look what stands there first.");
  });

/** Git asks the first before a commit, the second before a merge makes one. */
const HOOKS = ["pre-commit", "pre-merge-commit"] as const;

/** Where git looks for the hooks of this work tree, `core.hooksPath` included. */
export async function hookPaths(folder: string, top: string): Promise<readonly string[]> {
  const hooks = resolve(folder, text(await answer(folder, ["rev-parse", "--git-path", "hooks"])));
  const common = resolve(folder, text(await answer(folder, ["rev-parse", "--git-common-dir"])));
  if (!isInside(common, hooks) && !isInside(top, hooks))
    throw new Trouble(
      `The hooks of this repository are kept in ${hooks}, where other repositories share them.`,
      "Add the line `plumbmark inspect --staged` to the pre-commit and pre-merge-commit hooks there yourself.",
    );
  return HOOKS.map((name) => join(hooks, name));
}

/** Puts the hook in its place; somebody else's hook is left as it is. Gives whether anything had to be done. */
export async function putHook(path: string, content: string): Promise<boolean> {
  await removeLeftovers(path);
  const there = await readIfThere(path);
  if (there === content && ((await stat(path)).mode & 0o111) !== 0) return false;
  if (there !== undefined && !there.includes(MARK))
    throw new Trouble(
      `There is another hook at ${path}; it was left as it is.`,
      "Add the line `plumbmark inspect --staged || exit 1` to it.",
    );
  try {
    // A hook that came into the place meanwhile is never overwritten, and an empty one would let every commit pass.
    writeInPlace(path, content, { mode: 0o755, flush: true, onlyNew: there === undefined });
    return true;
  } catch (error) {
    if (there === undefined && (error as NodeJS.ErrnoException).code === "EEXIST") return putHook(path, content);
    // The other hook may stand already, and guards what it is for.
    throw notWritten("The hook", path, error, "What stood in that place is as it was.");
  }
}

/** Takes our hook away; somebody else's is left. Gives whether there was one. */
export async function removeHook(path: string): Promise<boolean> {
  await removeLeftovers(path);
  const there = await readIfThere(path);
  if (there === undefined) return false;
  if (!there.includes(MARK))
    throw new Trouble(
      `The hook at ${path} is not Plumbmark's; it was left as it is.`,
      "Take the line out of it yourself.",
    );
  await rm(path).catch((error: unknown) => {
    const { says, mend } = systemFault(error) ?? { says: String(error), mend: "Take it away yourself." };
    throw new Trouble(`The hook cannot be taken away. ${says}`, mend);
  });
  return true;
}
