import { existsSync, renameSync, rmSync } from "node:fs";
import { copyFile, link, lstat, mkdir, readdir, readFile, rm, stat, utimes, writeFile } from "node:fs/promises";
import { dirname, join, relative, resolve, sep } from "node:path";
import { placeBeside, removeLeft } from "./beside.js";
import type { SiteFile } from "./publish.js";

/** The site cannot be written there: what is wrong, for the person who asked. */
export class SiteError extends Error {
  constructor(
    message: string,
    readonly mend = "Name a new or empty folder, or one that was published before.",
  ) {
    super(message);
  }
}

/** What was done: files written anew, and files that were already as they are. */
export interface Written {
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

/** Puts a file of the earlier site into the new one as it is, with the time it was written at. */
async function keep(from: string, to: string): Promise<void> {
  await link(from, to).catch(async () => {
    // Not every file system has links: a copy with the same times is as good.
    await copyFile(from, to);
    const { atime, mtime } = await stat(from);
    await utimes(to, atime, mtime);
  });
}

/** A page may have the name of a folder of the earlier site, or lie in what was a page. */
const NO_FILE = new Set(["ENOENT", "ENOTDIR", "EISDIR"]);

const isSame = async (file: string, content: Uint8Array): Promise<boolean> => {
  const old = await readFile(file).catch((error: NodeJS.ErrnoException) => {
    if (NO_FILE.has(error.code ?? "")) return undefined;
    throw error;
  });
  return old?.equals(content) ?? false;
};

/** Keeps a file of the earlier site that is as it should be; gives whether it is. */
async function kept(from: string, to: string, content: Uint8Array): Promise<boolean> {
  if (!(await isSame(from, content))) return false;
  await keep(from, to).catch(absent);
  // Another publish may have put its own file there after the first look.
  if (await isSame(to, content)) return true;
  await rm(to, { force: true });
  return false;
}

/** Writes every file into `fresh`; those that are in `folder` just so are kept and not written anew. */
async function write(
  files: Iterable<SiteFile>,
  fresh: string,
  folder: string,
  onFile: () => void,
): Promise<Written & { readonly paths: readonly string[] }> {
  const paths: string[] = [];
  let unchanged = 0;
  for (const [path, content] of files) {
    const file = resolve(fresh, path);
    if (!file.startsWith(fresh + sep)) throw new SiteError(`${path} would lie outside the site.`);
    const bytes = typeof content === "string" ? Buffer.from(content) : content;
    const old = join(folder, path);
    await mkdir(dirname(file), { recursive: true });
    if (await kept(old, file, bytes)) unchanged += 1;
    else await writeFile(file, bytes);
    paths.push(path);
    onFile();
  }
  await writeFile(join(fresh, MARK), [...paths, ""].join("\n"));
  return { paths, unchanged, written: paths.length - unchanged };
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
 * Writes a site beside its place and moves it there whole, so that nobody ever sees half of it: until then, and when
 * anything goes wrong, the earlier site stays as it is. A file that has not changed is not written anew.
 * @throws SiteError when the folder holds anything that is not a site of ours; nothing is changed then.
 */
export async function writeSite(
  files: Iterable<SiteFile>,
  directory: string,
  onFile: () => void = () => undefined,
): Promise<Written> {
  const folder = resolve(directory);
  await removeLeft(folder);
  await earlier(folder);
  const place = await placeBeside(folder);
  try {
    const { paths, written, unchanged } = await write(files, place.fresh, folder, onFile);
    // Looked at once more: making the pages takes long enough for somebody to put a file there.
    const before = await earlier(folder);
    if (before === undefined || written > 0 || before.size !== paths.length + 1)
      exchange(folder, place.fresh, place.old);
    return { written, unchanged };
  } finally {
    await place.remove();
  }
}
