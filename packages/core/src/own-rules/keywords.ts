/** Keywords of JSON Schema 2020-12 by what stands under them; `$ref` and its kin are left out: each schema is whole. */
export const MAPS = ["properties", "patternProperties", "dependentSchemas"] as const;
export const LISTS = ["allOf", "anyOf", "oneOf", "prefixItems"] as const;
export const SINGLES = [
  "not",
  "if",
  "then",
  "else",
  "additionalProperties",
  "items",
  "contains",
  "propertyNames",
] as const;
export const LIMITS = ["minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum"] as const;
export const VALUES = ["const", "enum"] as const;
const PLAIN = ["type", "required", "dependentRequired", "multipleOf", "pattern", "title", "description", "$comment"];
const SIZES = ["minLength", "maxLength", "minItems", "maxItems", "uniqueItems", "minContains", "maxContains"];
const COUNTS = ["minProperties", "maxProperties"];

export const KEYWORDS: readonly string[] = [
  ...MAPS,
  ...LISTS,
  ...SINGLES,
  ...LIMITS,
  ...VALUES,
  ...PLAIN,
  ...SIZES,
  ...COUNTS,
];

export type Limit = (typeof LIMITS)[number];

export const isLimit = (key: string): key is Limit => (LIMITS as readonly string[]).includes(key);
export const isOneOf = (keys: readonly string[], key: string): boolean => keys.includes(key);
