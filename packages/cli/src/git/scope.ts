import { join } from "node:path";
import { disk } from "../source/disk.js";
import { gitSource } from "../source/git.js";
import type { FileSource } from "../source/source.js";
import { GitBatch } from "./batch.js";
import { Read } from "./blobs.js";
import { commitEntries, entriesBefore, stagedChanges, stagedEntries } from "./entries.js";
import { answer, ask, fields, text } from "./run.js";
import { commitOf, placeOf, topOf } from "./top.js";

/** What changed between two states of a docs repository, and where each state is read from. */
export interface Scope {
  readonly after: FileSource;
  /** Undefined before the first commit. */
  readonly before: FileSource | undefined;
  /** Files that were added, changed or taken away, as absolute paths. A rename is both. */
  readonly touched: readonly string[];
  /** Nothing more is read from either state. */
  readonly end?: () => void;
}

/** Plain names, whatever the author set git to: no renames guessed, no other program asked, paths from the top. */
const NAMES = ["-z", "--no-renames", "--no-ext-diff", "--no-relative", "--ignore-submodules"];

const beforeOf = async (folder: string, top: string, commit: string): Promise<FileSource> =>
  gitSource(folder, top, await commitEntries(folder, commit));

/** What a commit made now would change. Git is asked everything at once. */
export async function stagedScope(folder: string): Promise<Scope> {
  const place = placeOf(folder);
  const rest = Promise.all([stagedEntries(folder), stagedChanges(folder, NAMES)]);
  // Where there is no work tree, that is what is told.
  rest.catch(() => undefined);
  const { top, head } = await place;
  const [entries, changes] = await rest;
  const batch = new GitBatch(folder);
  const contents = new Read(batch);
  return {
    after: gitSource(folder, top, entries, contents),
    before: head === undefined ? undefined : gitSource(folder, top, entriesBefore(entries, changes), contents),
    touched: [...new Set(changes.map(({ path }) => join(top, path)))],
    end: () => batch.end(),
  };
}

/** Where the work tree and a revision parted: what others did to the revision since is not this work tree's doing. */
async function partedFrom(folder: string, revision: string): Promise<string> {
  const commit = await commitOf(folder, revision);
  const { status, out } = await ask(folder, ["merge-base", commit, "HEAD"]);
  return status === 0 ? text(out) : commit;
}

/** What lies in the work tree and differs from the place where it parted from a revision. */
export async function scopeSince(folder: string, revision: string): Promise<Scope> {
  const top = await topOf(folder);
  const commit = await partedFrom(folder, revision);
  const [changed, added] = await Promise.all([
    answer(folder, ["diff", "--name-only", ...NAMES, commit, "--"]),
    answer(folder, ["ls-files", "--others", "--exclude-standard", "-z", "--full-name", "--", ":/"]),
  ]);
  return {
    after: disk,
    before: await beforeOf(folder, top, commit),
    touched: [...new Set([...fields(changed), ...fields(added)])].map((path) => join(top, path)),
  };
}

/** The docs repository as it is in a revision. */
export async function sourceAt(folder: string, revision: string): Promise<FileSource> {
  const top = await topOf(folder);
  return gitSource(folder, top, await commitEntries(folder, await commitOf(folder, revision)));
}
