import { randomUUID } from "node:crypto";
import { chmod, mkdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { dirname, isAbsolute, join, relative, resolve } from "node:path";
import { Trouble } from "../trouble.js";
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
    throw new Trouble(`${path} cannot be read (${error.code}).`, "Look what stands there first.");
  });

/** Where git looks for the pre-commit hook of this work tree, `core.hooksPath` included. */
export async function hookPath(folder: string, top: string): Promise<string> {
  const hooks = resolve(folder, text(await answer(folder, ["rev-parse", "--git-path", "hooks"])));
  const common = resolve(folder, text(await answer(folder, ["rev-parse", "--git-common-dir"])));
  if (!isInside(common, hooks) && !isInside(top, hooks))
    throw new Trouble(
      `The hooks of this repository are kept in ${hooks}, where other repositories share them.`,
      "Add the line `plumbmark inspect --staged` to the pre-commit hook there yourself.",
    );
  return join(hooks, "pre-commit");
}

/** Puts the hook in its place; somebody else's hook is left as it is. Gives whether anything had to be done. */
export async function putHook(path: string, content: string): Promise<boolean> {
  const there = await readIfThere(path);
  if (there === content && ((await stat(path)).mode & 0o111) !== 0) return false;
  if (there !== undefined && !there.includes(MARK))
    throw new Trouble(
      `There is another hook at ${path}; it was left as it is.`,
      "Add the line `plumbmark inspect --staged || exit 1` to it.",
    );
  await mkdir(dirname(path), { recursive: true });
  const beside = `${path}-${randomUUID()}`;
  try {
    await writeFile(beside, content, { flag: "wx" });
    await chmod(beside, 0o755);
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    throw new Trouble(
      `The hook cannot be written to ${path}: ${(error as Error).message}`,
      "Check that the folder may be written to.",
    );
  }
  return true;
}

/** Takes our hook away; somebody else's is left. Gives whether there was one. */
export async function removeHook(path: string): Promise<boolean> {
  const there = await readIfThere(path);
  if (there === undefined) return false;
  if (!there.includes(MARK))
    throw new Trouble(
      `The hook at ${path} is not Plumbmark's; it was left as it is.`,
      "Take the line out of it yourself.",
    );
  await rm(path);
  return true;
}
