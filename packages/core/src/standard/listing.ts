import { printQuantity } from "@plumbmark/calc";
import type { Rule } from "../inspection/judging/rule.js";
import type { StandardChain } from "./chain.js";
import { bySupport, type From, type InForce, inForce, type PlacedValue, type Settable } from "./in-force.js";
import { SUPPORTS, type Support } from "./levels.js";
import type { Level, Setting, SettingDefinition } from "./setting.js";

/** A value in force as people read it, with where it comes from. */
export interface ListedValue<T = Setting> {
  readonly value: T;
  readonly text: string;
  readonly from: From;
}

export interface ListedValues {
  readonly level: ListedValue<Level>;
  readonly settings: Readonly<Record<string, ListedValue>>;
}

/** One rule as it is in force; under a support only what differs for faces held that way. */
export interface ListedRule<R extends Settable = Rule> extends ListedValues {
  readonly rule: R;
  readonly supports: Readonly<Partial<Record<Support, ListedValues>>>;
}

/** A setting as people write it: `80 %`, `0.3 m`, `Scope, Sign-off`. */
export const settingText = (value: Setting, { kind }: SettingDefinition, practice: "us" | "iec"): string =>
  kind && typeof value === "number"
    ? printQuantity(value, kind, practice === "us" ? "us" : "metric")
    : [value].flat().join(", ");

function listed(rule: Settable, force: InForce, practice: "us" | "iec", base?: InForce): ListedValues {
  const text = (key: string, { value, written }: PlacedValue<Setting>): string =>
    written ??
    settingText(
      value,
      (rule.settings as Readonly<Record<string, SettingDefinition>>)[key] as SettingDefinition,
      practice,
    );
  const other = (key: string, { value }: PlacedValue<Setting>): boolean => base?.settings[key]?.value !== value;
  return {
    level: { value: force.level.value, text: force.level.value, from: force.level.from },
    settings: Object.fromEntries(
      Object.entries(force.settings)
        .filter(([key, placed]) => other(key, placed))
        .map(([key, placed]) => [key, { value: placed.value, text: text(key, placed), from: placed.from }]),
    ),
  };
}

/** What is in force of a rule, for one practice. */
export function listRule<R extends Settable>(rule: R, chain: StandardChain, practice: "us" | "iec"): ListedRule<R> {
  const base = inForce(rule, chain, practice);
  const held = SUPPORTS.filter((support) => bySupport(rule, chain, support));
  const supports = held.map((support) => [
    support,
    listed(rule, inForce(rule, chain, practice, support), practice, base),
  ]);
  return { rule, ...listed(rule, base, practice), supports: Object.fromEntries(supports) };
}

/** Where a value comes from, in words: `default`, `practice us`, `house-standard.yaml, line 12`. */
export const fromText = (from: From): string =>
  from.from === "default"
    ? "default"
    : from.from === "practice"
      ? `practice ${from.practice}`
      : `${from.file}, line ${from.line}`;
