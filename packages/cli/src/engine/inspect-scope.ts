import { resolve } from "node:path";
import { type CheckEntry, type InspectionRecord, StandardError } from "@plumbmark/core";
import type { Scope } from "../git/scope.js";
import { partOf } from "../record/part-of.js";
import { affected, isCode, type State } from "../repository/affected.js";
import { narrowed } from "../repository/narrowed.js";
import type { Unreadable } from "../repository/read-files.js";
import { reachedBy } from "../source/links.js";
import { fromRoot, isOutside } from "../source/paths.js";
import type { FileSource } from "../source/source.js";
import { Trouble } from "../terminal/trouble.js";
import type { ResultCache } from "./cache/cache.js";
import type { InspectRequest, InspectResult, Means } from "./engine.js";
import { type Opened, openWithRules } from "./open.js";

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

type Before = Pick<Opened, "files" | "rules" | "load" | "unreadable" | "cache">;

const saying = ({ path, says }: Unreadable): string => `${path}\n${says}`;

/** Files that could not be read before either, for the same reason: nobody's change made them so. */
const unreadBefore = (before: Before | undefined): ReadonlySet<string> =>
  new Set((before?.unreadable ?? []).map(saying));

/** Files that were touched, and documents that lead to one of them by links. */
async function touchedIn(
  root: string,
  paths: readonly string[],
  ...states: readonly (readonly [
    state: Pick<Before, "files" | "unreadable"> | undefined,
    source: FileSource | undefined,
  ])[]
): Promise<readonly string[]> {
  const touched = new Set(paths.map((path) => fromRoot(root, path)).filter((path) => !isOutside(path)));
  for (const [state, source] of states) {
    if (!state || !source) continue;
    const found = [...state.files.documents, ...state.unreadable].map(({ path }) => path);
    for (const path of await reachedBy(touched, found, source.treeAt(root))) touched.add(path);
  }
  return [...touched];
}

/** The state before the change; a state that could not be inspected says nothing about what was right in it. */
async function stateBefore(
  scope: Scope,
  root: string,
  request: InspectRequest,
  means: Means,
): Promise<Before | undefined> {
  if (!scope.before) return undefined;
  const standard = request.standard === undefined ? undefined : resolve(request.folder, request.standard);
  // What plugins print is told once, for the state that counts.
  const asked = { ...request, folder: root, paths: [], standard, warn: () => undefined, source: scope.before };
  try {
    const before = await openWithRules(asked, means);
    return before.root === root ? { ...before, files: await withOutlines(before, means) } : undefined;
  } catch (error) {
    if (error instanceof Trouble || error instanceof StandardError) return undefined;
    throw error;
  }
}

async function inspectBefore(
  before: Before | undefined,
  chosen: ReadonlySet<string>,
  today: string,
  { judge }: Means,
): Promise<InspectionRecord | undefined> {
  if (!before || chosen.size === 0) return undefined;
  const files = narrowed(before.files, (path) => chosen.has(path));
  try {
    return await judge(files, before.rules, { today }, before.cache);
  } catch (error) {
    if (error instanceof StandardError) return undefined;
    throw error;
  }
}

const withOutlines = async ({ files, cache }: Pick<Opened, "files" | "cache">, means: Means) => ({
  ...files,
  documents: await means.outline(files, cache),
});

/** Both states share one cache: what stands in both is looked up in it once. */
const sharing = (means: Means): Means => {
  const caches = new Map<string, ResultCache | undefined>();
  const cacheFor = (root: string) => {
    if (!caches.has(root)) caches.set(root, means.cacheFor(root));
    return caches.get(root);
  };
  return { ...means, cacheFor };
};

/** Inspects what was touched, and of the rest what comes out differently because of it. */
export async function inspectScope(scope: Scope, request: InspectRequest, given: Means): Promise<InspectResult> {
  const means = sharing(given);
  const { today, every } = request;
  const read = await openWithRules({ ...request, source: scope.after }, means);
  const after = { ...read, files: await withOutlines(read, means) };
  const { root, rules, wants, cache } = after;
  const before = await stateBefore(scope, root, request, means);
  const touched = await touchedIn(root, scope.touched, [before, scope.before], [after, scope.after]);
  const perhaps = affected(touched, before?.files ?? NOTHING, after.files);
  const isTouched = new Set(touched);
  // A plugin may look at every build of the repository.
  const all = after.settings["rules-from"].length > 0;
  // Where no plugin is named, no code is anybody's rule.
  const newCode = all && touched.some(isCode);
  const chosen = narrowed(after.files, (path) => all || isTouched.has(path) || perhaps.has(path));
  await Promise.all([after.load([...touched, ...perhaps]), before?.load([...perhaps])]);
  const whole = await means.judge(chosen, rules, { today, every }, cache);
  const [was, is] = [gists(await inspectBefore(before, perhaps, today, means)), gists(whole)];
  cache?.save();
  const known = unreadBefore(before);
  const unread = new Set(after.unreadable.filter((each) => !known.has(saying(each))).map(({ path }) => path));
  const concerned = (file: string): boolean =>
    newCode || isTouched.has(file) || unread.has(file) || (perhaps.has(file) && was.get(file) !== is.get(file));
  const record = partOf(whole, after.unreadable, (file) => concerned(file) && wants(file));
  return { root, rules, record, leftAlone: [], wants, figures: new Map() };
}
