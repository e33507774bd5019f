import { createHash } from "node:crypto";
import { copyFileSync, linkSync, mkdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { dirname, join, resolve, sep } from "node:path";
import { onceFor } from "../site/once-for.js";
import type { SiteFile } from "../site/publish.js";
import { SiteError } from "./site-error.js";

/** Where a site is made, and where the earlier one may be. */
export interface Into {
  readonly fresh: string;
  readonly folder: string;
  /** False when there is no earlier one, so that no file of it is looked for. */
  readonly earlier?: boolean;
}

/** A file that was put into a site: its path, and whether it was there just so before. */
export interface Put {
  readonly path: string;
  readonly unchanged: boolean;
}

/** The same with what is in it, see `contentHash`. */
export interface Hashed extends Put {
  readonly hash: string;
}

/** Tells what is in a file from everything else. */
export const contentHash = (content: string | Uint8Array): string =>
  createHash("sha256").update(content).digest("base64url");

/** A page may have the name of a folder of the earlier site, or lie in what was a page. */
const NO_FILE = new Set(["ENOENT", "ENOTDIR", "EISDIR"]);

/** What the work gives; the other thing where there is no such file. */
function unlessNone<T>(work: () => T, otherwise: T): T {
  try {
    return work();
  } catch (error) {
    if (NO_FILE.has((error as NodeJS.ErrnoException).code ?? "")) return otherwise;
    throw error;
  }
}

/** Only a file of the same length is read to be compared. */
const isSame = (file: string, content: Uint8Array): boolean =>
  unlessNone(() => {
    const there = statSync(file, { throwIfNoEntry: false });
    return there?.isFile() === true && there.size === content.length && readFileSync(file).equals(content);
  }, false);

/** Puts a file of the earlier site into the new one as it is, with the time it was written at. */
function keep(from: string, to: string): void {
  try {
    linkSync(from, to);
  } catch (error) {
    // Another sheet that shows the same picture has put it there; whether it is the same is looked at afterwards.
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return;
    // Not every file system has links: a copy with the same times is as good.
    copyFileSync(from, to);
    const { atime, mtime } = statSync(from);
    utimesSync(to, atime, mtime);
  }
}

/** Keeps a file of the earlier site that is as it should be; gives whether it is. */
function kept(from: string, to: string, content: Uint8Array): boolean {
  if (!isSame(from, content)) return false;
  unlessNone(() => keep(from, to), undefined);
  // Another publish may have put its own file there after the first look.
  if (isSame(to, content)) return true;
  rmSync(to, { force: true });
  return false;
}

/** Folders that are made already: a sheet has a score of files in three of them. */
const madeIn = onceFor((_: Into) => new Set<string>());

function makeFolder(into: Into, folder: string): void {
  const made = madeIn(into);
  if (made.has(folder)) return;
  mkdirSync(folder, { recursive: true });
  made.add(folder);
}

/** Writes a file into `fresh`; one that is in `folder` just so is kept and not written anew. @throws SiteError */
export function putFile(into: Into, [path, content]: SiteFile): Hashed {
  const { fresh, folder, earlier = true } = into;
  const file = resolve(fresh, path);
  if (!file.startsWith(fresh + sep)) throw new SiteError(`${path} would lie outside the site.`);
  makeFolder(into, dirname(file));
  const unchanged =
    earlier && kept(join(folder, path), file, typeof content === "string" ? Buffer.from(content) : content);
  if (!unchanged) writeFileSync(file, content);
  return { path, unchanged, hash: contentHash(content) };
}
