import { stat } from "node:fs/promises";
import { dirname, join } from "node:path";

export const STANDARD = "house-standard.yaml";

export const isFile = (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isFile(),
    () => false,
  );

/** The house standard of a folder: its own, or that of the nearest folder above. */
export async function findStandard(folder: string): Promise<string | undefined> {
  const path = join(folder, STANDARD);
  if (await isFile(path)) return path;
  const above = dirname(folder);
  return above === folder ? undefined : findStandard(above);
}
