import type { Schema } from "./read-schema.js";

/** Keywords that are about names a schema does not spell out. */
const UNNAMED =
  /^(?:additionalProperties|patternProperties|propertyNames|(?:min|max)Properties|unevaluatedProperties|dependent\w+|const|enum)$/u;

const keysOf = (value: unknown): readonly string[] => {
  if (Array.isArray(value)) return value.flatMap(keysOf);
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, each]) => [key, ...keysOf(each)]);
};

/**
 * First words of the paths that schemas look at; all, when one looks at names it does not spell out. A name that is
 * only a keyword, or stands deeper, is one too many, which costs time and changes nothing.
 */
export function wordsOf(schemas: readonly (Schema | undefined)[]): readonly string[] | "all" {
  const names = [...new Set(schemas.flatMap(keysOf))];
  if (names.some((name) => UNNAMED.test(name))) return "all";
  const required = schemas.flatMap(requiredOf);
  return [...new Set([...names, ...required])].sort();
}

const requiredOf = (value: unknown): readonly string[] => {
  if (Array.isArray(value)) return value.flatMap(requiredOf);
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, each]) =>
    key === "required" && Array.isArray(each) ? each.map(String) : requiredOf(each),
  );
};
