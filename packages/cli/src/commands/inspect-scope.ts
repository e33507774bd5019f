import { resolve } from "node:path";
import { type CheckEntry, type InspectionRecord, type RepositoryFiles, StandardError } from "@plumbmark/core";
import { affected, isCode, type State } from "../files/affected.js";
import { fromRoot, isOutside } from "../files/find-files.js";
import { narrowed } from "../files/narrowed.js";
import type { Unreadable } from "../files/read-files.js";
import type { Origin } from "../files/tree.js";
import { reachedBy } from "../files/ways.js";
import type { Scope } from "../git/scope.js";
import { inspectKept } from "../kept/inspect-kept.js";
import { type Kept, keptFor, save } from "../kept/kept.js";
import { withOutlines } from "../kept/outlines.js";
import { partOf } from "../report/part-of.js";
import { Trouble } from "../trouble.js";
import type { Inspected } from "./inspect.js";
import { open } from "./open.js";

export interface ScopeOptions {
  readonly folder: string;
  readonly paths: readonly string[];
  readonly standard: string | undefined;
  readonly today: string;
  readonly every: boolean;
  readonly plugins: boolean | undefined;
  /** Whether results are kept, and kept ones used. */
  readonly cache: boolean;
  readonly warn: (text: string) => void;
}

const NOTHING: State = { documents: [], parts: [] };

/** What a check that does not hold says, wherever in the file it stands: a line that moved is no change. */
const gist = ({ rule, level, outcome, at, says }: CheckEntry): string =>
  JSON.stringify([rule, level, outcome, at.path, says]);

const gists = (record: InspectionRecord | undefined): ReadonlyMap<string, string> =>
  new Map(
    record?.documents.map(({ file, checks }) => [
      file,
      checks
        .filter(({ outcome }) => outcome !== "holds")
        .map(gist)
        .sort()
        .join("\n"),
    ]),
  );

type Before = Pick<Awaited<ReturnType<typeof open>>, "files" | "rules" | "load" | "unreadable">;

const saying = ({ path, says }: Unreadable): string => `${path}\n${says}`;

/** Files that could not be read before either, for the same reason: nobody's change made them so. */
const unreadBefore = (before: Before | undefined): ReadonlySet<string> =>
  new Set((before?.unreadable ?? []).map(saying));

/** Files that were touched, and documents that lead to one of them by links. */
async function touchedIn(
  root: string,
  paths: readonly string[],
  ...states: readonly (readonly [state: Pick<Before, "files" | "unreadable"> | undefined, origin: Origin | undefined])[]
): Promise<readonly string[]> {
  const touched = new Set(paths.map((path) => fromRoot(root, path)).filter((path) => !isOutside(path)));
  for (const [state, origin] of states) {
    if (!state || !origin) continue;
    const found = [...state.files.documents, ...state.unreadable].map(({ path }) => path);
    for (const path of await reachedBy(touched, found, origin.treeAt(root))) touched.add(path);
  }
  return [...touched];
}

/** The state before the change; a state that could not be inspected says nothing about what was right in it. */
async function stateBefore(
  scope: Scope,
  root: string,
  options: ScopeOptions,
  kept: (root: string) => Kept | undefined,
): Promise<Before | undefined> {
  if (!scope.before) return undefined;
  const { today, plugins } = options;
  const standard = options.standard === undefined ? undefined : resolve(options.folder, options.standard);
  // What plugins print is told once, for the state that counts.
  const opening = { folder: root, paths: [], standard, today, plugins, warn: () => undefined };
  try {
    const before = await open({ ...opening, outlines: (at) => kept(at)?.outlines, kept, origin: scope.before });
    return before.root === root ? before : undefined;
  } catch (error) {
    if (error instanceof Trouble) return undefined;
    throw error;
  }
}

async function inspectBefore(
  before: Before | undefined,
  chosen: ReadonlySet<string>,
  today: string,
  kept: Kept | undefined,
): Promise<InspectionRecord | undefined> {
  if (!before || chosen.size === 0) return undefined;
  try {
    return await inspectKept(
      narrowed(before.files, (path) => chosen.has(path)),
      before.rules,
      { today },
      kept,
    );
  } catch (error) {
    if (error instanceof StandardError) return undefined;
    throw error;
  }
}

const outlinesOf = async (files: RepositoryFiles, kept: Kept | undefined): Promise<RepositoryFiles> => ({
  ...files,
  documents: await withOutlines(files, kept),
});

/** Inspects what was touched, and of the rest what comes out differently because of it. */
export async function inspectScope(scope: Scope, options: ScopeOptions): Promise<Inspected> {
  const { folder, paths, today, every, standard, plugins, warn, cache } = options;
  let kept: Kept | undefined;
  const keptOf = (root: string) => {
    kept ??= keptFor(root, cache);
    return kept;
  };
  const outlines = (root: string) => keptOf(root)?.outlines;
  const read = await open({
    folder,
    paths,
    standard,
    today,
    plugins,
    warn,
    outlines,
    kept: keptOf,
    origin: scope.after,
  });
  const after = { ...read, files: await outlinesOf(read.files, kept) };
  const state = await stateBefore(scope, after.root, options, keptOf);
  const before = state && { ...state, files: await outlinesOf(state.files, kept) };
  const touched = await touchedIn(after.root, scope.touched, [before, scope.before], [after, scope.after]);
  const perhaps = affected(touched, before?.files ?? NOTHING, after.files);
  const isTouched = new Set(touched);
  // A plugin may look at every build of the repository.
  const all = after.settings["rules-from"].length > 0;
  const chosen = narrowed(after.files, (path) => all || isTouched.has(path) || perhaps.has(path));
  await Promise.all([after.load([...touched, ...perhaps]), state?.load([...perhaps])]);
  const whole = await inspectKept(chosen, after.rules, { today, every }, kept);
  const [was, is] = [gists(await inspectBefore(before, perhaps, today, kept)), gists(whole)];
  save(kept);
  const known = unreadBefore(state);
  const unread = new Set(after.unreadable.filter((each) => !known.has(saying(each))).map(({ path }) => path));
  // Where no plugin is named, no code is anybody's rule.
  const newCode = all && touched.some(isCode);
  const concerned = (file: string): boolean =>
    newCode || isTouched.has(file) || unread.has(file) || (perhaps.has(file) && was.get(file) !== is.get(file));
  const record = partOf(whole, after.unreadable, (file) => concerned(file) && after.wants(file));
  const { root, rules } = after;
  return { root, rules, record };
}
