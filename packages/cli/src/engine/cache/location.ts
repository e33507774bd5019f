import { createHash } from "node:crypto";
import { existsSync, lstatSync, type Stats } from "node:fs";
import { homedir } from "node:os";
import { dirname, isAbsolute, join } from "node:path";

/**
 * Whether a file or folder belongs to whoever runs this and nobody else may write to it. Where the system tells no owner,
 * as on Windows, the user's own folder is closed to others by itself.
 */
export const isOursAlone = ({ uid, mode }: Stats): boolean => {
  const own = process.getuid?.();
  return own === undefined || (uid === own && (mode & 0o022) === 0);
};

/** The user's folder for what can be made again; undefined when there is no home. */
export function userCache(): string | undefined {
  const named = process.env.XDG_CACHE_HOME ?? "";
  if (isAbsolute(named)) return join(named, "plumbmark");
  const home = homedir();
  return home === "" || home === "/" || !existsSync(home) ? undefined : join(home, ".cache", "plumbmark");
}

const isFolderOfOurs = (path: string): boolean => {
  const found = lstatSync(path, { throwIfNoEntry: false });
  return !found || (found.isDirectory() && isOursAlone(found));
};

/**
 * The folder where results are cached for a docs repository. It is the user's and not the repository's, so that nothing
 * that comes with the documents can be taken for a result. Undefined where there is none that only the user can write to.
 */
export function cacheFolder(root: string): string | undefined {
  try {
    const cache = userCache();
    if (cache === undefined) return undefined;
    const folder = join(cache, createHash("sha256").update(root).digest("hex").slice(0, 32));
    return isFolderOfOurs(dirname(folder)) && isFolderOfOurs(folder) ? folder : undefined;
  } catch {
    return undefined;
  }
}
