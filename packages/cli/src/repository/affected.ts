import { basename, extname } from "node:path";
import {
  asStock,
  type DocumentFile,
  knownOutline,
  ledgerOf,
  type Outline,
  openRepository,
  readSurvey,
  type SourceFile,
  stockFiles,
  withWay,
} from "@plumbmark/core";
import { changedEntries } from "./changed-entries.js";
import { STANDARD } from "./find-standard.js";

/** A docs repository before or after a change, as far as it matters to which documents are concerned. */
export interface State {
  readonly documents: readonly DocumentFile[];
  readonly parts: readonly SourceFile[];
  readonly stock?: SourceFile;
  readonly moreStock?: readonly SourceFile[];
  readonly surveys?: readonly SourceFile[];
}

const CODE = new Set([".js", ".mjs", ".cjs", ".ts", ".mts", ".cts", ".json"]);

/** Files that say which code of others is used. */
const LOCKS = new Set(["yarn.lock", "pnpm-lock.yaml", "bun.lock", "bun.lockb"]);

/**
 * Whether a file is code that a plugin may be made of, or says what code it uses. Both states of a change are inspected
 * with the code that lies on the disk, so that what it changes cannot be told by comparing them.
 */
export const isCode = (path: string): boolean => CODE.has(extname(path)) || LOCKS.has(basename(path));

/** A house standard, or code that a plugin may be made of, concerns every document. */
const concernsAll = (path: string): boolean => basename(path) === STANDARD || isCode(path);

/** YAML that is neither catalogue nor stock may be an edition of a house standard. */
const isUnlisted = (states: readonly State[]): ((path: string) => boolean) => {
  const listed = new Set(states.flatMap((state) => [...state.parts, ...stockFiles(state)]).map(({ path }) => path));
  return (path) => /\.ya?ml$/u.test(path) && !listed.has(path);
};

const textAt = (files: readonly SourceFile[], path: string): string | undefined =>
  files.find((file) => file.path === path)?.text;

/** Parts and lots whose entries were changed; undefined when that cannot be told. */
function changedNames(touched: readonly string[], before: State, after: State): readonly string[] | undefined {
  const lists = [before, after].map((state) => [...state.parts, ...stockFiles(state)]);
  const files = touched.filter((path) => lists.some((list) => list.some((file) => file.path === path)));
  const names = files.map((path) => changedEntries(textAt(lists[0] ?? [], path), textAt(lists[1] ?? [], path)));
  return names.some((each) => each === undefined) ? undefined : names.flatMap((each) => each ?? []);
}

/** Names of venues whose survey was changed; undefined where a survey is new or gone, or cannot be told by name. */
function changedVenues(touched: readonly string[], ...states: readonly State[]): readonly string[] | undefined {
  const named = states.map(({ surveys = [] }) =>
    surveys.filter(({ path }) => touched.includes(path)).map((file) => readSurvey(file)?.name ?? ""),
  );
  const [before = [], after = []] = named;
  const same = before.length === after.length && before.every((name) => name !== "" && after.includes(name));
  return same ? before : undefined;
}

const shares = (one: Outline, other: Outline): boolean =>
  (one.name !== undefined && one.name === other.name) ||
  one.promises.some(({ lot }) => other.promises.some((each) => each.lot === lot));

const nobody = (): never => {
  throw new Error("nobody asked what this document uses");
};

/** Paths of documents that are there on the days of one of some documents, before the change or after it. */
function neighbours(of: readonly Outline[], states: readonly State[]): ReadonlySet<string> {
  const found = new Set<string>();
  if (of.length === 0) return found;
  for (const state of states) {
    const { documents } = state;
    const files = { parts: [], documents: [], ...asStock(stockFiles(state)) };
    const { days } = openRepository(files, [], { today: "" }).stock;
    const ledger = ledgerOf(documents.map(knownOutline), days, nobody);
    for (const { stay } of of) for (const { path } of ledger.near(stay && withWay(stay, days))) found.add(path);
  }
  return found;
}

/**
 * Documents that a change may concern although nobody touched them: they name a part, a lot or a venue that was changed,
 * share a lot, a name or days on site with a touched document, or lead to a file that is gone. Rather one too many than
 * one too few.
 * Paths are relative to the root.
 */
export function affected(touched: readonly string[], before: State, after: State): ReadonlySet<string> {
  const all = new Set(after.documents.map(({ path }) => path));
  if (touched.some(concernsAll) || touched.some(isUnlisted([before, after]))) return all;
  const [entries, venues] = [changedNames(touched, before, after), changedVenues(touched, before, after)];
  if (entries === undefined || venues === undefined) return all;
  const names = [...entries, ...venues];
  const isTouched = new Set(touched);
  const outlines = [...before.documents, ...after.documents]
    .filter(({ path }) => isTouched.has(path))
    .map(knownOutline);
  const near = neighbours(outlines, [before, after]);
  const gone = touched.filter((path) => !all.has(path)).map((path) => basename(path));
  const concerned = (file: DocumentFile): boolean => {
    if (isTouched.has(file.path)) return false;
    const text = [...names, ...gone].length === 0 ? "" : file.text;
    if ([...names, ...gone, ...gone.map(encodeURI)].some((name) => text.includes(name))) return true;
    if (near.has(file.path)) return true;
    return outlines.length > 0 && outlines.some((each) => shares(each, knownOutline(file)));
  };
  return new Set(after.documents.filter(concerned).map(({ path }) => path));
}
