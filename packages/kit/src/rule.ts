import { type Kind, type Known, type SourceId, tabled } from "@plumbmark/calc";
import type { Build, Level, RawCheck, Repository, Rule, RuleContext, SettingDefinition } from "@plumbmark/core";

type Settings = Readonly<Record<string, SettingDefinition>>;

/** `0.8` is a number like any other: a setting has the type of its default, not its value. */
type Wide<T> = T extends number ? number : T extends boolean ? boolean : T extends string ? string : readonly string[];

/** Kind of a limit that is set: the one stated, else a plain number. */
type KindOfSetting<D> = D extends { readonly kind: infer K extends Kind } ? K : "count";

type Numeric<S extends Settings> = { [N in keyof S]: S[N]["us"] extends number ? N : never }[keyof S];

/** What a rule is given besides what it looks at. */
export interface Given<S extends Settings> {
  /** Everything the docs repository holds: all builds, parts, lots, the house standard. */
  readonly repository: Repository;
  /** What the house standard sets, or the default of the practice; quantities in the unit their kind is kept in (SI). */
  readonly settings: { readonly [N in keyof S]: Wide<S[N]["us"]> };
  /** The settings that are numbers, as values to compare with. */
  readonly limits: { readonly [N in Numeric<S>]: Known<KindOfSetting<S[N]>> };
}

interface Statement<S extends Settings> {
  /** `topic.name`, in small letters, digits and hyphens. */
  readonly id: string;
  /** The rule in one sentence, as it would stand in a standard. */
  readonly states: string;
  /** Its level, unless the house standard sets another. */
  readonly level: Level;
  /** What goes wrong on site without it. */
  readonly why: string;
  /** What is compared with what. */
  readonly judged: string;
  /** Ids of what it rests on, from `sources`: `part` for a maker's figure, `practice`, `house`, or a standard. */
  readonly sources: readonly SourceId[];
  /** What a house standard may set of it. */
  readonly settings?: S;
}

/** A rule over one document at a time. */
export interface RuleDefinition<S extends Settings> extends Statement<S> {
  /** Yields one check for each thing it looks at, holding or not. */
  readonly checks: (given: Given<S> & { readonly build: Build }) => Iterable<RawCheck>;
}

/** A rule over the whole repository at once. */
export interface RepositoryRuleDefinition<S extends Settings> extends Statement<S> {
  /** Yields checks, each with the document it is about: `about(build, atMost(…))`. */
  readonly checks: (given: Given<S>) => Iterable<RawCheck>;
}

/** Numbers of the settings in force, as values that say where they come from. */
function limitsOf(defined: Settings, settings: RuleContext["settings"]): Readonly<Record<string, Known>> {
  const numbers = Object.entries(settings).filter((each): each is [string, number] => typeof each[1] === "number");
  return Object.freeze(
    Object.fromEntries(
      numbers.map(([name, value]) => [
        name,
        Object.freeze(tabled(value, defined[name]?.kind ?? "count", "house", defined[name]?.describe ?? name)),
      ]),
    ),
  );
}

function made<S extends Settings>(definition: RuleDefinition<S> | RepositoryRuleDefinition<S>): Rule {
  const defined: Settings = definition.settings ?? {};
  const checks = definition.checks as (given: unknown) => Iterable<RawCheck>;
  // The same settings are in force for many documents.
  const known = new WeakMap<RuleContext["settings"], ReturnType<typeof limitsOf>>();
  const limits = (settings: RuleContext["settings"]): ReturnType<typeof limitsOf> => {
    const found = known.get(settings) ?? limitsOf(defined, settings);
    known.set(settings, found);
    return found;
  };
  return { ...definition, checks: (context) => checks({ ...context, limits: limits(context.settings) }) };
}

/** Declares a rule over one document at a time. Its work is a generator that yields one check for each thing it looks at, holding or not. */
export const rule = <const S extends Settings = Record<never, never>>(definition: RuleDefinition<S>): Rule =>
  made(definition);

/** Declares a rule over the whole repository. It is asked once, and says of each check which document it is about. */
export const repositoryRule = <const S extends Settings = Record<never, never>>(
  definition: RepositoryRuleDefinition<S>,
): Rule => ({ ...made(definition), over: "repository" });
