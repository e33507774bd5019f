import { existsSync, renameSync } from "node:fs";
import { mkdir, mkdtemp, readdir, rm, rmdir } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

const [FRESH, OLD] = ["new", "old"];

/** A folder beside a file or folder, in which what is to stand there is made. */
export interface StagingPlace {
  /** Where what is new is made. */
  readonly fresh: string;
  /** Where what was there before waits until the new one stands in its place. */
  readonly old: string;
  /**
   * Takes the place away, and folders above it that were made for it and stayed empty. Never throws. What was there
   * before and is not there now is put back first; where even that is refused, it is left for the next.
   */
  readonly remove: () => Promise<void>;
}

/** The folders above a path that are not there yet, the deepest first. */
export function missingAbove(path: string): readonly string[] {
  const parent = dirname(path);
  return existsSync(parent) ? [] : [parent, ...missingAbove(parent)];
}

/** What cannot be taken away is taken away by the next: what was to be made is there, or the reason why not is told. */
const quietly = (work: Promise<unknown>): Promise<unknown> => work.catch(() => undefined);

function putBack(path: string, beside: string): void {
  if (!existsSync(path) && existsSync(join(beside, OLD))) renameSync(join(beside, OLD), path);
}

async function removeBeside(path: string, beside: string): Promise<void> {
  putBack(path, beside);
  await rm(beside, { recursive: true, force: true });
}

async function removeAll(path: string, beside: string | undefined, parents: readonly string[]): Promise<void> {
  if (beside !== undefined) await quietly(removeBeside(path, beside));
  for (const parent of parents) await quietly(rmdir(parent));
}

/** A name beside a path; the number of the process stands in it, so that nobody clears it away while that one runs. */
export const besidePath = (path: string, mark: string): string =>
  join(dirname(path), `.${basename(path)}-${process.pid}-${mark}`);

/**
 * A place beside a file or folder, on the same disk, so that what is made there can be moved into place in one step.
 */
export async function placeBeside(path: string): Promise<StagingPlace> {
  const parents = missingAbove(path);
  let beside: string | undefined;
  try {
    await mkdir(dirname(path), { recursive: true });
    beside = await mkdtemp(besidePath(path, ""));
    await mkdir(join(beside, FRESH));
    const remove = () => removeAll(path, beside, parents);
    return { fresh: join(beside, FRESH), old: join(beside, OLD), remove };
  } catch (error) {
    await removeAll(path, beside, parents);
    throw error;
  }
}

/** Whether a process of this number runs. */
export const isRunning = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // It runs, and belongs to somebody else.
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
};

/**
 * Clears away what runs that were killed have left beside a file or folder. One that was killed between its last two
 * moves has left the place empty and what was there before here: it is put back.
 */
export async function removeLeftovers(path: string): Promise<void> {
  const [parent, start] = [dirname(path), `.${basename(path)}-`];
  const there = await readdir(parent, { withFileTypes: true }).catch(() => []);
  for (const { name } of there) {
    const [, owner] = name.startsWith(start) ? (/^(\d+)-.{6}$/u.exec(name.slice(start.length)) ?? []) : [];
    if (owner === undefined || isRunning(Number(owner))) continue;
    const beside = join(parent, name);
    putBack(path, beside);
    await quietly(rm(beside, { recursive: true, force: true }));
  }
}
