import type { Kind } from "@plumbmark/calc";

/** The types JSON Schema tells apart. */
export type Type = "object" | "array" | "string" | "number" | "integer" | "boolean";

/** What may stand at a place of the computed build: its types, kinds of quantity, and what lies below it. */
export interface SchemaShape {
  readonly types: ReadonlySet<Type>;
  /** Kinds of quantity; a number without a unit has none. */
  readonly kinds: readonly Kind[];
  /** Texts it may be, where they are listed. */
  readonly words?: readonly string[];
  readonly properties: ReadonlyMap<string, SchemaShape>;
  /** What stands under names of the author's own. */
  readonly others?: SchemaShape;
  readonly items?: SchemaShape;
}

export const schemaShape = (types: readonly Type[], more: Partial<SchemaShape> = {}): SchemaShape => ({
  types: new Set(types),
  kinds: [],
  properties: new Map(),
  ...more,
});

const merged = (one: SchemaShape | undefined, other: SchemaShape | undefined): SchemaShape | undefined =>
  one && other ? either(one, other) : (one ?? other);

function mergedProperties(one: SchemaShape, other: SchemaShape): ReadonlyMap<string, SchemaShape> {
  const keys = new Set([...one.properties.keys(), ...other.properties.keys()]);
  return new Map(
    [...keys].map((key) => [key, merged(one.properties.get(key), other.properties.get(key)) as SchemaShape]),
  );
}

/** What is of the one shape or of the other. */
export function either(one: SchemaShape, other: SchemaShape): SchemaShape {
  const [others, items] = [merged(one.others, other.others), merged(one.items, other.items)];
  return {
    types: new Set([...one.types, ...other.types]),
    kinds: [...new Set([...one.kinds, ...other.kinds])],
    ...(one.words || other.words ? { words: [...(one.words ?? []), ...(other.words ?? [])] } : {}),
    properties: mergedProperties(one, other),
    ...(others ? { others } : {}),
    ...(items ? { items } : {}),
  };
}

/** A load is computed as a mass, whichever it is written as: a limit may be a force where the value may be written as one. */
const withForce = (written: SchemaShape, computed: SchemaShape): SchemaShape =>
  computed.kinds.includes("mass") && written.kinds.includes("force")
    ? { ...computed, kinds: [...computed.kinds, "force"] }
    : computed;

/** What is computed stands in the place of what is written under the same name. */
export function overlaidShape(written: SchemaShape, computed: SchemaShape): SchemaShape {
  if (computed.properties.size === 0 && !computed.others && !computed.items) return withForce(written, computed);
  const keys = new Set([...written.properties.keys(), ...computed.properties.keys()]);
  const at = (key: string): SchemaShape => {
    const [below, above] = [written.properties.get(key), computed.properties.get(key)];
    return below && above ? overlaidShape(below, above) : ((above ?? below) as SchemaShape);
  };
  const others =
    written.others && computed.others
      ? overlaidShape(written.others, computed.others)
      : (computed.others ?? written.others);
  const items =
    written.items && computed.items ? overlaidShape(written.items, computed.items) : (computed.items ?? written.items);
  return {
    ...written,
    types: new Set([...written.types, ...computed.types]),
    properties: new Map([...keys].map((key) => [key, at(key)])),
    ...(others ? { others } : {}),
    ...(items ? { items } : {}),
  };
}

/** The shape at a path; a name of the author's own is written as any name. */
export const shapeAt = (whole: SchemaShape, path: readonly string[]): SchemaShape | undefined =>
  path.reduce<SchemaShape | undefined>((here, key) => here?.properties.get(key) ?? here?.others ?? here?.items, whole);
