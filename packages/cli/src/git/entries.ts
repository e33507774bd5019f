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

/** What a commit holds, by path from the top. */
export const commitEntries = async (folder: string, commit: string): Promise<Entries> =>
  entriesOf(
    fields(await answer(folder, ["ls-tree", "-r", "-z", "--full-tree", commit])),
    /^(?<mode>\d+) \S+ (?<id>[0-9a-f]+)\t(?<path>[\s\S]+)$/u,
  );
