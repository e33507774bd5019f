// Watches the rules read: which field of a document, a survey or a part each of them looks at while it judges.

const isObject = (value) => typeof value === "object" && value !== null;

const resolved = (root, schema) => {
  if (typeof schema.$ref !== "string") return schema;
  const { $ref, ...own } = schema;
  return { ...resolved(root, root.$defs[$ref.replace("#/$defs/", "")] ?? {}), ...own };
};

const formsOf = (root, schema) => {
  const here = resolved(root, schema);
  return [here, ...[...(here.anyOf ?? []), ...(here.oneOf ?? [])].flatMap((each) => formsOf(root, each))];
};

/**
 * The fields at the keys of a path, each with its general path: `*` in place of a name of the author's own.
 * @param split whether a name may have come in several keys, since it has points in it, as that of a part
 */
function fieldsAlong(root, schema, keys, split, path = []) {
  if (keys.length === 0) return [path.join(".")];
  const forms = formsOf(root, schema);
  const [key, ...rest] = keys;
  const named = forms.flatMap(({ properties = {} }) =>
    Object.hasOwn(properties, key) ? fieldsAlong(root, properties[key], rest, split, [...path, key]) : [],
  );
  if (named.length > 0) return named;
  const others = forms.flatMap(({ items, additionalProperties }) => [items, additionalProperties].filter(isObject));
  for (let taken = 1; others.length > 0 && taken <= (split ? keys.length : 1); taken += 1) {
    const found = others.flatMap((other) => fieldsAlong(root, other, keys.slice(taken), split, [...path, "*"]));
    if (found.length > 0) return found;
  }
  // Halves of a pair and ends of a range belong to the field they are written in.
  return keys.every((each) => /^\d+$/u.test(each)) ? [path.join(".")] : [];
}

/** @param note is told of every key that is looked at, by the keys that lead to it */
function watchedData(data, keys, note) {
  if (!isObject(data)) return data;
  return new Proxy(data, {
    get(target, key) {
      const value = Reflect.get(target, key);
      if (typeof key === "symbol" || !Object.hasOwn(target, key) || key === "length") return value;
      const way = [...keys, Array.isArray(target) ? String(Number(key) + 1) : key];
      note(way);
      // What cannot change has to be given as it is.
      return Object.getOwnPropertyDescriptor(target, key)?.configurable === false
        ? value
        : watchedData(value, way, note);
    },
  });
}

class WatchedMap extends Map {
  constructor(map, note) {
    super(map);
    this.note = note;
  }
  get(key) {
    this.note?.(key.split("."));
    return super.get(key);
  }
}

const sorted = (map) =>
  Object.fromEntries(
    [...map].map(([path, of]) => [path, [...of].sort()]).sort(([one], [other]) => (one < other ? -1 : 1)),
  );

/** In place of a rule: read when the model of a build is made, before any rule asks. */
const MADE = "model";

/** What nobody reads but whoever makes a model. */
const FIRST_READ = "faces.*.columns";

/**
 * Watches rules read while they judge: of build documents, of what a survey states for them, and of parts by kind and
 * key, such as `panel.mass`.
 * @param modules the engine, with its reader of documents
 */
export function watchReadings({ Reader, schemas }) {
  const found = { build: new Map(), survey: new Map(), parts: new Map() };
  let reading;
  const add = (of, path) => found[of].set(path, (found[of].get(path) ?? new Set()).add(reading));
  const general = new Map();
  const note = (of, root, schema, path, lead = "") => {
    if (reading === undefined || schema === undefined) return;
    const key = `${of} ${lead}${path}`;
    if (!general.has(key)) general.set(key, new Set(fieldsAlong(root, schema, path.split("."), true)));
    for (const each of general.get(key)) add(of, lead + each);
  };
  const noteBuild = (reader, path) => {
    if (reading === undefined) return;
    note("build", schemas.buildSchema, schemas.buildSchema, path);
    const stated = reader.venue?.statedAt(path);
    if (stated) note("survey", schemas.surveySchema, schemas.surveySchema, stated.path);
  };
  const own = Object.fromEntries(["data", "value", "optional"].map((name) => [name, Reader.prototype[name]]));
  Reader.prototype.data = function data(path) {
    noteBuild(this, path);
    const data = own.data.call(this, path);
    if (reading === undefined) return data;
    return watchedData(data, path.split("."), (keys) => noteBuild(this, keys.join(".")));
  };
  for (const name of ["value", "optional"])
    Reader.prototype[name] = function watched(path, ...rest) {
      noteBuild(this, path);
      return own[name].call(this, path, ...rest);
    };
  /** Whatever is read meanwhile is noted for a rule. */
  const noting = (name, work) => {
    reading = name;
    try {
      return work();
    } finally {
      reading = undefined;
    }
  };
  /** A model remembers what it has read: one that nobody has asked yet reads everything anew. */
  const afresh = (context) => {
    const { build } = context;
    if (build === undefined) return context;
    const { reader } = build;
    if (!(reader.quantities instanceof WatchedMap))
      reader.quantities = new WatchedMap(reader.quantities, (keys) => noteBuild(reader, keys.join(".")));
    const Build = build.constructor;
    return { ...context, build: noting(MADE, () => new Build(reader, build.markdown, build.context)) };
  };
  return {
    /** The same rule; while it is asked, what is read is noted. */
    watched: (rule) => ({
      ...rule,
      *checks(context) {
        const seen = afresh(context);
        noting(rule.id, () => Array.from(rule.checks(seen)));
        yield* rule.checks(context);
      },
    }),
    watchParts({ catalogue }) {
      for (const part of catalogue.parts.values()) {
        const notePart = (keys) => {
          const schema = schemas.partsSchema.$defs[part.kind];
          note("parts", schemas.partsSchema, schema, keys.join("."), `${part.kind}.`);
        };
        part.data = watchedData(part.data, [], notePart);
        part.quantities = new WatchedMap(part.quantities, notePart);
      }
    },
    /** Ids of rules by field; nothing is watched any more. */
    end() {
      Object.assign(Reader.prototype, own);
      // Who reads that makes models of other builds, and with them reads everything: what is of its own topic counts.
      const others = [...(found.build.get(FIRST_READ) ?? [])].filter((id) => id !== MADE);
      for (const map of Object.values(found))
        for (const [path, of] of map)
          for (const id of others) if (id.split(".")[0] !== path.split(".")[0]) of.delete(id);
      return Object.fromEntries(Object.entries(found).map(([of, map]) => [of, sorted(map)]));
    },
  };
}

/** Longer than that shows nothing better. */
const LONGEST = 64;

/** A text in a list or a group that would be read as something else there stands in quotes. */
const inFlow = (data) =>
  typeof data === "string" && /[,[\]{}]|: | #|^['"&*!|>%@`]/u.test(data) ? `"${data}"` : flow(data);

const flow = (data) =>
  Array.isArray(data)
    ? `[${data.map(inFlow).join(", ")}]`
    : isObject(data)
      ? `{${Object.entries(data)
          .map(([key, value]) => `${key}: ${inFlow(value)}`)
          .join(", ")}}`
      : String(data);

/** A value of each field by its general path, as it is written in the first of some data that has a short one. */
export function valuesIn(root, schema, all) {
  const found = {};
  const walk = (data, keys) => {
    if (keys.length > 0 && data !== null) {
      const text = flow(data);
      for (const path of new Set(fieldsAlong(root, schema, keys, false)))
        if (text.length <= LONGEST) found[path] ??= text;
    }
    if (Array.isArray(data)) data.forEach((each, index) => void walk(each, [...keys, String(index + 1)]));
    else if (isObject(data)) for (const [key, value] of Object.entries(data)) walk(value, [...keys, key]);
  };
  for (const data of all) walk(data, []);
  return found;
}
