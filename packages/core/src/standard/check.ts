import { type Kind, readQuantity, siUnit } from "@plumbmark/calc";
import { choices } from "../document/nearest.js";
import { shown } from "../document/shown.js";
import type { Data } from "../document/yaml/yaml.js";
import type { Rule } from "../inspection/judging/rule.js";
import { schemaText } from "../inspection/judging/setting-schema.js";
import { writtenKey, writtenRule } from "../repository/old-keys.js";
import type { Standards } from "./chain.js";
import { mistakeIn, type StandardFile, type StandardMistake } from "./file.js";
import { readSetting } from "./in-force.js";
import { SUPPORTS, topicOf } from "./levels.js";
import { peopleMistakes } from "./people.js";
import type { SettingDefinition } from "./setting.js";

type Entry = Readonly<Record<string, Data>>;

/** What a setting may be, in words. */
function allowedFor(
  definition: SettingDefinition,
  written: Data,
): { readonly found: string; readonly allowed: string } {
  const { kind, us, schema } = definition;
  if (kind && typeof written !== "object") {
    const reading = readQuantity(typeof written === "number" ? written : String(written), [kind as Kind]);
    if (!reading.ok) return reading;
  }
  const form = Array.isArray(us) ? "a list" : typeof us === "number" ? "a number without a unit" : `a ${typeof us}`;
  const found = shown(written);
  // It can be read, so what it does not meet is the schema of the rule's author.
  if (schema && readSetting(written, { ...definition, schema: {} }) !== undefined)
    return { found, allowed: `${schemaText(schema)}${kind ? ` (${siUnit(kind)})` : ""}` };
  return { found, allowed: form };
}

/** Settings of one entry of `requirements`: known by name and readable. */
function settingMistakes(standard: StandardFile, rule: Rule, path: string, entry: Entry): readonly StandardMistake[] {
  const settings = rule.settings ?? {};
  const others = path.split(".").length > 3 ? ["level"] : ["level", ...SUPPORTS];
  return Object.entries(entry).flatMap(([key, written]) => {
    if (others.includes(key)) return [];
    const definition = Object.hasOwn(settings, key) ? settings[key] : undefined;
    const here = `${path}.${key}`;
    if (!definition)
      return [
        mistakeIn(
          standard,
          here,
          `${rule.id} has no setting \`${key}\`.`,
          choices([...Object.keys(settings), ...others], key),
        ),
      ];
    if (written === null || readSetting(written, definition) !== undefined) return [];
    const { found, allowed } = allowedFor(definition, written);
    return [mistakeIn(standard, here, `\`${key}\` (${definition.describe}) is ${found}.`, `Write ${allowed}.`)];
  });
}

function ruleMistakes(
  standard: StandardFile,
  rules: ReadonlyMap<string, Rule>,
  known: readonly string[],
): readonly StandardMistake[] {
  const group = writtenKey(standard.placed, "requirements");
  return Object.entries(standard.settings.requirements).flatMap(([id, entry]) => {
    const path = `${group}.${writtenRule(standard.placed, group, id)}`;
    const rule = rules.get(id);
    if (!rule)
      return known.includes(id) ? [] : [mistakeIn(standard, path, `There is no rule \`${id}\`.`, choices(known, id))];
    const supports = SUPPORTS.filter((support) => entry[support] !== undefined && entry[support] !== null);
    return [
      ...settingMistakes(standard, rule, path, entry),
      ...supports.flatMap((support) => settingMistakes(standard, rule, `${path}.${support}`, entry[support] as Entry)),
    ];
  });
}

function nameMistakes(standard: StandardFile, known: readonly string[]): readonly StandardMistake[] {
  const topics = [...new Set(known.map(topicOf))];
  const { topics: set, allows } = standard.settings;
  return [
    ...Object.keys(set)
      .filter((topic) => !topics.includes(topic))
      .map((topic) =>
        mistakeIn(standard, `topics.${topic}`, `There is no topic \`${topic}\`.`, choices(topics, topic)),
      ),
    ...allows.flatMap((name, index) => {
      const all = name.includes(".") ? known : topics;
      return all.includes(name)
        ? []
        : [mistakeIn(standard, `allows.${index + 1}`, `There is no rule or topic \`${name}\`.`, choices(all, name))];
    }),
  ];
}

/** Two rules of one name would be set, waived and listed as one. */
const twinMistakes = (standard: StandardFile, all: readonly string[]): readonly StandardMistake[] =>
  Object.keys(standard.settings["own-rules"] ?? {})
    .filter((id) => all.indexOf(id) !== all.lastIndexOf(id))
    .map((id) =>
      mistakeIn(
        standard,
        `own-rules.${id}`,
        `There is more than one rule of the name \`${id}\`.`,
        "Give the house's own rule another name.",
      ),
    );

/** What every house standard names and sets has to exist and to be readable. `known` are ids that need no rule here. */
export function namingMistakes(
  { root, folders }: Standards,
  rules: readonly Rule[],
  known: readonly string[],
): readonly StandardMistake[] {
  const ids = rules.map(({ id }) => id);
  const byId = new Map(rules.map((rule) => [rule.id, rule]));
  return [root, ...folders].flatMap((standard) => [
    ...ruleMistakes(standard, byId, known),
    ...nameMistakes(standard, known),
    ...twinMistakes(standard, ids),
    ...peopleMistakes(standard),
  ]);
}
