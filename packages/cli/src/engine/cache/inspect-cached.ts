import {
  type InspectionRecord,
  type InspectOptions,
  isThere,
  openRepository,
  pathsOf,
  type RepositoryFiles,
  type Rule,
  totalsOf,
} from "@plumbmark/core";
import type { NamedFile } from "../../repository/outlines.js";
import { inspectMany, type Judged } from "../workers/inspect-many.js";
import { pluginResultsOf, resultsOn } from "../workers/plugin-results.js";
import type { ResultCache } from "./cache.js";
import { isFailure } from "./failure.js";
import { contextKey, documentKey, sharedBy } from "./keys.js";
import { withOutlines } from "./outlines.js";
import { usesAround } from "./uses.js";

type CachedJudgement = Pick<Judged, "entry" | "paths">;

/** Whether links still lead where they led. */
const stillHolds = (found: CachedJudgement, paths: readonly string[]): boolean =>
  Object.entries(found.paths).every(([path, there]) => isThere(paths, path) === there);

/**
 * The result of a document may be cached when it rests on nothing but what its key is made of. Of a rule of a plugin that
 * is its result, wherever the rule ran.
 */
const isCacheable = (rules: readonly Rule[], { every, known }: InspectOptions): boolean =>
  every !== true &&
  known === undefined &&
  rules.every(({ plugin, result, over }) => result !== undefined || !(plugin || over));

/** The record of everything but the documents: looked up, or made. */
function recordOfContext(
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
  entries: ResultCache["entries"] | undefined,
  key: string,
): InspectionRecord {
  const found = entries?.get(key) as InspectionRecord | undefined;
  if (found) return found;
  const made = openRepository({ ...files, documents: [], others: [] }, rules, options).all();
  entries?.set(key, made);
  return made;
}

/** The record of all documents, in the order of their paths. */
function joined(context: InspectionRecord, entries: InspectionRecord["documents"]): InspectionRecord {
  const sorted = [...entries].sort((one, other) => (one.file < other.file ? -1 : 1));
  const documents = [...sorted, ...context.documents];
  return { ...context, documents, totals: totalsOf(documents) };
}

/**
 * Inspects documents, with several workers when there are many, and only those whose result is not cached. The record is
 * that of the repository as it is opened anew, whatever is cached.
 * @throws StandardError when the house standard cannot be used.
 */
export async function inspectCached(
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
  cache?: ResultCache,
): Promise<InspectionRecord> {
  const entries = isCacheable(rules, options) ? cache?.entries : undefined;
  const outlined = await withOutlines(files, cache);
  const key = contextKey(files, cache?.edition ?? "", options.today, pluginResultsOf(rules));
  const context = recordOfContext(files, rules, options, entries, key);
  const { documents, others: behind, shares } = await usesAround(files, outlined, options, cache);
  const outlines = documents.flatMap(({ outline }) => (outline ? [outline] : []));
  const shared = sharedBy([...outlines, ...behind]);
  const keyOf = (file: NamedFile): string | undefined => {
    if (!entries || file.id === undefined) return undefined;
    const results = resultsOn(rules, file.path);
    return results.some(isFailure) ? undefined : documentKey(key, file.id, file, shared, shares(file.path), results);
  };
  const paths = pathsOf(files);
  const keys = new Map(documents.map((file) => [file.path, keyOf(file)]));
  const known = documents.map(({ path }) => {
    const own = keys.get(path);
    const found = own === undefined ? undefined : (entries?.get(own) as CachedJudgement | undefined);
    return found && stillHolds(found, paths) ? found : undefined;
  });
  const left = documents.filter((_, index) => !known[index]);
  const others = [...behind, ...outlines.filter((_, index) => known[index])];
  // The record of the context has been made with these house standards, now or before.
  const accepted = { ...options, accepted: true };
  const judged = left.length === 0 ? [] : await inspectMany({ ...files, documents: left, others }, rules, accepted);
  for (const { entry, paths, otherBuilds } of judged) {
    const own = keys.get(entry.file);
    if (own !== undefined && !otherBuilds) entries?.set(own, { entry, paths });
  }
  return joined(context, [...known.flatMap((each) => (each ? [each.entry] : [])), ...judged.map(({ entry }) => entry)]);
}
