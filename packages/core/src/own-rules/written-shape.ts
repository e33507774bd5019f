import type { Kind } from "@plumbmark/calc";
import { buildSchema } from "../generated/schemas.js";
import { either, type SchemaShape, schemaShape, type Type } from "./shape.js";

type Schema = Readonly<Record<string, unknown>>;

const resolved = (schema: Schema): Schema => {
  if (typeof schema.$ref !== "string") return schema;
  const { $ref, ...own } = schema;
  const defs = buildSchema.$defs as Record<string, Schema>;
  return { ...resolved(defs[($ref as string).replace("#/$defs/", "")] ?? {}), ...own };
};

const kindsOf = (written: unknown): readonly Kind[] => (written === undefined ? [] : ([written].flat() as Kind[]));

const wordsOf = ({ enum: listed, const: only }: Schema): readonly string[] | undefined => {
  const words = (listed as unknown[] | undefined) ?? (only === undefined ? undefined : [only]);
  return words?.every((each) => typeof each === "string") ? (words as string[]) : undefined;
};

/** A leaf of the schema: quantities are compared as numbers, pairs and ranges as two of them. */
function leaf(schema: Schema): SchemaShape | undefined {
  if (schema.quantity !== undefined) return schemaShape(["number"], { kinds: kindsOf(schema.quantity) });
  const halves = schema.pair ?? schema.range;
  if (halves !== undefined)
    return schemaShape(["array"], { items: schemaShape(["number"], { kinds: kindsOf(halves) }) });
  const words = wordsOf(schema);
  return words ? schemaShape(["string"], { words }) : undefined;
}

/** What an author may write, as the schema of build documents has it. */
export function writtenShape(given: Schema = buildSchema): SchemaShape {
  const schema = resolved(given);
  const forms = [...((schema.anyOf as Schema[] | undefined) ?? []), ...((schema.oneOf as Schema[] | undefined) ?? [])];
  const [first, ...rest] = forms.map(writtenShape);
  if (first) return rest.reduce(either, first);
  const properties = Object.entries((schema.properties as Record<string, Schema> | undefined) ?? {});
  const others = schema.additionalProperties;
  const below = {
    properties: new Map(properties.map(([key, each]) => [key, writtenShape(each)])),
    ...(others && typeof others === "object" ? { others: writtenShape(others as Schema) } : {}),
    ...(schema.items ? { items: writtenShape(schema.items as Schema) } : {}),
  };
  return leaf(schema) ?? schemaShape([schema.type ?? []].flat() as Type[], below);
}
