import { knownOutline, type RuleResult, type StatedRule } from "@plumbmark/core";
import type { ResultCache } from "../engine/cache/cache.js";
import { contextKey, hashOf } from "../engine/cache/keys.js";
import type { NamedFile } from "../repository/outlines.js";
import { pluginCode } from "./code.js";
import type { PluginInput, PluginOutcome, PluginRun } from "./run-plugin.js";
import type { Target } from "./target.js";

// The results of a plugin's rules are cached document by document, with the documents whose content they rest on. They
// are used again while the plugin's code, what all documents are given alike and those contents are the same.

/** What a plugin is known by. */
export interface PluginKeys {
  /** Its code, to the byte, and how far it may go. */
  readonly code: string;
  /** The same, with everything its rules can see besides what is written in documents. */
  readonly context: string;
}

/** Results on one document by the ids of the rules, and the contents they rest on. */
interface Cached {
  readonly contents: readonly (readonly [path: string, content: string])[];
  readonly results: Readonly<Record<string, RuleResult>>;
}

/** Results that are held for a document: those of its states in a commit, in what is staged and on the disk. */
const MOST_STATES = 4;

/** Undefined when the code cannot be told for sure. */
export async function keysOf(
  target: Target,
  { folder, limits, taken }: PluginRun,
  { files, today }: PluginInput,
  { edition }: ResultCache,
): Promise<PluginKeys | undefined> {
  const found = await pluginCode(target, folder);
  if (!found) return undefined;
  const code = hashOf([target.name, found, limits, taken, edition, process.version]);
  const outlines = [...files.documents.map(knownOutline), ...(files.others ?? [])].map(
    // One order, however the outline was made: its text is hashed.
    ({ path, name, practice, promises }) => [path, name ?? null, practice ?? null, promises],
  );
  return { code, context: hashOf([code, contextKey(files, edition, today), outlines]) };
}

/** Names of the contents of documents. A text may be one that is only read when it is looked at. */
const contentsOf = ({ files }: PluginInput): ((path: string) => string | undefined) => {
  const documents = new Map(files.documents.map((file: NamedFile) => [file.path, file]));
  return (path) => {
    const file = documents.get(path);
    return file && (file.id ?? hashOf(file.text));
  };
};

const keyOf = ({ context }: PluginKeys, path: string): string => hashOf([context, path]);

/** What is cached of a plugin on the documents that were asked for; undefined when nothing is known of it at all. */
export function cachedResults(
  keys: PluginKeys,
  input: PluginInput,
  { plugins }: ResultCache,
): PluginOutcome | undefined {
  const stated = plugins.get(keys.code) as readonly StatedRule[] | undefined;
  if (!stated) return undefined;
  const contentOf = contentsOf(input);
  const holds = ({ contents }: Cached): boolean => contents.every(([path, content]) => contentOf(path) === content);
  const found = input.wanted.flatMap((path): readonly (readonly [string, Cached["results"]])[] => {
    const states = (plugins.get(keyOf(keys, path)) ?? []) as readonly Cached[];
    const same = states.find(holds);
    return same ? [[path, same.results]] : [];
  });
  const outcomes = (id: string) =>
    Object.fromEntries(found.map(([path, results]) => [path, results[id] as RuleResult]));
  return { rules: stated.map((each) => ({ stated: each, outcomes: outcomes(each.id) })), failed: [] };
}

/** What was asked for without what is cached. */
export function withoutCached({ rules }: PluginOutcome, input: PluginInput): PluginInput {
  const known = rules[0]?.outcomes ?? {};
  return { ...input, wanted: input.wanted.filter((path) => known[path] === undefined) };
}

export function storeResults(
  keys: PluginKeys,
  { rules, dependencies = {} }: PluginOutcome,
  input: PluginInput,
  { plugins }: ResultCache,
): void {
  const stated = rules.map((each) => each.stated);
  if (plugins.get(keys.code) === undefined) plugins.set(keys.code, stated);
  const contentOf = contentsOf(input);
  for (const path of input.wanted) {
    const contents = (dependencies[path] ?? []).map((each) => [each, contentOf(each) ?? ""] as const);
    const results = Object.fromEntries(rules.map((each) => [each.stated.id, each.outcomes[path] as RuleResult]));
    const before = (plugins.get(keyOf(keys, path)) ?? []) as readonly Cached[];
    plugins.set(keyOf(keys, path), [{ contents, results }, ...before].slice(0, MOST_STATES));
  }
}

/** Two parts of one. What failed as a whole is told as such. */
export function joinedOutcomes(one: PluginOutcome, other: PluginOutcome): PluginOutcome {
  if (other.failed.length > 0) return other;
  const rest = new Map(other.rules.map(({ stated, outcomes }) => [stated.id, outcomes]));
  const rules = one.rules.map(({ stated, outcomes }) => ({
    stated,
    outcomes: { ...outcomes, ...rest.get(stated.id) },
  }));
  return { rules, failed: [] };
}
