import { existsSync, renameSync } from "node:fs";
import { mkdir, mkdtemp, readdir, rm } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

const [FRESH, OLD] = ["new", "old"];

export interface Place {
  /** Where the new site is made. */
  readonly fresh: string;
  /** Where the earlier site waits until the new one stands in its place. */
  readonly old: string;
  readonly remove: () => Promise<void>;
}

/**
 * A place beside a site, on the same disk, so that a folder can be moved from one to the other at a stroke. The number
 * of the process stands in its name, so that nobody clears it away under a publish that is still running.
 */
export async function placeBeside(parent: string, name: string): Promise<Place> {
  const beside = await mkdtemp(join(parent, `.${name}-${process.pid}-`));
  await mkdir(join(beside, FRESH));
  return {
    fresh: join(beside, FRESH),
    old: join(beside, OLD),
    remove: () => rm(beside, { recursive: true, force: true }),
  };
}

const runs = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // It runs, and belongs to somebody else.
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
};

/**
 * Clears away what publishes that were killed have left beside a site. One that was killed between its last two moves
 * has left the place of the site empty and the earlier site here: it is put back.
 */
export async function removeLeft(folder: string, mark: string): Promise<void> {
  const [parent, start] = [dirname(folder), `.${basename(folder)}-`];
  for (const { name } of (await readdir(parent, { withFileTypes: true })).filter((each) => each.isDirectory())) {
    const [, owner] = name.startsWith(start) ? (/^(\d+)-.{6}$/u.exec(name.slice(start.length)) ?? []) : [];
    if (owner === undefined || runs(Number(owner))) continue;
    const beside = join(parent, name);
    if (!existsSync(folder) && existsSync(join(beside, OLD, mark))) renameSync(join(beside, OLD), folder);
    await rm(beside, { recursive: true, force: true });
  }
}
