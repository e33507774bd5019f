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
  // One that is there and cannot be read is not passed over: by the defaults the documents would be judged wrongly.
  const own = (await origin.kind(path)) === undefined ? undefined : path;
  const above = dirname(folder);
  const git = await disk.kind(join(folder, ".git"));
  const top = above === folder || git === "folder" || git === "file";
  return (top ? undefined : await findStandard(above, origin)) ?? own;
}
