import type { RuleResult, StatedRule } from "@plumbmark/core";
import type { Kept } from "../kept/kept.js";
import { hashOf } from "../kept/keys.js";
import type { NamedFile } from "../kept/outlines.js";
import type { Looked, Outcome } from "./carry-out.js";

// What a plugin came to, document by document, when none of its rules looks at the builds of others.

/** What a plugin is known by. */
export interface Keys {
  /** Its code, to the byte, and how far it may go. */
  readonly code: string;
  /** The same, with everything its rules can see besides one document. */
  readonly around: string;
}

/** What each rule came to, by its id. */
type OfDocument = Readonly<Record<string, RuleResult>>;

/** A text may be one that is only read when it is looked at. */
export const contentOf = (file: NamedFile): string => file.id ?? hashOf(file.text);

const keyed = ({ around }: Keys, { files, wanted }: Looked): readonly (readonly [path: string, key: string])[] => {
  const asked = new Set(wanted);
  return (files.documents as readonly NamedFile[])
    .filter(({ path }) => asked.has(path))
    .map((file) => [file.path, hashOf([around, file.path, contentOf(file)])]);
};

const outcomeOf = (rules: readonly StatedRule[], found: ReadonlyMap<string, OfDocument>): Outcome => ({
  rules: rules.map((stated) => ({
    stated,
    outcomes: Object.fromEntries([...found].map(([path, of]) => [path, of[stated.id] as RuleResult])),
  })),
  failed: [],
  alone: true,
});

/** What it came to on those documents that were asked for and are as they were; undefined when it is not known at all. */
export function keptByDocument(keys: Keys, on: Looked, { outcomes }: Kept): Outcome | undefined {
  const rules = outcomes.get(keys.code) as readonly StatedRule[] | undefined;
  if (!rules) return undefined;
  const found = keyed(keys, on).map(([path, key]) => [path, outcomes.get(key) as OfDocument | undefined] as const);
  return outcomeOf(rules, new Map(found.flatMap(([path, of]) => (of ? [[path, of] as const] : []))));
}

/** What was asked for without what is known. */
export function notIn({ rules }: Outcome, on: Looked): Looked {
  const known = rules[0]?.outcomes ?? {};
  return { ...on, wanted: on.wanted.filter((path) => known[path] === undefined) };
}

export function keepByDocument(keys: Keys, { rules }: Outcome, on: Looked, { outcomes }: Kept): void {
  if (outcomes.get(keys.code) === undefined)
    outcomes.set(
      keys.code,
      rules.map(({ stated }) => stated),
    );
  for (const [path, key] of keyed(keys, on))
    outcomes.set(key, Object.fromEntries(rules.map(({ stated, outcomes: of }) => [stated.id, of[path]])));
}

/** Two parts of one. What failed as a whole is told as such. */
export function joined(one: Outcome, other: Outcome): Outcome {
  if (other.failed.length > 0) return other;
  const rest = new Map(other.rules.map(({ stated, outcomes }) => [stated.id, outcomes]));
  const rules = one.rules.map(({ stated, outcomes }) => ({
    stated,
    outcomes: { ...outcomes, ...rest.get(stated.id) },
  }));
  return { rules, failed: [], alone: one.alone && other.alone };
}
