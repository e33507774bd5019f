type Schema = Readonly<Record<string, unknown>>;

function resolved(root: Schema, schema: Schema): Schema {
  if (typeof schema.$ref !== "string") return schema;
  const { $ref, ...own } = schema;
  const target = (root.$defs as Readonly<Record<string, Schema>>)[String($ref).replace("#/$defs/", "")] ?? {};
  return { ...resolved(root, target), ...own };
}

/** Forms a value may have: each of several, and what they stand in. */
function formsOf(root: Schema, given: Schema): readonly Schema[] {
  const schema = resolved(root, given);
  const inner = [...((schema.anyOf as Schema[]) ?? []), ...((schema.oneOf as Schema[]) ?? [])];
  return [schema, ...inner.flatMap((each) => formsOf(root, { title: schema.title, ...each }))];
}

function under(root: Schema, form: Schema, left: readonly string[], exact: boolean): readonly Schema[] {
  const properties = (form.properties ?? {}) as Readonly<Record<string, Schema>>;
  const [key = "", ...rest] = left;
  if (Object.hasOwn(properties, key)) return fieldsFrom(root, properties[key] as Schema, rest, exact);
  if (form.items && /^\d+$/u.test(key)) return fieldsFrom(root, form.items as Schema, rest, exact);
  const others = form.additionalProperties;
  if (others === null || typeof others !== "object") return [];
  if (exact) return fieldsFrom(root, others as Schema, rest, exact);
  // A name may have points in it, such as that of a part.
  return left.flatMap((_, index) => fieldsFrom(root, others as Schema, left.slice(index + 1)));
}

/** @param exact whether each step is one key; else a path was cut at its points, and keys may have some */
const fieldsFrom = (root: Schema, schema: Schema, left: readonly string[], exact = false): readonly Schema[] =>
  formsOf(root, schema).flatMap((form) => (left.length === 0 ? [form] : under(root, form, left, exact)));

/** What the schema says of the field behind some keys, in every form it may have there. */
export const fieldsUnder = (root: Schema, keys: readonly string[]): readonly Schema[] =>
  fieldsFrom(root, root, keys, true);

/** Paths are asked for over and over; names in them are those of documents, so what is remembered has an end. */
const MOST = 5000;
const known = new WeakMap<Schema, Map<string, readonly Schema[]>>();

/** What the schema says of the field at a dotted path, in every form it may have there; none where it refuses the path. */
export function fieldsAt(root: Schema, path: string): readonly Schema[] {
  const paths = known.get(root) ?? new Map<string, readonly Schema[]>();
  known.set(root, paths);
  const found = paths.get(path) ?? fieldsFrom(root, root, path.split("."));
  if (paths.size >= MOST) paths.clear();
  paths.set(path, found);
  return found;
}
