import { isLimit, type Limit } from "./keywords.js";
import type { Schema } from "./read-schema.js";

/** One demand on one value: a limit, or the values it may have. */
export interface Demand {
  /** Where it stands below the thing: `["wiring", "length"]`. */
  readonly keys: readonly string[];
  readonly limits: Readonly<Partial<Record<Limit, number>>>;
  readonly values?: readonly unknown[];
}

/** A schema taken apart into demands on single values, names that have to be there, and the rest. */
export interface Split {
  readonly demands: readonly Demand[];
  readonly present: readonly (readonly string[])[];
  readonly rest: Schema;
}

type Keywords = Readonly<Record<string, unknown>>;

const scalar = (value: unknown): boolean => value === null || typeof value !== "object";

function demandOf(schema: Keywords, keys: readonly string[]): readonly Demand[] {
  const limits = Object.fromEntries(Object.entries(schema).filter(([key]) => isLimit(key))) as Demand["limits"];
  const listed = Array.isArray(schema.enum) ? schema.enum : "const" in schema ? [schema.const] : undefined;
  const values = listed?.every(scalar) ? listed : undefined;
  return Object.keys(limits).length === 0 && !values ? [] : [{ keys, limits, ...(values ? { values } : {}) }];
}

const taken = (key: string, value: unknown): boolean =>
  isLimit(key) || (key === "const" && scalar(value)) || (key === "enum" && Array.isArray(value) && value.every(scalar));

const SAYS_NOTHING = new Set(["title", "description", "$comment"]);

const isEmpty = (schema: Schema): boolean => typeof schema === "object" && Object.keys(schema).length === 0;

/** Takes `required`, limits, `const` and `enum` out of what a schema demands of every thing alike. */
export function split(schema: Schema, keys: readonly string[] = []): Split {
  if (typeof schema === "boolean") return { demands: [], present: [], rest: schema };
  const inner = Object.entries((schema.properties ?? {}) as Readonly<Record<string, Schema>>);
  const below = inner.map(([key, each]) => [key, split(each, [...keys, key])] as const);
  const all = ((schema.allOf ?? []) as readonly Schema[]).map((each) => split(each, keys));
  const left = below.filter(([, { rest }]) => !isEmpty(rest)).map(([key, { rest }]) => [key, rest] as const);
  const more = all.map(({ rest }) => rest).filter((rest) => !isEmpty(rest));
  const own = keys.length === 0 ? [] : demandOf(schema, keys);
  const others = Object.entries(schema).filter(
    ([key, value]) =>
      !["properties", "allOf", "required"].includes(key) &&
      !SAYS_NOTHING.has(key) &&
      !(keys.length > 0 && taken(key, value)),
  );
  return {
    demands: [...own, ...below.flatMap(([, { demands }]) => demands), ...all.flatMap(({ demands }) => demands)],
    present: [
      ...((schema.required ?? []) as readonly string[]).map((key) => [...keys, key]),
      ...[...below.map(([, each]) => each), ...all].flatMap(({ present }) => present),
    ],
    rest: {
      ...Object.fromEntries(others),
      ...(left.length > 0 ? { properties: Object.fromEntries(left) } : {}),
      ...(more.length > 0 ? { allOf: more } : {}),
    },
  };
}

/** Every path below the thing that a schema speaks of. */
export function mentioned(schema: unknown, keys: readonly string[] = []): readonly string[] {
  if (Array.isArray(schema)) return schema.flatMap((each) => mentioned(each, keys));
  if (schema === null || typeof schema !== "object") return [];
  return Object.entries(schema).flatMap(([key, value]) => {
    if (key !== "properties") return ["const", "enum", "items", "required"].includes(key) ? [] : mentioned(value, keys);
    return Object.entries(value as object).flatMap(([name, each]) => [
      [...keys, name].join("."),
      ...mentioned(each, [...keys, name]),
    ]);
  });
}

/** The same schema where every name spoken of has to be there: what is missing never passes. */
export function demanding(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(demanding);
  if (schema === null || typeof schema !== "object") return schema;
  const entries = Object.entries(schema).map(([key, value]) => {
    if (["not", "if", "const", "enum", "required"].includes(key)) return [key, value];
    if (key !== "properties") return [key, demanding(value)];
    return [key, Object.fromEntries(Object.entries(value as object).map(([name, each]) => [name, demanding(each)]))];
  });
  const names = Object.entries((schema as Keywords).properties ?? {}).filter(([, each]) => each !== false);
  const required = [...(((schema as Keywords).required as string[] | undefined) ?? []), ...names.map(([name]) => name)];
  return { ...Object.fromEntries(entries), ...(required.length > 0 ? { required: [...new Set(required)] } : {}) };
}
