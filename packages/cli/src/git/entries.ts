import { answer, fields } from "./run.js";

/** One file as git keeps it. */
export interface Entry {
  /** Git's name of the content. */
  readonly id: string;
  readonly kind: "file" | "link";
  /** Both sides of a merge changed it, and nobody has said yet what stands. */
  readonly unsettled: boolean;
}

export type Entries = ReadonlyMap<string, Entry>;

const LINK = "120000";
const SUBMODULE = "160000";
const NOTHING = "000000";

function entriesOf(lines: readonly string[], shape: RegExp): Entries {
  const entries = new Map<string, Entry>();
  for (const line of lines) {
    const { mode, id, stage, path } = shape.exec(line)?.groups ?? {};
    // What is in a submodule is not in this repository.
    if (mode === undefined || id === undefined || path === undefined || mode === SUBMODULE) continue;
    entries.set(path, { id, kind: mode === LINK ? "link" : "file", unsettled: stage !== undefined && stage !== "0" });
  }
  return entries;
}

/** What is staged, by path from the top of the work tree. */
export const stagedEntries = async (folder: string): Promise<Entries> =>
  entriesOf(
    fields(await answer(folder, ["ls-files", "--stage", "-z", "--full-name", "--", ":/"])),
    /^(?<mode>\d+) (?<id>[0-9a-f]+) (?<stage>\d)\t(?<path>[\s\S]+)$/u,
  );

/** A file that a commit made now would add, change or take away. */
export interface Change {
  readonly path: string;
  /** What stands in the commit before; undefined when nothing does. */
  readonly was: Entry | undefined;
}

/** What is staged otherwise than it stands in the commit before. @param words how names are to be told */
export async function stagedChanges(folder: string, words: readonly string[]): Promise<readonly Change[]> {
  const told = fields(await answer(folder, ["diff", "--cached", "--raw", "--no-abbrev", ...words]));
  return told.flatMap((line, index) => {
    const { mode, id } = /^:(?<mode>\d+) \d+ (?<id>[0-9a-f]+) /u.exec(index % 2 === 0 ? line : "")?.groups ?? {};
    const path = told[index + 1];
    if (mode === undefined || id === undefined || path === undefined) return [];
    const isFile = mode !== NOTHING && mode !== SUBMODULE;
    return [{ path, was: isFile ? { id, kind: mode === LINK ? "link" : "file", unsettled: false } : undefined }];
  });
}

/** What the commit before holds, from what is staged and what was changed for it. */
export function entriesBefore(staged: Entries, changes: readonly Change[]): Entries {
  const before = new Map(staged);
  for (const { path, was } of changes) {
    if (was) before.set(path, was);
    else before.delete(path);
  }
  return before;
}

/** What a commit holds, by path from the top. */
export const commitEntries = async (folder: string, commit: string): Promise<Entries> =>
  entriesOf(
    fields(await answer(folder, ["ls-tree", "-r", "-z", "--full-tree", commit])),
    /^(?<mode>\d+) \S+ (?<id>[0-9a-f]+)\t(?<path>[\s\S]+)$/u,
  );
