/** A piece of a JSON Schema, with our own words in it: `quantity`, `pair`, `found`, `guess` … */
export type SchemaPiece = Readonly<Record<string, unknown>>;

/** One key that may be written. */
export interface Field {
  /** `power.circuits.*.breaker`: `*` stands for a name of the author's own, or for an item of a list. */
  readonly path: string;
  /** The same as readers are shown it: `power.circuits.NAME.breaker`, with `ITEM` for an item of a list. */
  readonly shown: string;
  readonly key: string;
  readonly title: string;
  readonly description?: string;
  /** Every form its value may have. */
  readonly forms: readonly SchemaPiece[];
  readonly required: boolean;
  /** Where a person finds it, as the schema has it. */
  readonly found?: string;
  readonly guess: boolean;
  readonly plausible?: readonly [string, string];
  /** What counts when it is left out. */
  readonly default?: unknown;
  readonly deprecated: boolean;
}

/** Keys that stand beside one another, and where. */
export interface Group {
  readonly path: string;
  readonly shown: string;
  readonly title: string;
  readonly description?: string;
  readonly fields: readonly Field[];
}

export const isSchema = (value: unknown): value is SchemaPiece =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

const text = (value: unknown): string | undefined => (typeof value === "string" ? value : undefined);

/** Follows a reference; what stands beside it counts more than what it leads to. */
export function followed(root: SchemaPiece, schema: SchemaPiece): SchemaPiece {
  const { $ref, ...own } = schema;
  if (typeof $ref !== "string") return schema;
  const target = (root.$defs as Readonly<Record<string, SchemaPiece>>)[$ref.replace("#/$defs/", "")] ?? {};
  return { ...followed(root, target), ...own };
}

/** The forms a value may have, without those that only gather others. */
export function formsOf(root: SchemaPiece, schema: SchemaPiece): readonly SchemaPiece[] {
  const here = followed(root, schema);
  const inner = [...listOf(here.anyOf), ...listOf(here.oneOf)].filter(isSchema);
  return inner.length === 0 ? [here] : inner.flatMap((each) => formsOf(root, each));
}

const joined = (path: string, key: string): string => (path === "" ? key : `${path}.${key}`);

/** Where something stands, for machines and for readers. */
interface Way {
  readonly path: string;
  readonly shown: string;
}

const step = ({ path, shown }: Way, key: string, word = key): Way => ({
  path: joined(path, key),
  shown: joined(shown, word),
});

function fieldAt(root: SchemaPiece, schema: SchemaPiece, { path, shown }: Way, required: boolean): Field {
  const here = followed(root, schema);
  const forms = formsOf(root, schema);
  const from = (key: string): unknown => here[key] ?? forms.find((form) => form[key] !== undefined)?.[key];
  const [description, found] = [text(here.description), text(from("found"))];
  const plausible = from("plausible") as readonly [string, string] | undefined;
  return {
    ...{ path, shown, key: path.slice(path.lastIndexOf(".") + 1), forms, required },
    title: text(here.title) ?? text(from("title")) ?? "",
    guess: forms.some(({ guess }) => guess === true),
    deprecated: here.deprecated === true,
    ...(description === undefined ? {} : { description }),
    ...(found === undefined ? {} : { found }),
    ...(plausible === undefined ? {} : { plausible }),
    ...(here.default === undefined ? {} : { default: here.default }),
  };
}

function* below(root: SchemaPiece, schema: SchemaPiece, at: Way, seen: readonly string[]): Iterable<Group> {
  const ref = text(schema.$ref);
  if (ref !== undefined && seen.includes(ref)) return;
  const way = ref === undefined ? seen : [...seen, ref];
  const here = followed(root, schema);
  const forms = formsOf(root, schema);
  const written = forms.flatMap((form) => {
    const required = listOf(form.required);
    return Object.entries((form.properties ?? {}) as Readonly<Record<string, SchemaPiece>>)
      .filter(([, value]) => isSchema(value))
      .map(([key, value]) => ({ key, value, required: required.includes(key) }));
  });
  // A key that several forms have is told once.
  const properties = written.filter(({ key }, index) => written.findIndex((each) => each.key === key) === index);
  const fields = properties.map(({ key, value, required }) => fieldAt(root, value, step(at, key), required));
  const description = text(here.description);
  if (fields.length > 0)
    yield { ...at, title: text(here.title) ?? "", fields, ...(description === undefined ? {} : { description }) };
  for (const { key, value } of properties) yield* below(root, value, step(at, key), way);
  for (const { additionalProperties, items } of forms) {
    const titled = (other: SchemaPiece): SchemaPiece => ({
      ...(here.title === undefined ? {} : { title: here.title }),
      ...other,
    });
    if (isSchema(additionalProperties)) yield* below(root, titled(additionalProperties), step(at, "*", "NAME"), way);
    if (isSchema(items)) yield* below(root, titled(items), step(at, "*", "ITEM"), way);
  }
}

/** Every key a schema knows, in groups of those that stand beside one another: outer ones first. */
export const groupsOf = (root: SchemaPiece, schema: SchemaPiece = root): readonly Group[] => [
  ...below(root, schema, { path: "", shown: "" }, []),
];
