import { dirname, join } from "node:path";
import type { Origin } from "./tree.js";

export const STANDARD = "house-standard.yaml";

/** The house standard of a folder: its own, or that of the nearest folder above. */
export async function findStandard(folder: string, origin: Origin): Promise<string | undefined> {
  const path = join(folder, STANDARD);
  if (await origin.isFile(path)) return path;
  const above = dirname(folder);
  return above === folder ? undefined : findStandard(above, origin);
}
