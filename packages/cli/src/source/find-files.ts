import type { Dirent } from "node:fs";
import { readdir, realpath, stat } from "node:fs/promises";
import { join, relative, resolve } from "node:path";
import { Trouble } from "../terminal/trouble.js";
import { fromRoot, isOutside } from "./paths.js";
import { readPatterns } from "./patterns.js";

/** Whether a path, every link followed, lies outside the root. */
export async function leadsOutside(root: string, path: string): Promise<boolean> {
  try {
    const whole = resolve(root, path);
    const [top, real] = [await realpath(root), await realpath(whole)];
    return isOutside(fromRoot(top, real));
  } catch {
    return false;
  }
}

interface Place {
  /** From the root, by the names that led there; "" is the root. */
  readonly path: string;
  /** Where it lies when every link is followed. */
  readonly real: string;
}

const codeOf = (error: unknown): string => String((error as NodeJS.ErrnoException).code);

const inOrder = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

const isFolder = (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

/** What is in a folder; undefined when it may not be looked into, nothing when it went away meanwhile. */
async function listing(root: string, { path }: Place): Promise<readonly Dirent[] | undefined> {
  try {
    const entries = await readdir(join(root, path), { withFileTypes: true });
    return entries.sort((one, other) => inOrder(one.name, other.name));
  } catch (error) {
    if (path === "")
      throw new Trouble(
        `The folder ${root} may not be read (${codeOf(error)}).`,
        "Give yourself the right to read it.",
      );
    return codeOf(error) === "ENOENT" || codeOf(error) === "ENOTDIR" ? [] : undefined;
  }
}

/**
 * Files under the root that match one of the patterns of a house standard, sorted. What keeps files from being found
 * is among them, so that reading it tells why: a folder that may not be looked into, a link to a folder outside the
 * root, a link that leads back to a folder it stands in. Each file is found once, whatever links lead to it: by its own
 * path if a pattern matches that, else by the first link that gives it one that does.
 */
export async function findFiles(root: string, patterns: readonly string[]): Promise<readonly string[]> {
  const { fits, reaches } = readPatterns(patterns);
  const top = await realpath(root);
  const found = new Set<string>();
  const read = new Set<string>();
  const [own, linked] = [new Set<string>(), new Set<string>()];
  const links: Place[] = [];

  function add({ path, real }: Place): void {
    if (!read.has(real)) found.add(path);
    read.add(real);
  }

  async function look(place: Place, seen: Set<string>): Promise<void> {
    if (seen.has(place.real)) return;
    seen.add(place.real);
    const entries = await listing(root, place);
    if (!entries) add(place);
    for (const entry of entries ?? []) {
      const path = place.path === "" ? entry.name : `${place.path}/${entry.name}`;
      const inner = { path, real: join(place.real, entry.name) };
      if (entry.isDirectory()) {
        if (reaches(path)) await look(inner, seen);
      } else if (entry.isSymbolicLink() && reaches(path) && (await isFolder(join(root, path)))) links.push(inner);
      else if (fits(path)) add(inner);
    }
  }

  async function follow({ path, real: place }: Place): Promise<void> {
    const real = await realpath(place).catch(() => undefined);
    if (real === undefined) return;
    const back = !isOutside(relative(real, place));
    if (back || isOutside(relative(top, real))) add({ path, real: place });
    else await look({ path, real }, linked);
  }

  await look({ path: "", real: top }, own);
  // What lies in the root itself is known by its own path, so links come after everything else.
  for (let link = links.shift(); link; link = links.shift()) await follow(link);
  return [...found].sort(inOrder);
}
