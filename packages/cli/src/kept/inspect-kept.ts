import {
  type InspectionRecord,
  type InspectOptions,
  inspect,
  isThere,
  type Judged,
  pathsOf,
  type RepositoryFiles,
  type Rule,
  totalsOf,
} from "@plumbmark/core";
import { broughtBy, outcomesOn } from "../threads/brought.js";
import { inspectMany } from "../threads/inspect-many.js";
import { isFailure } from "./failure.js";
import type { Kept } from "./kept.js";
import { documentKey, frameKey, sharedBy } from "./keys.js";
import { type NamedFile, withOutlines } from "./outlines.js";

type Remembered = Pick<Judged, "entry" | "ways">;

/** Whether links still lead where they led. */
const sameWays = ({ ways }: Remembered, paths: readonly string[]): boolean =>
  Object.entries(ways).every(([path, there]) => isThere(paths, path) === there);

/**
 * What a document comes to may be kept when nothing but what its key is made of goes into it. Of a rule of a plugin that
 * is what it came to, wherever it was carried out.
 */
const canBeKept = (rules: readonly Rule[], { every, known }: InspectOptions): boolean =>
  every !== true &&
  known === undefined &&
  rules.every(({ plugin, result, over }) => result !== undefined || !(plugin || over));

/** The record of everything but the documents. */
function frameOf(files: RepositoryFiles, rules: readonly Rule[], options: InspectOptions): InspectionRecord {
  return inspect({ ...files, documents: [], others: [] }, rules, options);
}

/**
 * Inspects documents, on several threads when there are many, and only those of which nothing is kept. The record is
 * that of `inspect`, whatever is kept.
 * @throws StandardError when the house standard cannot be used.
 */
export async function inspectKept(
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
  given?: Kept,
): Promise<InspectionRecord> {
  const kept = given && canBeKept(rules, options) ? given : undefined;
  const documents = await withOutlines(files, given);
  const brought = broughtBy(rules);
  const key = kept && frameKey(files, kept.edition, options.today, brought);
  const framed = key === undefined ? undefined : (kept?.entries.get(key) as InspectionRecord | undefined);
  const frame = framed ?? frameOf(files, rules, options);
  // Only what is new is put there: a shelf nothing was added to is not written anew.
  if (key !== undefined && !framed) kept?.entries.set(key, frame);
  const outlines = documents.flatMap(({ outline }) => (outline ? [outline] : []));
  const shared = sharedBy([...outlines, ...(files.others ?? [])]);
  const keyOf = (file: NamedFile): string | undefined => {
    if (!key || file.id === undefined) return undefined;
    const outcomes = outcomesOn(rules, file.path);
    return outcomes.some(isFailure) ? undefined : documentKey(key, file.id, file, shared, outcomes);
  };
  const paths = pathsOf(files);
  const keys = new Map(documents.map((file) => [file.path, keyOf(file)]));
  const known = documents.map(({ path }) => {
    const own = keys.get(path);
    const found = own && (kept?.entries.get(own) as Remembered | undefined);
    return found && sameWays(found, paths) ? found : undefined;
  });
  const left = documents.filter((_, index) => !known[index]);
  const others = [
    ...(files.others ?? []),
    ...documents.flatMap(({ outline }, index) => (known[index] && outline ? [outline] : [])),
  ];
  // The frame has been made with these house standards, now or before.
  const accepted = { ...options, accepted: true };
  const judged = left.length === 0 ? [] : await inspectMany({ ...files, documents: left, others }, rules, accepted);
  for (const { entry, ways, looksAround } of judged) {
    const own = keys.get(entry.file);
    if (own && !looksAround) kept?.entries.set(own, { entry, ways });
  }
  const entries = [...known.flatMap((each) => (each ? [each.entry] : [])), ...judged.map(({ entry }) => entry)];
  return joined(frame, entries);
}

/** The record of all documents, in the order of their paths. */
function joined(frame: InspectionRecord, entries: InspectionRecord["documents"]): InspectionRecord {
  const sorted = [...entries].sort((one, other) => (one.file < other.file ? -1 : 1));
  const documents = [...sorted, ...frame.documents];
  return { ...frame, documents, totals: totalsOf(documents) };
}
