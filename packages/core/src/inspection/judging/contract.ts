import { kinds, sources } from "@plumbmark/calc";
import type { SettingDefinition } from "../../standard/setting.js";
import { schemaOf } from "./setting-schema.js";

type Unknown = Readonly<Record<string, unknown>>;

const ID = /^[a-z][a-z0-9]*(-[a-z0-9]+)*\.[a-z0-9]+(-[a-z0-9]+)*$/u;
const LEVELS: readonly unknown[] = ["shall", "should", "note", "none"];

const isObject = (value: unknown): value is Unknown =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const isText = (value: unknown): boolean => typeof value === "string" && value.trim() !== "";

const typeOf = (value: unknown): string =>
  Array.isArray(value) ? (value.every((each) => typeof each === "string") ? "list" : "nothing") : typeof value;

/** What is wrong with a setting's JSON Schema, or with its defaults by it. */
function schemaProblems(name: string, { schema, us, iec }: SettingDefinition): readonly string[] {
  if (schema === undefined) return [];
  try {
    const meets = schemaOf(schema);
    return [us, iec].every((value) => meets(value))
      ? []
      : [`the default of its setting \`${name}\` does not meet its schema`];
  } catch (error) {
    return [
      `the schema of its setting \`${name}\` cannot be used: ${error instanceof Error ? error.message : String(error)}`,
    ];
  }
}

function settingProblems(name: string, setting: unknown): readonly string[] {
  if (!isObject(setting)) return [`its setting \`${name}\` is no group of keys`];
  const problems: string[] = [];
  if (
    !["number", "boolean", "string", "list"].includes(typeOf(setting.us)) ||
    typeOf(setting.us) !== typeOf(setting.iec)
  )
    problems.push(`its setting \`${name}\` needs a default for \`us\` and one for \`iec\`, of one type`);
  if (!isText(setting.describe)) problems.push(`its setting \`${name}\` is not described`);
  if (setting.kind !== undefined && !Object.hasOwn(kinds, String(setting.kind)))
    problems.push(`its setting \`${name}\` is of the kind \`${String(setting.kind)}\`, which does not exist`);
  return problems.length > 0 ? problems : schemaProblems(name, setting as unknown as SettingDefinition);
}

/** What a rule does not keep of its contract, each as a sentence without its beginning; none when it is well formed. */
export function contractProblems(rule: unknown): readonly string[] {
  if (!isObject(rule)) return ["it is no rule made with the kit"];
  const problems: string[] = [];
  if (typeof rule.id !== "string" || !ID.test(rule.id))
    problems.push("its id is not `topic.name` in small letters, digits and hyphens");
  for (const key of ["states", "why", "judged"]) if (!isText(rule[key])) problems.push(`its page has no \`${key}\``);
  if (!LEVELS.includes(rule.level)) problems.push("its level is not shall, should, note or none");
  if (!Array.isArray(rule.sources) || rule.sources.length === 0) problems.push("it names no source");
  else
    for (const source of rule.sources)
      if (!Object.hasOwn(sources, String(source))) problems.push(`its source \`${String(source)}\` is not known`);
  if (rule.over !== undefined && rule.over !== "repository") problems.push("`over` may only be `repository`");
  if (typeof rule.checks !== "function") problems.push("it has no `checks`");
  if (rule.settings !== undefined && !isObject(rule.settings)) problems.push("its settings are no group of keys");
  else
    for (const [name, setting] of Object.entries(rule.settings ?? {})) problems.push(...settingProblems(name, setting));
  return problems;
}
