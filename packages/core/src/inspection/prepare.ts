import { ownRules } from "../own-rules/own-rules.js";
import type { StandardChain, Standards } from "../standard/chain.js";
import { checkStandards } from "../standard/use.js";
import { unusedPlugins } from "./judging/plugin-results.js";
import type { Rule } from "./judging/rule.js";
import { StandardError } from "./judging/settings.js";

export interface InspectOptions {
  /** The day of the inspection, `2027-03-05`; waivers run out by it. */
  readonly today: string;
  /** List the checks that hold, too. */
  readonly every?: boolean;
  /** Ids of further rules that exist and are not applied this time; a waiver or a setting may name them. */
  readonly known?: readonly string[];
  /** Whether these very house standards were used before, by the same code: then no schema in them can be a mistake. */
  readonly accepted?: boolean;
}

/** Two rules of one name would be set, waived and listed as one. */
function refuseTwins(rules: readonly Rule[]): void {
  const ids = rules.map(({ id }) => id);
  const twin = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twin !== undefined)
    throw new StandardError(`${twin}: there is more than one rule of this name. Give one of them another.`);
}

/** Every rule and topic the house standards set or name, whether it exists or not. */
const namesSet = ({ root, folders }: Standards): readonly string[] =>
  [root, ...folders].flatMap(({ settings: { requirements, topics, allows } }) => [
    ...Object.keys(requirements),
    ...[...Object.keys(topics), ...allows].map((name) => (name.includes(".") ? name : `${name}.rules`)),
  ]);

/** Rules and house standards put together. */
export interface Prepared {
  /** Every rule that is asked. */
  readonly all: readonly Rule[];
  /** Ids a document may name; none are known for sure while a plugin could not be used. */
  readonly ids: readonly string[];
  /** Rules that are asked about a document below these house standards. */
  readonly rulesBelow: (chain: StandardChain) => readonly Rule[];
}

/** Puts the rules and the house standards together. @throws StandardError when they do not fit. */
export function prepare(
  { standards }: { readonly standards: Standards },
  rules: readonly Rule[],
  options: InspectOptions,
): Prepared {
  const own = new Map([standards.root, ...standards.folders].map((each) => [each, ownRules(each, options.accepted)]));
  const all = [...rules, ...[...own.values()].flat()];
  const known = [...new Set([...all.map((rule) => rule.id), ...(options.known ?? [])])];
  // A plugin that could not be used has rules whose names nobody knows.
  const unnamed = unusedPlugins(rules).length > 0;
  refuseTwins(rules);
  checkStandards(standards, all, unnamed ? [...known, ...namesSet(standards)] : known);
  return {
    all,
    ids: unnamed ? [] : known,
    rulesBelow: (chain) => [...rules, ...chain.flatMap((each) => own.get(each) ?? [])],
  };
}
