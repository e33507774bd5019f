import { renameSync } from "node:fs";
import { copyFile, link, lstat, mkdir, readdir, readFile, stat, utimes, writeFile } from "node:fs/promises";
import { basename, dirname, join, relative, resolve, sep } from "node:path";
import { placeBeside, removeLeft } from "./beside.js";
import type { SiteFile } from "./publish.js";

/** The site cannot be written there: what is wrong, for the person who asked. */
export class SiteError extends Error {}

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

/** The files of the site that is there; undefined for none. @throws SiteError when it is anything else than one of ours. */
async function earlier(folder: string): Promise<ReadonlySet<string> | undefined> {
  const there = await lstat(folder).catch(absent);
  if (!there) return undefined;
  if (!there.isDirectory()) throw new SiteError(`${folder} is not a folder.`);
  const files = await filesIn(folder);
  const own = await listOf(folder);
  if (!own && (await readdir(folder)).length > 0)
    throw new SiteError(`${folder} has something in it that is not a site of Plumbmark.`);
  const strange = files.find((file) => file !== MARK && !own?.has(file));
  if (strange !== undefined) throw new SiteError(`${folder} has a file that Plumbmark did not write: ${strange}`);
  return own ?? new Set();
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

const isSame = async (file: string, content: Uint8Array): Promise<boolean> => {
  const old = await readFile(file).catch(absent);
  return old?.equals(content) ?? false;
};

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
    if (await isSame(old, bytes)) {
      await keep(old, file);
      unchanged += 1;
    } else await writeFile(file, bytes);
    paths.push(path);
    onFile();
  }
  await writeFile(join(fresh, MARK), [...paths, ""].join("\n"));
  return { paths, unchanged, written: paths.length - unchanged };
}

/** Both moves follow one another without anything between them; what is killed there is put right the next time. */
function exchange(folder: string, fresh: string, old: string, replaces: boolean): void {
  if (replaces) renameSync(folder, old);
  try {
    renameSync(fresh, folder);
  } catch (error) {
    if (replaces) renameSync(old, folder);
    throw error;
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
  await mkdir(dirname(folder), { recursive: true });
  await removeLeft(folder, MARK);
  const before = await earlier(folder);
  const place = await placeBeside(dirname(folder), basename(folder));
  try {
    const { paths, written, unchanged } = await write(files, place.fresh, folder, onFile);
    if (before === undefined || written > 0 || before.size !== paths.length + 1)
      exchange(folder, place.fresh, place.old, before !== undefined);
    return { written, unchanged };
  } finally {
    await place.remove();
  }
}
