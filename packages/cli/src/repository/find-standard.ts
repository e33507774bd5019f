import { stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import { disk } from "../source/disk.js";
import type { FileSource } from "../source/source.js";

export const STANDARD = "house-standard.yaml";

/** The house standard of the docs repository a folder belongs to. */
export interface FoundStandard {
  readonly path: string | undefined;
  /** What is to be told of how it was found. */
  readonly remarks: readonly string[];
}

/** House standards in a folder and above it, the nearest first, and whether they end at the top of a work tree. */
async function standardsAbove(
  folder: string,
  source: FileSource,
): Promise<{ readonly paths: readonly string[]; readonly isUnderGit: boolean }> {
  const path = join(folder, STANDARD);
  // One that is there and cannot be read is not passed over: by the defaults the documents would be judged wrongly.
  const own = (await source.kind(path)) === undefined ? [] : [path];
  const git = await disk.kind(join(folder, ".git"));
  if (git === "folder" || git === "file") return { paths: own, isUnderGit: true };
  const above = dirname(folder);
  if (above === folder) return { paths: own, isUnderGit: false };
  const { paths, isUnderGit } = await standardsAbove(above, source);
  return { paths: [...own, ...paths], isUnderGit };
}

const ownerOf = (path: string): Promise<number | undefined> =>
  stat(path).then(
    ({ uid }) => uid,
    () => undefined,
  );

/**
 * The house standard of the docs repository a folder belongs to: the topmost one above it, since those deeper in the
 * tree add to it. A docs repository does not reach beyond the work tree of its version control. Outside of one anybody
 * could put a house standard into a folder that others share: those above the folder count as far as they belong to its
 * owner, and it is told which was used.
 */
export async function findStandard(folder: string, source: FileSource): Promise<FoundStandard> {
  const { paths, isUnderGit } = await standardsAbove(folder, source);
  if (isUnderGit) return { path: paths.at(-1), remarks: [] };
  const owner = await ownerOf(folder);
  const owners = await Promise.all(paths.map(ownerOf));
  const isForeign = (path: string, index: number): boolean => dirname(path) !== folder && owners[index] !== owner;
  const foreign = paths.findIndex(isForeign);
  const used = foreign < 0 ? paths : paths.slice(0, foreign);
  const path = used.at(-1);
  const remarks = [
    ...(foreign < 0 ? [] : [`${paths[foreign]} belongs to somebody else than ${folder} and is not used.`]),
    ...(used.length > 1 ? [`The house standard ${path} is used, which stands above ${used[0]}.`] : []),
  ];
  return { path, remarks };
}
