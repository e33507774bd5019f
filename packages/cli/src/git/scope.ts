import { join } from "node:path";
import { disk } from "../files/disk.js";
import type { Origin } from "../files/tree.js";
import type { Read } from "./blobs.js";
import { commitEntries, stagedEntries } from "./entries.js";
import { gitOrigin } from "./origin.js";
import { answer, ask, fields, text } from "./run.js";
import { commitOf, headOf, topOf } from "./top.js";

/** What changed between two states of a docs repository, and where each state is read from. */
export interface Scope {
  readonly after: Origin;
  /** Undefined before the first commit. */
  readonly before: Origin | undefined;
  /** Files that were added, changed or taken away, as absolute paths. A rename is both. */
  readonly touched: readonly string[];
}

/** Plain names, whatever the author set git to: no renames guessed, no other program asked, paths from the top. */
const NAMES = ["--name-only", "-z", "--no-renames", "--no-ext-diff", "--no-relative", "--ignore-submodules"];

const beforeOf = async (
  folder: string,
  top: string,
  commit: string | undefined,
  contents: Read = new Map(),
): Promise<Origin | undefined> =>
  commit === undefined ? undefined : gitOrigin(folder, top, await commitEntries(folder, commit), contents);

/** What a commit made now would change. */
export async function stagedScope(folder: string): Promise<Scope> {
  const top = await topOf(folder);
  const [entries, head, touched] = await Promise.all([
    stagedEntries(folder),
    headOf(folder),
    answer(folder, ["diff", "--cached", ...NAMES]),
  ]);
  const contents: Read = new Map();
  return {
    after: gitOrigin(folder, top, entries, contents),
    before: await beforeOf(folder, top, head, contents),
    touched: fields(touched).map((path) => join(top, path)),
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
    answer(folder, ["diff", ...NAMES, commit, "--"]),
    answer(folder, ["ls-files", "--others", "--exclude-standard", "-z", "--full-name", "--", ":/"]),
  ]);
  return {
    after: disk,
    before: await beforeOf(folder, top, commit),
    touched: [...new Set([...fields(changed), ...fields(added)])].map((path) => join(top, path)),
  };
}

/** The docs repository as it is in a revision. */
export async function originAt(folder: string, revision: string): Promise<Origin> {
  const top = await topOf(folder);
  return gitOrigin(folder, top, await commitEntries(folder, await commitOf(folder, revision)));
}
