import { existsSync, readFileSync, statSync } from "node:fs";
import { homedir } from "node:os";
import { dirname, isAbsolute, join, resolve } from "node:path";

const first = (path: string): string => (readFileSync(path, "utf8").split("\n")[0] ?? "").trim();

/** What belongs to all work trees of a repository is kept in the folder that `commondir` names. */
function common(folder: string): string {
  const file = join(folder, "commondir");
  return existsSync(file) ? resolve(folder, first(file)) : folder;
}

/** Git's own folder for a work tree, found without asking git: a program more would take as long as the answer saves. */
function gitFolder(folder: string): string | undefined {
  const path = join(folder, ".git");
  if (!existsSync(path)) {
    const above = dirname(folder);
    return above === folder ? undefined : gitFolder(above);
  }
  if (statSync(path).isDirectory()) return existsSync(join(path, "HEAD")) ? common(path) : undefined;
  const named = first(path).replace(/^gitdir: /u, "");
  return common(isAbsolute(named) ? named : resolve(folder, named));
}

/** The cache of whoever runs it; undefined when there is no home. */
function ownCache(): string | undefined {
  const named = process.env.XDG_CACHE_HOME ?? "";
  if (isAbsolute(named)) return join(named, "plumbmark");
  const home = homedir();
  return home === "" || home === "/" || !existsSync(home) ? undefined : join(home, ".cache", "plumbmark");
}

/** The folder where results are kept for a docs repository: with git's own files, else in the user's cache. */
export function keptIn(root: string): string | undefined {
  try {
    const git = gitFolder(root);
    return git === undefined ? ownCache() : join(git, "plumbmark");
  } catch {
    return undefined;
  }
}
