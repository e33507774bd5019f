import type { Kind } from "@plumbmark/calc";
import * as schemas from "../generated/schemas.js";
import * as validators from "../generated/validators.js";
import { kindNames, standInFor } from "./advice.js";
import type { Mistake } from "./mistake.js";
import { choices, keyFor, nearest, nearOnes, oppositeOf, valueFor } from "./nearest.js";
import { type Place, START } from "./place.js";
import { shown } from "./shown.js";
import { join, type Placed } from "./yaml/yaml.js";

/** One complaint of the validator, as far as it is used here. */
interface Complaint {
  readonly keyword: string;
  readonly instancePath: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly parentSchema: {
    readonly title?: string;
    readonly properties?: Readonly<Record<string, unknown>>;
    readonly description?: string;
  };
  readonly schema: unknown;
  readonly data: unknown;
  /** The key that is wrong, where keys themselves have a form. */
  readonly propertyName?: string;
}

type Validator = ((data: unknown) => boolean) & { errors?: readonly Complaint[] | null };

export type SchemaName = "build" | "parts" | "stock" | "houseStandard" | "record" | "survey" | "wish";

/** `/faces/banner/omit/0` → `faces.banner.omit.1`. */
const dotted = (pointer: string, data: unknown): string => {
  let path = "";
  let here: unknown = data;
  for (const raw of pointer.split("/").slice(1)) {
    const key = raw.replaceAll("~1", "/").replaceAll("~0", "~");
    path = join(path, Array.isArray(here) ? Number(key) + 1 : key);
    here = (here as Record<string, unknown> | undefined)?.[key];
  }
  return path;
};

const TYPES: Readonly<Record<string, string>> = {
  object: "a group of keys",
  array: "a list",
  string: "a text",
  integer: "a whole number",
  number: "a number",
  boolean: "`true` or `false`",
};
const typeNames = (type: unknown): string =>
  [type]
    .flat()
    .map((each) => TYPES[String(each)] ?? String(each))
    .join(" or ");

/** What each kind of file is as a whole, for one that is empty or something else altogether. */
const WHOLE: Readonly<Record<SchemaName, readonly [name: string, is: string]>> = {
  build: ["The front matter", "It is a group of keys, and one of them is `build`."],
  parts: ["The parts catalogue", "It is a group of keys, one for each part: `NAME: {kind: panel, …}`."],
  stock: [
    "The stock list",
    "It is a group of keys: under `lots:` stands one for each lot, under `items:` one for each part.",
  ],
  houseStandard: ["The house standard", "It is a group of keys: under `house-standard:` stands its name."],
  record: ["The record", "It is what `plumbmark inspect --as json` prints."],
  survey: ["The survey", "It is a group of keys, and one of them is `survey`."],
  wish: ["The wish", "It is a group of keys, and one of them is `wish`."],
};

function wordsOfWhole(schema: SchemaName, data: unknown): Words {
  const [name, is] = WHOLE[schema];
  return { says: `${name} is ${data === null ? "empty" : shown(data)}.`, mend: is };
}

/** Names of things are the author's, and a message is read by people. */
const LONGEST_PATH = 120;

interface Words {
  readonly says: string;
  readonly mend: string;
  readonly path?: string;
  readonly atKey?: boolean;
  /** What was most likely meant, in place of the key or value. */
  readonly better?: string;
  /** Nothing else can be meant. */
  readonly sure?: boolean;
  /** What else could be meant. */
  readonly offers?: readonly string[];
  /** Something that could stand in place of the value. */
  readonly standIn?: string;
  /** Of a key that is not known: the one it stands for, which is not told once more as missing. */
  readonly insteadOf?: string;
}

type Schema = Complaint["parentSchema"] & Readonly<Record<string, unknown>>;

const TEXT_FORM = "letters, digits, hyphens and underscores";

/** A key that belongs one level deeper: `trim` beside the faces and not in one. */
function movedOut(path: string, { parentSchema }: Complaint, siblings: readonly string[]): Words | undefined {
  const key = path.slice(path.lastIndexOf(".") + 1);
  const group = path.slice(0, Math.max(0, path.lastIndexOf(".")));
  if (!Object.hasOwn(parentSchema.properties ?? {}, key) || group === "" || group === path) return undefined;
  const inner = siblings.find((each) => each !== key);
  return {
    says: `\`${key}\` stands beside what is under \`${group}\`, not in it.`,
    mend: `Indent it as far as the keys under \`${inner ?? group}\`.`,
    atKey: true,
  };
}

/** What stands in place of a value of a wrong type, and how it is written right. */
function ofType(name: string, path: string, complaint: Complaint): Words {
  const { params, data } = complaint;
  const schema = complaint.parentSchema as Schema;
  const types = [params.type].flat().map(String);
  const says = `${name} is ${shown(data)}.`;
  const wanted = schema.quantity ?? schema.pair ?? schema.range;
  if (wanted !== undefined) {
    const of = [wanted].flat() as Kind[];
    const one = standInFor(of);
    const standIn = schema.pair ? `${one} x ${one}` : schema.range ? `${one} to ${one}` : one;
    return { says, mend: `Write ${kindNames(of)} there.`, standIn };
  }
  const bare = typeof data === "string" && /^-?\d+(?:\.\d+)?$/u.test(data.trim()) ? data.trim() : undefined;
  if (bare !== undefined && types.some((type) => type === "integer" || type === "number"))
    return {
      says: `${name} is the text \`"${data}"\`.`,
      mend: `Write \`${bare}\`, without quotes.`,
      better: bare,
      sure: true,
    };
  const digits = typeof data === "string" ? data.trim().normalize("NFKC") : "";
  if (types.includes("integer") && /^\d{1,9}$/u.test(digits))
    return { says: `${says.slice(0, -1)}, in wide digits.`, mend: `Write \`${digits}\`.`, better: digits, sure: true };
  const word = typeof data === "string" ? NUMBERS.indexOf(data.trim().toLowerCase()) : -1;
  if (types.includes("integer") && word >= 0)
    return { says, mend: `Write the number in figures: \`${word}\`.`, better: String(word) };
  if (types.includes("string") && (typeof data === "number" || typeof data === "boolean"))
    return {
      says,
      mend: `Write a text; a number or \`true\` as text stands in quotes: \`"${data}"\`.`,
      better: `"${data}"`,
    };
  if (types.includes("boolean") && typeof data === "string" && /^(?:yes|no|on|off)$/iu.test(data)) {
    const better = String(/^(?:yes|on)$/iu.test(data));
    return { says, mend: `Write \`${better}\`.`, better, sure: true };
  }
  if (types.includes("object")) {
    const keys = Object.keys(schema.properties ?? {}).slice(0, 4);
    const such = keys.length === 0 ? "" : `, with keys such as ${keys.map((key) => `\`${key}:\``).join(", ")}`;
    return { says, mend: `Write a group of keys under \`${path}\`${such}.` };
  }
  if (types.includes("array")) {
    const better = typeof data === "string" && /^[\w .-]+$/u.test(data) ? `[${data}]` : undefined;
    const mend = `Write a list: \`[${typeof data === "string" ? data : "…"}]\`.`;
    return { says, mend, ...(better === undefined ? {} : { better }) };
  }
  const counted = types.includes("integer") && typeof data === "string" ? /^(\d{1,6})\s*[a-z]+$/iu.exec(data) : null;
  if (counted)
    return { says, mend: `Write \`${counted[1]}\`: a number of things has no unit.`, better: counted[1] as string };
  const standIn = types.includes("integer") && typeof data === "number" ? String(Math.max(1, Math.round(data))) : "1";
  return { says, mend: `Write ${typeNames(params.type)} there.`, standIn };
}

const NUMBERS = [
  "none",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];

/** A form a value may have, in words. */
function formWords(schema: Schema): string {
  const wanted = schema.quantity ?? schema.pair;
  if (wanted !== undefined) return kindNames([wanted].flat() as Kind[]);
  if (schema.const !== undefined) return `\`${String(schema.const)}\``;
  const keys = Object.keys(schema.properties ?? {});
  if (keys.length > 0) return `a group with ${keys.map((key) => `\`${key}:\``).join(", ")}`;
  if (schema.description !== undefined) return schema.description.replace(/\.$/u, "");
  if (Array.isArray(schema.enum)) return (schema.enum as unknown[]).map((each) => `\`${String(each)}\``).join(" or ");
  return typeNames(schema.type ?? "text");
}

/** What may stand somewhere as an advice: a sentence as it is, and less than one as what is written. */
const toWrite = (form: string): string => (/^\p{Ll}/u.test(form) ? `Write ${form}.` : form);

function ofKey(path: string, { params, parentSchema, data }: Complaint): Words {
  const key = String(params.additionalProperty);
  const known = Object.keys(parentSchema.properties ?? {});
  const here = { path: join(path, key), atKey: true };
  const bare = key.normalize("NFKC").replace(/[\p{Cf}\s]/gu, "");
  if (bare !== key && known.includes(bare))
    return {
      ...here,
      says: `The key \`${bare}\` has a letter in it that cannot be seen, or a wide one.`,
      mend: `Write \`${bare}\` anew.`,
      better: bare,
      sure: true,
    };
  const says = `The key ${shown(key)} is not known here.`;
  const glued = /^([\w.-]+):(\S.*)$/u.exec(key);
  if (glued && known.includes(glued[1] as string)) {
    const better = `${glued[1]}: ${glued[2]}`;
    return { ...here, says, mend: `Write \`${better}\`, with a blank behind the colon.`, better };
  }
  const spaced = /^([\w.-]+)\s+(\d.*)$/u.exec(key);
  if (spaced && known.includes(spaced[1] as string)) {
    const better = `${spaced[1]}: ${spaced[2]}`;
    return { ...here, says, mend: `Write \`${better}\`, with a colon behind the key.`, better };
  }
  const opposite = oppositeOf(key, known);
  if (opposite !== undefined) {
    const written = (data as Readonly<Record<string, unknown>>)[key];
    const mend = `Write \`${opposite}: -${String(written).replace(/^-/u, "")}\`: what lies the other way is less than nothing.`;
    return { ...here, says, mend, insteadOf: opposite };
  }
  const other = keyFor(key, known);
  if (other !== undefined && !Object.hasOwn(data as object, other))
    return { ...here, says, mend: `Write \`${other}\`.`, better: other };
  const [near, ...offers] = nearOnes(key, known);
  if (near === undefined) return { ...here, says, mend: choices(known, key) };
  // A word of the same letters is the one that was meant; of several that are near none is sure.
  const same = near === key.trim().toLowerCase().replaceAll(/[ _]/gu, "-");
  // One near word that stands beside it already cannot be what was meant.
  const sure = (same || offers.length === 0) && !Object.hasOwn(data as object, near);
  return { ...here, says, mend: `Write \`${near}\`. ${choices(known)}`, better: near, sure, offers };
}

const limitWords = (params: Complaint["params"]): string =>
  `${String(params.comparison).replace(">=", "at least").replace("<=", "at most").replace(">", "above")} ${String(params.limit)}`;

function words(schema: SchemaName, complaint: Complaint, path: string, siblings: readonly string[]): Words | undefined {
  const { keyword, params, data, propertyName } = complaint;
  const parentSchema = complaint.parentSchema as Schema;
  if (keyword === "type" && path === "") return wordsOfWhole(schema, data);
  if (propertyName !== undefined)
    return {
      says: `\`${propertyName.slice(0, 60)}\` cannot be a name here.`,
      mend: parentSchema.description ?? `Write a name of ${TEXT_FORM}.`,
      path: join(path, propertyName),
      atKey: true,
    };
  const brief = path.length > LONGEST_PATH ? `${path.slice(0, LONGEST_PATH)}…` : path;
  const name = parentSchema.title ? `\`${brief}\` (${parentSchema.title})` : `\`${brief || "the front matter"}\``;
  const says = `${name} is ${shown(data)}.`;
  switch (keyword) {
    case "additionalProperties":
      return ofKey(path, complaint);
    case "required": {
      const key = String(params.missingProperty);
      const inner = (parentSchema.properties?.[key] as Schema | undefined)?.title;
      const what = inner === undefined ? `\`${key}:\`` : `\`${key}:\` (${inner})`;
      return {
        says: path === "" ? `The key \`${key}\` is not there.` : `${name} has no key \`${key}\`.`,
        mend: path === "" ? `Write ${what} in the front matter.` : `Write ${what} under \`${brief}\`.`,
      };
    }
    case "enum": {
      const allowed = (params.allowedValues as unknown[]).map(String);
      const word = typeof data === "string" ? data.trim().replaceAll(/[ _]/gu, "-") : "";
      const other = valueFor(word, allowed);
      const [near, ...offers] = other !== undefined ? [other] : word === "" ? [] : nearOnes(word, allowed);
      if (near === undefined) return { says, mend: choices(allowed) };
      const sure = near === word.toLowerCase();
      return { says, mend: `Write \`${near}\`. ${choices(allowed)}`, better: near, sure, offers };
    }
    case "const":
      return { says, mend: `Write \`${String(params.allowedValue)}\`.` };
    case "type":
      return (params.type === "object" && movedOut(path, complaint, siblings)) || ofType(name, path, complaint);
    case "pattern":
      if (parentSchema.form !== undefined) return undefined;
      return { says, mend: toWrite(parentSchema.description ?? TEXT_FORM) };
    case "discriminator": {
      const kind = typeof params.tagValue === "string" ? params.tagValue : undefined;
      const near = kind === undefined ? undefined : (valueFor(kind, KINDS) ?? nearest(kind, KINDS));
      const mend = near === undefined ? choices(KINDS) : `Write \`${near}\`. ${choices(KINDS)}`;
      const kindPath = join(path, "kind");
      return params.tagValue === undefined
        ? { says: `${name} has no kind.`, mend: `Write \`kind:\` under \`${brief}\`. ${choices(KINDS)}` }
        : {
            says: `\`${brief}\` has the kind ${shown(params.tagValue)}.`,
            mend,
            path: kindPath,
            ...(near ? { better: near } : {}),
          };
    }
    case "propertyNames":
    case "oneOf":
      return undefined;
    case "anyOf": {
      const forms = formsOf(schema, complaint);
      const apart = keysApart(forms, data);
      return {
        says: apart ? `${name} has both \`${apart[0]}:\` and \`${apart[1]}:\`.` : says,
        mend: `Write ${forms.map(formWords).join(", or ")}.`,
      };
    }
    case "maximum":
      if (params.limit === 1 && typeof data === "number" && data > 1 && data <= 100)
        return {
          says: `${name} is ${shown(data)}, and is at most 1.`,
          mend: `Write \`${data / 100}\` if per cent was meant.`,
          standIn: String(data / 100),
        };
      return { says, mend: `Write ${typeNames(parentSchema.type)} of ${limitWords(params)}.` };
    case "minimum":
    case "exclusiveMinimum":
      return { says, mend: `Write ${typeNames(parentSchema.type)} of ${limitWords(params)}.` };
    case "minLength":
      return { says: `${name} is empty.`, mend: "Write something there, or take the key out." };
    case "minProperties":
      if (Number(params.limit) > 1 && keysIn(data).length > 0)
        return {
          says: `${name} has ${keysIn(data)
            .map((key) => `\`${key}:\``)
            .join(" and ")} alone.`,
          mend: parentSchema.description ?? "Write more of its keys.",
        };
      return { says: `${name} is empty.`, mend: "Write at least one entry, or take the key out." };
    case "minItems":
    case "maxItems": {
      const count = Array.isArray(data) ? data.length : 0;
      const limit = `${keyword === "minItems" ? "at least" : "at most"} ${String(params.limit)}`;
      return { says: `${name} is a list of ${count}.`, mend: `Write ${limit} entries.` };
    }
    default:
      return { says, mend: parentSchema.description ?? "It cannot stand here; see the description of this key." };
  }
}

const KINDS = [
  "panel",
  "processor",
  "power-cable",
  "data-cable",
  "video-cable",
  "converter",
  "source",
  "bar",
  "rope",
  "attachment",
  "hardware",
  "assembly",
  "spare-part",
];

const SCHEMAS: Partial<Record<SchemaName, Readonly<Record<string, unknown>>>> = {
  build: schemas.buildSchema,
  parts: schemas.partsSchema,
  stock: schemas.stockSchema,
  survey: schemas.surveySchema,
  wish: schemas.wishSchema,
};

/** A form that refers to a definition, with what it refers to. */
function resolved(schema: SchemaName, form: Schema): Schema {
  const reference = typeof form.$ref === "string" ? form.$ref.replace("#/$defs/", "") : undefined;
  const defined = (SCHEMAS[schema]?.$defs as Readonly<Record<string, Schema>> | undefined)?.[reference ?? ""];
  return defined ? { ...defined, ...form } : form;
}

/** The forms a value may have, of a complaint that it has none of them. */
const formsOf = (schema: SchemaName, { parentSchema }: Complaint): readonly Schema[] =>
  (((parentSchema as Schema).anyOf as readonly Schema[] | undefined) ?? []).map((form) => resolved(schema, form));

const keysIn = (data: unknown): readonly string[] =>
  typeof data === "object" && data !== null && !Array.isArray(data) ? Object.keys(data) : [];

const isKeyOf = ({ properties }: Schema, key: string): boolean => Object.hasOwn(properties ?? {}, key);

/** Two keys that are each known in some form and stand together in none. */
function keysApart(forms: readonly Schema[], data: unknown): readonly [string, string] | undefined {
  const known = keysIn(data).filter((key) => forms.some((form) => isKeyOf(form, key)));
  for (const [index, one] of known.entries())
    for (const other of known.slice(index + 1))
      if (!forms.some((form) => isKeyOf(form, one) && isKeyOf(form, other))) return [one, other];
  return undefined;
}

/** Whether a complaint is of a form that a value was not meant to have: of another type, or with fewer of its keys. */
function isOfOtherForm(schema: SchemaName, anyOf: Complaint, complaint: Complaint): boolean {
  const { keyword } = complaint;
  if (keyword === "type") return true;
  if (keyword !== "required" && keyword !== "additionalProperties") return false;
  const keys = keysIn(complaint.data);
  const knownIn = (form: Schema): number => keys.filter((key) => isKeyOf(form, key)).length;
  return knownIn(complaint.parentSchema as Schema) < Math.max(...formsOf(schema, anyOf).map(knownIn));
}

/** Checks placed data against one of the schemas; every complaint becomes a mistake with its place and what may stand there. */
export function validate(schema: SchemaName, placed: Placed): readonly Mistake[] {
  const check = (validators as unknown as Record<SchemaName, Validator>)[schema];
  if (check(placed.data)) return [];
  const mistakes: Mistake[] = [];
  const complaints = check.errors ?? [];
  // A value in none of several forms complains once for each form; the longest path says most.
  const deeper = (pointer: string): boolean => complaints.some((other) => other.instancePath.startsWith(`${pointer}/`));
  // Where none of the forms fits and nothing deeper is wrong, it is told once, with all forms.
  const ofForms = new Set(
    complaints.flatMap(({ keyword, instancePath }) =>
      keyword === "anyOf" && !deeper(instancePath) ? [instancePath] : [],
    ),
  );
  const made = complaints.flatMap((complaint) => {
    if (complaint.keyword === "anyOf" && deeper(complaint.instancePath)) return [];
    if (complaint.keyword !== "anyOf" && ofForms.has(complaint.instancePath)) return [];
    const anyOf = complaints.find((each) => each.keyword === "anyOf" && each.instancePath === complaint.instancePath);
    if (anyOf && anyOf !== complaint && isOfOtherForm(schema, anyOf, complaint)) return [];
    const path = dotted(complaint.instancePath, placed.data);
    const told = words(schema, complaint, path, siblingsOf(placed, path));
    return told ? [{ complaint, path, told }] : [];
  });
  // A key that is misspelt is told where it stands, and not once more as the one that is not there.
  const misspelt = new Set(
    made.flatMap(({ complaint, path, told }) =>
      complaint.keyword === "additionalProperties"
        ? [told.better, told.insteadOf].flatMap((key) =>
            key === undefined ? [] : [join(path, key.replace(/:.*$/su, ""))],
          )
        : [],
    ),
  );
  for (const { complaint, path, told } of made) {
    // What is said to be missing by its name is not told once more as too little.
    const isTooFew = complaint.keyword === "minProperties" && Number(complaint.params.limit) > 1;
    if (isTooFew && made.some((other) => other.path === path && other.complaint.keyword === "required")) continue;
    if (complaint.keyword === "required" && misspelt.has(join(path, String(complaint.params.missingProperty))))
      continue;
    const where = told.path ?? path;
    const place: Place =
      (told.atKey ? placed.keys.get(where) : undefined) ?? placed.places.get(where) ?? placed.keys.get(where) ?? START;
    if (mistakes.some((other) => other.path === where && other.says === told.says)) continue;
    const edit = told.better === undefined ? {} : { edit: { place, text: told.better, sure: told.sure === true } };
    const others = told.offers?.length ? { offers: told.offers.map((text) => ({ place, text })) } : {};
    const other = told.standIn === undefined ? {} : { standIn: { place, text: told.standIn } };
    const { says, mend } = told;
    const key = complaint.keyword === "additionalProperties" ? { unknownKey: true as const } : {};
    mistakes.push({
      rule: "document.front-matter",
      path: where,
      place,
      says,
      mend,
      ...edit,
      ...others,
      ...other,
      ...key,
    });
  }
  return mistakes;
}

/** Names of what stands beside the value at a path and is a group of keys. */
function siblingsOf({ data }: Placed, path: string): readonly string[] {
  const group = path.split(".").slice(0, -1);
  const here = group.reduce<unknown>((each, key) => (each as Record<string, unknown> | undefined)?.[key], data);
  return here !== null && typeof here === "object"
    ? Object.entries(here).flatMap(([key, value]) => (value !== null && typeof value === "object" ? [key] : []))
    : [];
}
