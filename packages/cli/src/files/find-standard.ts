import { dirname, join } from "node:path";
import { disk } from "./disk.js";
import type { Origin } from "./tree.js";

export const STANDARD = "house-standard.yaml";

/**
 * The house standard of the docs repository a folder belongs to: the topmost one above it, since those deeper in the
 * tree add to it. A docs repository does not reach beyond the work tree of its version control.
 */
export async function findStandard(folder: string, origin: Origin): Promise<string | undefined> {
  const path = join(folder, STANDARD);
  const own = (await origin.isFile(path)) ? path : undefined;
  const above = dirname(folder);
  const git = join(folder, ".git");
  const top = above === folder || (await disk.isFolder(git)) || (await disk.isFile(git));
  return (top ? undefined : await findStandard(above, origin)) ?? own;
}
