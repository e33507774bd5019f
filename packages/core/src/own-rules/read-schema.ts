import { GRAVITY, kinds, type Quantity, readQuantity } from "@plumbmark/calc";
import { choices } from "../document/nearest.js";
import { shown } from "../document/shown.js";
import { type Data, join } from "../document/yaml/yaml.js";
import { linearPattern } from "../patterns/linear.js";
import { isLimit, isOneOf, KEYWORDS, LISTS, MAPS, SINGLES, VALUES } from "./keywords.js";
import type { SchemaShape, Type } from "./shape.js";

/** A schema whose quantities are numbers in the unit their kind is kept in. */
export type Schema = boolean | { readonly [key: string]: unknown };

/** Told what is wrong at a path of the house standard. */
export type Complain = (path: string, says: string, mend: string) => void;

interface Reading {
  /** What stands here in the build; undefined where nothing is known of it. */
  readonly shape: SchemaShape | undefined;
  readonly path: string;
  /** What is looked at, in words: "a face", "`trim` of a face". */
  readonly name: string;
  readonly complain: Complain;
}

type Mapping = Readonly<Record<string, Data>>;

const isMapping = (data: Data | undefined): data is Mapping =>
  typeof data === "object" && data !== null && !Array.isArray(data);

const TYPES: Readonly<Record<Type, string>> = {
  object: "a group of keys",
  array: "a list",
  string: "a text",
  number: "a number",
  integer: "a whole number",
  boolean: "true or false",
};

/** What stands there, in words: `a length, compared as a number`. */
function standsThere({ types, kinds: held }: SchemaShape): string {
  if (held.length > 0) return `${held.map((kind) => kinds[kind].name).join(" or ")}, compared as a number`;
  return [...types].map((type) => TYPES[type]).join(" or ");
}

const isNumber = ({ types }: SchemaShape): boolean => types.has("number") || types.has("integer");

/** What may be a mass or a force is compared as a mass (standard gravity). */
const kept = ({ kind, value }: Quantity, { kinds: held }: SchemaShape): number =>
  kind === "force" && held.includes("mass") ? value / GRAVITY : value;

/** A number or quantity as written → a number; what it cannot be is told. */
function readNumber(written: Data, reading: Reading): number | undefined {
  const { shape, path, name, complain } = reading;
  if (shape && shape.kinds.length > 0 && (typeof written === "string" || typeof written === "number")) {
    const read = readQuantity(written, shape.kinds);
    if (read.ok) return kept(read.quantity, shape);
    complain(path, `The limit of ${name} is ${read.found}.`, `Write ${read.allowed}.`);
    return undefined;
  }
  if (typeof written === "number") return written;
  complain(path, `The limit of ${name} is ${shown(written)}.`, "Write a number without a unit.");
  return undefined;
}

function readLimit(key: string, written: Data, reading: Reading): unknown {
  const { shape, path, name, complain } = reading;
  if (shape && !isNumber(shape)) {
    complain(
      path,
      `${name} is ${standsThere(shape)}, so \`${key}\` can never decide anything.`,
      "Use `const`, `enum` or `pattern` for texts.",
    );
    return undefined;
  }
  return readNumber(written, reading);
}

/** One value of `const` or `enum`: of a type that can stand there, and one of the words where they are listed. */
function readValue(written: Data, reading: Reading): unknown {
  const { shape, path, name, complain } = reading;
  if (!shape) return written;
  if (isNumber(shape) && (typeof written === "number" || (typeof written === "string" && !shape.types.has("string"))))
    return readNumber(written, reading);
  const type = Array.isArray(written) ? "array" : isMapping(written) ? "object" : (typeof written as Type);
  if (!shape.types.has(type))
    complain(path, `${name} is never ${shown(written)}: it is ${standsThere(shape)}.`, "Write a value it can have.");
  else if (shape.words && typeof written === "string" && !shape.words.includes(written))
    complain(path, `${name} is never \`${written}\`.`, choices(shape.words, written));
  return written;
}

function readType(written: Data, { shape, path, name, complain }: Reading): void {
  const types = [written].flat().map((each) => (typeof each === "string" ? each : shown(each)));
  const unknown = types.find((type) => !Object.hasOwn(TYPES, type) && type !== "null");
  if (unknown !== undefined) {
    complain(path, `There is no type \`${unknown}\`.`, choices(Object.keys(TYPES), unknown));
    return;
  }
  if (!shape || shape.types.size === 0) return;
  const fits = types.some(
    (type) =>
      shape.types.has(type as Type) ||
      (type === "integer" && isNumber(shape)) ||
      (type === "number" && isNumber(shape)),
  );
  if (!fits)
    complain(
      path,
      `${name} is never of the type \`${types.join("`, `")}\`: it is ${standsThere(shape)}.`,
      "Leave `type` out, or write the type it has.",
    );
}

/** A name that is neither written nor computed would make the rule hold for everything. */
function known(key: string, at: string, { shape, name, complain }: Reading): boolean {
  if (!shape || shape.properties.has(key) || shape.others) return true;
  const names = [...shape.properties.keys()];
  complain(
    at,
    `Nothing called \`${key}\` is written or computed for ${name}.`,
    names.length === 0 ? `It is ${standsThere(shape)}.` : choices(names, key),
  );
  return false;
}

const below = (reading: Reading, key: string, path: string): Reading => ({
  ...reading,
  path,
  name: `\`${key}\` of ${reading.name}`,
  shape: reading.shape?.properties.get(key) ?? reading.shape?.others,
});

function readMap(key: string, written: Data, reading: Reading): unknown {
  if (!isMapping(written)) return complained(reading, key, "a group of keys");
  const exact = key !== "patternProperties";
  return Object.fromEntries(
    Object.entries(written).map(([name, schema]) => {
      const path = join(reading.path, name);
      if (!exact) readPattern(name, { ...reading, path });
      if (!exact) return [name, readSchema(schema, { ...reading, path, shape: undefined })];
      known(name, path, reading);
      const inner = key === "dependentSchemas" ? { ...reading, path } : below(reading, name, path);
      return [name, readSchema(schema, inner)];
    }),
  );
}

const complained = ({ path, complain }: Reading, key: string, wanted: string): undefined =>
  void complain(path, `\`${key}\` is not ${wanted}.`, `Write ${wanted} under it.`);

/** What a keyword that holds one schema looks at. */
function singleShape(key: string, { shape }: Reading): SchemaShape | undefined {
  if (key === "items" || key === "contains") return shape?.items;
  if (key === "additionalProperties") return shape?.others;
  return key === "propertyNames" ? undefined : shape;
}

function readPattern(written: Data, { path, complain }: Reading): void {
  try {
    if (typeof written !== "string") throw new TypeError("it is no text");
    linearPattern(written);
  } catch (error) {
    complain(
      path,
      `The pattern ${shown(written)} cannot be read: ${(error as Error).message}.`,
      "Write a regular expression without look-ahead and back-references: patterns are matched in linear time.",
    );
  }
}

function readKeyword(key: string, written: Data, reading: Reading): unknown {
  if (isOneOf(MAPS, key)) return readMap(key, written, reading);
  if (isOneOf(LISTS, key)) {
    if (!Array.isArray(written)) return complained(reading, key, "a list of schemas");
    const shape = key === "prefixItems" ? reading.shape?.items : reading.shape;
    return written.map((each: Data, index) =>
      readSchema(each, { ...reading, shape, path: join(reading.path, index + 1) }),
    );
  }
  if (isOneOf(SINGLES, key)) return readSchema(written, { ...reading, shape: singleShape(key, reading) });
  if (isLimit(key)) return readLimit(key, written, reading);
  if (key === "const") return readValue(written, reading);
  if (isOneOf(VALUES, key)) {
    if (!Array.isArray(written)) return complained(reading, key, "a list of values");
    return written.map((each: Data, index) => readValue(each, { ...reading, path: join(reading.path, index + 1) }));
  }
  if (key === "type") readType(written, reading);
  if (key === "pattern") readPattern(written, reading);
  if (key === "required") {
    if (!Array.isArray(written) || written.some((name) => typeof name !== "string"))
      return complained(reading, key, "a list of names");
    for (const [index, name] of written.entries()) known(name as string, join(reading.path, index + 1), reading);
  }
  return written;
}

function refuseNothing(schema: Readonly<Record<string, unknown>>, { path, name, complain }: Reading): void {
  const [least, most] = [schema.minimum ?? schema.exclusiveMinimum, schema.maximum ?? schema.exclusiveMaximum];
  if (typeof least === "number" && typeof most === "number" && least > most)
    complain(
      path,
      `No value of ${name} is both above the lower and below the upper limit.`,
      "Exchange the two limits.",
    );
}

/** Reads a schema as the house standard writes it; whatever could never match is told with its place. */
export function readSchema(written: Data, reading: Reading): Schema {
  if (typeof written === "boolean") return written;
  if (!isMapping(written)) {
    reading.complain(
      reading.path,
      `The schema of ${reading.name} is ${shown(written)}.`,
      "Write keywords of JSON Schema under it.",
    );
    return true;
  }
  const read: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(written)) {
    const path = join(reading.path, key);
    if (KEYWORDS.includes(key)) read[key] = readKeyword(key, value, { ...reading, path });
    else reading.complain(path, `\`${key}\` is no keyword of JSON Schema that can stand here.`, choices(KEYWORDS, key));
  }
  refuseNothing(read, reading);
  return read;
}
