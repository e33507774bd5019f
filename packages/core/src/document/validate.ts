import * as validators from "../generated/validators.js";
import type { Mistake } from "./mistake.js";
import { choices } from "./nearest.js";
import { type Place, START } from "./place.js";
import { shown } from "./shown.js";
import { join, type Placed } from "./yaml.js";

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

export type SchemaName = "build" | "parts" | "stock" | "houseStandard" | "record";

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
  stock: ["The stock list", "It is a group of keys: under `lots:` stands one for each lot."],
  houseStandard: ["The house standard", "It is a group of keys: under `house-standard:` stands its name."],
  record: ["The record", "It is what `plumbmark inspect --as json` prints."],
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
}

function words(schema: SchemaName, complaint: Complaint, path: string): Words | undefined {
  const { keyword, params, data, parentSchema, propertyName } = complaint;
  if (keyword === "type" && path === "") return wordsOfWhole(schema, data);
  if (propertyName !== undefined) {
    const mend = parentSchema.description ?? "It has to be letters, digits, hyphens and underscores.";
    return {
      says: `\`${propertyName.slice(0, 60)}\` cannot be a name here.`,
      mend,
      path: join(path, propertyName),
      atKey: true,
    };
  }
  const brief = path.length > LONGEST_PATH ? `${path.slice(0, LONGEST_PATH)}…` : path;
  const name = parentSchema.title ? `\`${brief}\` (${parentSchema.title})` : `\`${brief || "the front matter"}\``;
  const known = Object.keys(parentSchema.properties ?? {});
  switch (keyword) {
    case "additionalProperties": {
      const key = String(params.additionalProperty);
      return {
        says: `The key ${shown(key)} is not known here.`,
        mend: choices(known, key),
        path: join(path, key),
        atKey: true,
      };
    }
    case "required":
      return {
        says: `${path === "" ? "The key" : `${name} has no key`} \`${String(params.missingProperty)}\`${path === "" ? " is not there." : "."}`,
        mend: `Write \`${String(params.missingProperty)}:\` there.`,
      };
    case "enum": {
      const allowed = (params.allowedValues as unknown[]).map(String);
      return {
        says: `${name} is ${shown(data)}.`,
        mend: choices(allowed, typeof data === "string" ? data : undefined),
      };
    }
    case "const":
      return { says: `${name} is ${shown(data)}.`, mend: `It has to be \`${String(params.allowedValue)}\`.` };
    case "type":
      return { says: `${name} is ${shown(data)}.`, mend: `It has to be ${typeNames(params.type)}.` };
    case "pattern":
      return {
        says: `${name} is ${shown(data)}.`,
        mend:
          parentSchema.description ??
          "It has to be letters, digits, hyphens and underscores, or the form its documentation gives.",
      };
    case "discriminator":
      return {
        says: `${name} has the kind ${shown(params.tagValue)}.`,
        mend: `Write one of the known kinds. ${choices(["panel", "processor", "power-cable", "data-cable", "video-cable", "converter", "source", "bar", "rope", "hardware", "spare-part"], typeof params.tagValue === "string" ? params.tagValue : undefined)}`,
      };
    case "propertyNames":
    case "anyOf":
    case "oneOf":
      return keyword === "anyOf"
        ? {
            says: `${name} is ${shown(data)}, in none of the forms it may have.`,
            mend: "See the forms in the documentation of this key.",
          }
        : undefined;
    case "minimum":
    case "maximum":
    case "exclusiveMinimum":
      return {
        says: `${name} is ${shown(data)}.`,
        mend: `It has to be ${String(params.comparison).replace(">=", "at least").replace("<=", "at most").replace(">", "above")} ${String(params.limit)}.`,
      };
    case "minLength":
      return { says: `${name} is empty.`, mend: "Write something there, or take the key out." };
    default:
      return { says: `${name} is ${shown(data)}.`, mend: `It does not meet \`${keyword}\` of the schema.` };
  }
}

/** Checks placed data against one of the schemas; every complaint becomes a mistake with its place and what may stand there. */
export function validate(schema: SchemaName, placed: Placed): readonly Mistake[] {
  const check = (validators as unknown as Record<SchemaName, Validator>)[schema];
  if (check(placed.data)) return [];
  const mistakes: Mistake[] = [];
  const complaints = check.errors ?? [];
  // A value in none of several forms complains once for each form; the longest path says most.
  const deeper = (pointer: string): boolean => complaints.some((other) => other.instancePath.startsWith(`${pointer}/`));
  for (const complaint of complaints) {
    if (complaint.keyword === "anyOf" && deeper(complaint.instancePath)) continue;
    const path = dotted(complaint.instancePath, placed.data);
    const made = words(schema, complaint, path);
    if (!made) continue;
    const where = made.path ?? path;
    const place: Place =
      (made.atKey ? placed.keys.get(where) : undefined) ?? placed.places.get(where) ?? placed.keys.get(where) ?? START;
    if (!mistakes.some((other) => other.path === where && other.says === made.says))
      mistakes.push({ rule: "document.front-matter", path: where, place, says: made.says, mend: made.mend });
  }
  return mistakes;
}
