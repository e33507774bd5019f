import { type Kind, readQuantity } from "@plumbmark/calc";
import type { Place } from "../document/place.js";
import type { Data } from "../document/yaml/yaml.js";
import type { Rule as CodedRule } from "../inspection/judging/rule.js";
import { meetsSchema } from "../inspection/judging/setting-schema.js";
import { writtenKey, writtenRule } from "../repository/old-keys.js";
import type { StandardChain } from "./chain.js";
import { placeIn, type StandardFile } from "./file.js";
import { isLevel, isLooser, type Support, stricterLevel, topicOf } from "./levels.js";
import type { Level, Setting, SettingDefinition } from "./setting.js";

/** What has to be known of a rule to tell what is in force of it. */
export type Settable = Pick<CodedRule, "id" | "level" | "settings">;

/** Where a value in force comes from. */
export type From =
  | { readonly from: "default" }
  | { readonly from: "practice"; readonly practice: "us" | "iec" }
  | { readonly from: "standard"; readonly file: string; readonly line: number; readonly column: number };

export interface PlacedValue<T> {
  readonly value: T;
  readonly from: From;
  /** As the house standard writes it. */
  readonly written?: string;
}

/** Level and settings of one rule as they are in force, each with where it comes from. */
export interface InForce {
  readonly level: PlacedValue<Level>;
  readonly settings: Readonly<Record<string, PlacedValue<Setting>>>;
}

const at = (standard: StandardFile, path: string): From => {
  const { line, column }: Place = placeIn(standard, path);
  return { from: "standard", file: standard.file ?? "", line, column };
};

/** A setting as written → as rules get it; undefined when it cannot be read. */
export function readSetting(data: Data | undefined, definition: SettingDefinition): Setting | undefined {
  if (data === undefined || data === null) return undefined;
  const value = read(data, definition);
  return value === undefined || !meetsSchema(definition.schema, value) ? undefined : value;
}

function read(data: NonNullable<Data>, { kind, us }: SettingDefinition): Setting | undefined {
  if (kind) {
    if (typeof data === "object") return undefined;
    const reading = readQuantity(typeof data === "number" ? data : String(data), [kind as Kind]);
    return reading.ok ? reading.quantity.value : undefined;
  }
  const form = (value: unknown): string => (Array.isArray(value) ? "list" : typeof value);
  return form(data) === form(us) ? (data as Setting) : undefined;
}

/** Keys of a rule's entry that hold for a support, or for all when none is named. */
const entryOf = (entry: Readonly<Record<string, Data>> | undefined, support: Support | undefined) =>
  (support === undefined ? entry : (entry?.[support] as Readonly<Record<string, Data>> | undefined)) ?? {};

/** Places of one file that may say something of a rule, the least particular first. */
function entriesOf({ settings, placed }: StandardFile, rule: Settable, support: Support | undefined) {
  const topic = topicOf(rule.id);
  const placeOf = (group: "topics" | "requirements", key: string): string => {
    if (group === "topics") return `${group}.${key}`;
    const now = writtenKey(placed, group);
    return `${now}.${writtenRule(placed, now, key)}`;
  };
  const of = (group: "topics" | "requirements", key: string, held: Support | undefined) => ({
    path: `${placeOf(group, key)}${held === undefined ? "" : `.${held}`}`,
    own: entryOf(settings[group][key], held),
  });
  return support === undefined
    ? [of("topics", topic, undefined), of("requirements", rule.id, undefined)]
    : [
        of("topics", topic, undefined),
        of("topics", topic, support),
        of("requirements", rule.id, undefined),
        of("requirements", rule.id, support),
      ];
}

const startOf = ({ us, iec }: SettingDefinition, practice: "us" | "iec"): PlacedValue<Setting> => ({
  value: practice === "us" ? us : iec,
  from: JSON.stringify(us) === JSON.stringify(iec) ? { from: "default" } : { from: "practice", practice },
});

/** Level and settings of a rule for one practice and, where it matters, for faces held in one way. */
export function inForce(rule: Settable, chain: StandardChain, practice: "us" | "iec", support?: Support): InForce {
  let level: PlacedValue<Level> = { value: rule.level, from: { from: "default" } };
  const defined = Object.entries(rule.settings ?? {});
  const settings = Object.fromEntries(defined.map(([key, definition]) => [key, startOf(definition, practice)]));
  for (const standard of chain)
    for (const { path, own } of entriesOf(standard, rule, support)) {
      if (isLevel(own.level)) level = { value: own.level, from: at(standard, `${path}.level`), written: own.level };
      for (const [key, definition] of defined) {
        const value = readSetting(own[key], definition);
        if (value !== undefined)
          settings[key] = { value, from: at(standard, `${path}.${key}`), written: String(own[key]) };
      }
    }
  return { level, settings };
}

/** Whether any of these house standards treats faces differently by how they are held. */
export const bySupport = (rule: Settable, chain: StandardChain, support: Support): boolean =>
  chain.some(({ settings }) => {
    const both = [settings.requirements[rule.id], settings.topics[topicOf(rule.id)]];
    return both.some((entry) => entry?.[support] !== undefined);
  });

/** For a thing that serves faces held in several ways: the strictest of what is in force for each. */
export function strictest(rule: Settable, each: readonly [InForce, ...InForce[]]): InForce {
  return each.reduce((one, other) => ({
    level: stricterLevel(one.level.value, other.level.value) === one.level.value ? one.level : other.level,
    settings: Object.fromEntries(
      Object.entries(rule.settings ?? {}).map(([key, definition]) => {
        const [is, was] = [one.settings[key] as PlacedValue<Setting>, other.settings[key] as PlacedValue<Setting>];
        const unknown = definition.stricter === undefined;
        return [key, unknown || !isLooser(definition, is.value, was.value) ? is : was];
      }),
    ),
  }));
}
