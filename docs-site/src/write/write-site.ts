import { existsSync, renameSync, rmSync } from "node:fs";
import { lstat, readdir, readFile, writeFile } from "node:fs/promises";
import { join, relative, resolve, sep } from "node:path";
import { placeBeside, removeLeftovers } from "@plumbmark/in-place";
import type { SiteFile } from "../site/publish.js";
import { type Into, type Put, putFile } from "./put-file.js";
import { SiteError } from "./site-error.js";

/** What was done: files written anew, and files that were already as they are. */
export interface WrittenSite {
  readonly written: number;
  readonly unchanged: number;
}

/** Marks a folder as a site of ours and lists its files. */
const MARK = ".plumbmark-site";

const absent = (error: unknown): undefined => {
  if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
  throw error;
};

const listOf = async (folder: string): Promise<ReadonlySet<string> | undefined> => {
  const list = await readFile(join(folder, MARK), "utf8").catch(absent);
  return list === undefined ? undefined : new Set(list.split("\n"));
};

const filesIn = async (folder: string): Promise<readonly string[]> => {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((each) => !each.isDirectory())
    .map((each) => relative(folder, join(each.parentPath, each.name)).split(sep).join("/"));
};

/** What the folder holds; undefined for none. @throws SiteError when it is anything else than a site of ours. */
async function held(folder: string): Promise<ReadonlySet<string> | undefined> {
  const there = await lstat(folder).catch(absent);
  if (!there) return undefined;
  if (!there.isDirectory()) throw new SiteError(`${folder} is not a folder.`);
  const own = await listOf(folder);
  // Only a site of ours is looked through: anything else may be a whole disk.
  if (!own && (await readdir(folder)).length > 0)
    throw new SiteError(`${folder} has something in it that is not a site of Plumbmark.`);
  const strange = (await filesIn(folder)).find((file) => file !== MARK && !own?.has(file));
  if (strange !== undefined) throw new SiteError(`${folder} has a file that Plumbmark did not write: ${strange}`);
  return own ?? new Set();
}

const numberOf = (folder: string): Promise<number | undefined> => lstat(folder).then(({ ino }) => ino, absent);

/** The files of the site that is there. Another publish may put its own there meanwhile: then that one is looked at. */
async function earlier(folder: string): Promise<ReadonlySet<string> | undefined> {
  const before = await numberOf(folder);
  try {
    return await held(folder);
  } catch (error) {
    if ((await numberOf(folder)) === before) throw error;
    return earlier(folder);
  }
}

const IN_THE_WAY = new Set(["ENOTEMPTY", "EEXIST"]);

function putBack(old: string, folder: string): void {
  try {
    renameSync(old, folder);
  } catch (error) {
    throw new SiteError(
      `${folder}: the disk refuses to have the new site moved there, and the earlier one back (${(error as NodeJS.ErrnoException).code}); the earlier one waits in ${old}.`,
      "See to the disk and publish again: what waits is put back first.",
    );
  }
}

/**
 * Both moves follow one another without anything between them; what is killed there is put right the next time. What
 * is moved away is always a site of ours: of two that publish at once, the later one stays.
 */
function exchange(folder: string, fresh: string, old: string): void {
  const isOurs = (): boolean => existsSync(join(folder, MARK));
  const replaces = isOurs();
  if (replaces) renameSync(folder, old);
  try {
    renameSync(fresh, folder);
  } catch (error) {
    const another = IN_THE_WAY.has((error as NodeJS.ErrnoException).code ?? "") && isOurs();
    if (!another) {
      if (replaces) putBack(old, folder);
      throw error;
    }
    rmSync(old, { recursive: true, force: true });
    exchange(folder, fresh, old);
  }
}

/**
 * Has a site made beside its place and moves it there whole, so that nobody ever sees half of it: until then, and when
 * anything goes wrong, the earlier site stays as it is.
 * @param fill puts every file of the site and tells which; the same path twice is one file
 * @throws SiteError when the folder holds anything that is not a site of ours; nothing is changed then.
 */
export async function fillSite(
  directory: string,
  fill: (into: Into) => Promise<readonly Put[]> | readonly Put[],
): Promise<WrittenSite> {
  const folder = resolve(directory);
  await removeLeftovers(folder);
  const there = await earlier(folder);
  const place = await placeBeside(folder);
  try {
    const files = await fill({ fresh: place.fresh, folder, earlier: there !== undefined });
    const put = new Map(files.map(({ path, unchanged }) => [path, unchanged]));
    // On the disk before it is moved: with it, the next publish mends whatever a power cut has emptied.
    await writeFile(join(place.fresh, MARK), [...put.keys(), ""].join("\n"), { flush: true });
    const unchanged = [...put.values()].filter((each) => each).length;
    const written = put.size - unchanged;
    // Looked at once more: making the pages takes long enough for somebody to put a file there.
    const before = await earlier(folder);
    if (before === undefined || written > 0 || before.size !== put.size + 1) exchange(folder, place.fresh, place.old);
    return { written, unchanged };
  } finally {
    await place.remove();
  }
}

/** Writes a site from its files. A file that has not changed is not written anew. @throws SiteError as `fillSite` does */
export const writeSite = (
  files: Iterable<SiteFile>,
  directory: string,
  onFile: () => void = () => undefined,
): Promise<WrittenSite> =>
  fillSite(directory, (into) => {
    const put: Put[] = [];
    for (const file of files) {
      put.push(putFile(into, file));
      onFile();
    }
    return put;
  });
