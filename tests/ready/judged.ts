import { type InspectionRecord, schemas } from "@plumbmark/core";

type Schema = Readonly<Record<string, unknown>>;

const isSchema = (value: unknown): value is Schema =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * Every property of a schema by its path: `faces.*.columns`. Names of the author's own are `*`, and so are items of a
 * list; a definition is followed once on each way, so that one that holds itself has an end.
 */
export function propertiesOf(schema: Schema): readonly string[] {
  const defs = (schema.$defs ?? {}) as Readonly<Record<string, Schema>>;
  const found = new Set<string>();
  const join = (path: string, key: string): string => (path === "" ? key : `${path}.${key}`);
  const walk = (here: unknown, path: string, seen: readonly string[]): void => {
    if (!isSchema(here)) return;
    const ref = typeof here.$ref === "string" ? here.$ref.replace("#/$defs/", "") : undefined;
    if (ref !== undefined && !seen.includes(ref)) walk(defs[ref], path, [...seen, ref]);
    for (const [key, value] of Object.entries((here.properties ?? {}) as Schema)) {
      found.add(join(path, key));
      walk(value, join(path, key), seen);
    }
    for (const key of ["additionalProperties", "items"])
      if (isSchema(here[key])) walk(here[key], join(path, "*"), seen);
    for (const key of ["anyOf", "oneOf", "allOf"])
      for (const each of (here[key] ?? []) as readonly unknown[]) walk(each, path, seen);
  };
  walk(schema, "", []);
  return [...found];
}

export const buildProperties = (): readonly string[] => propertiesOf(schemas.buildSchema);

/** What an inspection came to, for comparing: every check with its outcome, its figures and what it says. */
export const gist = (checks: InspectionRecord["documents"][number]["checks"]): string =>
  JSON.stringify(
    checks
      .filter(({ rule, at }) => rule !== "document.sign-off" || at.path !== "approved.code")
      .map(({ rule, outcome, at, measured, allowed, says }) => [rule, outcome, at.path, measured, allowed, says])
      .map((each) => JSON.stringify(each))
      .sort(),
  );
