import { lstat, mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join, relative, resolve, sep } from "node:path";

/** The site cannot be written there: what is wrong, for the person who asked. */
export class SiteError extends Error {}

/** Marks a folder as a site of ours and lists its files. */
const MARK = ".plumbmark-site";

const isAbsent = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === "ENOENT";

const listOf = async (folder: string): Promise<ReadonlySet<string> | undefined> => {
  try {
    return new Set((await readFile(join(folder, MARK), "utf8")).split("\n"));
  } catch (error) {
    if (isAbsent(error)) return undefined;
    throw error;
  }
};

const filesIn = async (folder: string): Promise<readonly string[]> => {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((each) => !each.isDirectory())
    .map((each) => relative(folder, join(each.parentPath, each.name)).split(sep).join("/"));
};

/** Whether there is something to replace. @throws SiteError when it is anything but an empty folder or a site of ours. */
async function occupied(folder: string): Promise<boolean> {
  const stat = await lstat(folder).catch((error: unknown) => {
    if (isAbsent(error)) return undefined;
    throw error;
  });
  if (!stat) return false;
  if (!stat.isDirectory()) throw new SiteError(`${folder} is not a folder.`);
  const files = await filesIn(folder);
  const own = await listOf(folder);
  if (!own && (await readdir(folder)).length > 0)
    throw new SiteError(`${folder} has something in it that is not a site of Plumbmark.`);
  const strange = files.find((file) => file !== MARK && !own?.has(file));
  if (strange !== undefined) throw new SiteError(`${folder} has a file that Plumbmark did not write: ${strange}`);
  return true;
}

async function write(pages: ReadonlyMap<string, string>, folder: string): Promise<void> {
  for (const [path, text] of pages) {
    const file = resolve(folder, path);
    if (!file.startsWith(folder + sep)) throw new SiteError(`${path} would lie outside the site.`);
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, text);
  }
  await writeFile(join(folder, MARK), [...pages.keys(), ""].join("\n"));
}

/**
 * Writes a site beside its place and moves it there whole, so that nobody ever sees half of it.
 * @throws SiteError when the folder holds anything that is not a site of ours; nothing is changed then.
 */
export async function writeSite(pages: ReadonlyMap<string, string>, directory: string): Promise<void> {
  const folder = resolve(directory);
  const replaces = await occupied(folder);
  await mkdir(dirname(folder), { recursive: true });
  const beside = await mkdtemp(join(dirname(folder), `.${basename(folder)}-`));
  try {
    const [fresh, old] = [join(beside, "new"), join(beside, "old")];
    await mkdir(fresh);
    await write(pages, fresh);
    if (replaces) await rename(folder, old);
    await rename(fresh, folder).catch(async (error: unknown) => {
      if (replaces) await rename(old, folder);
      throw error;
    });
  } finally {
    await rm(beside, { recursive: true, force: true });
  }
}
