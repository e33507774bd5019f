import { fieldsAt, readHouseStandard, schemas } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { starter } from "../documents/repository.js";
import { rulesChanged, written } from "../ready/corpus.js";
import { propertiesOf } from "../ready/judged.js";
import { effort } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";
import { starterPages } from "../site/starter-files.js";

const pages = starterPages();
const page = (path: string): string => pages.get(path) ?? "";

/** The row of each key on a page of the reference, by its anchor. */
const rowsOf = (name: string): ReadonlyMap<string, string> =>
  new Map(
    [...page(`reference/${name}.html`).matchAll(/<tr id="Key-([^"]+)">([\s\S]*?)<\/tr>/gu)].map(
      ([, id = "", row = ""]) => [id, row],
    ),
  );

/** They look at which panels a run, a chain or a bar has: that is read when the model is made, before any rule asks. */
const OF_CELLS = ["data.fed-once", "data.neighbours", "power.fed-once", "rigging.bar-covers"];

const RULE = /rules\/([a-z.-]+)\.html/gu;

const shown = (path: string): string => path.replaceAll("*", "NAME").replaceAll(".", "_");

const FILES: readonly (readonly [string, Readonly<Record<string, unknown>>])[] = [
  ["build", schemas.buildSchema],
  ["survey", schemas.surveySchema],
  ["stock", schemas.stockSchema],
  ["house-standard", schemas.houseStandardSchema],
  ["wish", schemas.wishSchema],
];

describe("the reference has every key", () => {
  it.each(FILES)("of %s", (name, schema) => {
    const rows = rowsOf(name);
    for (const path of notEmpty(propertiesOf(schema))) expect([...rows.keys()]).toContain(shown(path));
  });

  it("of every kind of part", () => {
    const rows = rowsOf("parts");
    const defs = schemas.partsSchema.$defs as Readonly<Record<string, Record<string, unknown>>>;
    const kinds = (schemas.partsSchema.additionalProperties as { oneOf: { $ref: string }[] }).oneOf;
    for (const { $ref } of notEmpty(kinds)) {
      const kind = $ref.replace("#/$defs/", "");
      for (const path of notEmpty(propertiesOf({ ...defs[kind], $defs: defs })))
        expect([...rows.keys()]).toContain(`${kind}_${shown(path)}`);
    }
  });

  it("with what it is and how it is written", () => {
    for (const [name] of FILES)
      for (const [id, row] of notEmpty([...rowsOf(name)])) {
        const [what = "", how = ""] = [...row.matchAll(/<td[^>]*>([\s\S]*?)<\/td>/gu)].map(([, cell = ""]) => cell);
        expect(what.replace(/<[^>]+>/gu, "").trim(), `${name}: ${id}`).not.toBe("");
        expect(how.replace(/<[^>]+>/gu, "").trim(), `${name}: ${id}`).not.toBe("");
      }
  });
});

/** Whether there is a key without a value anywhere: what `{at: 0,0}` is read as. */
const hasNothing = (data: unknown): boolean =>
  data === null || (typeof data === "object" && Object.values(data as object).some(hasNothing));

it("shows values that can be copied: each reads under a key as what it was", () => {
  const shownValues = FILES.flatMap(([name]) =>
    [...rowsOf(name)].flatMap(([id, row]) =>
      [...row.matchAll(/Such as (?:<[^>]+>)*<code>([\s\S]*?)<\/code>/gu)].map(([, value = ""]) => ({
        id: `${name}: ${id}`,
        value: value
          .replace(/<[^>]+>/gu, "")
          .replaceAll(/&(lt|gt|amp|quot|#39|#34|#x27);/gu, (_, each: string) => UNESCAPED[each] ?? "?"),
      })),
    ),
  );
  expect(shownValues.length).toBeGreaterThan(100);
  for (const { id, value } of shownValues) expect(hasNothing(parse(`key: ${value}`)), `${id}: ${value}`).toBe(false);
});

const UNESCAPED: Readonly<Record<string, string>> = {
  lt: "<",
  gt: ">",
  amp: "&",
  quot: '"',
  "#39": "'",
  "#34": '"',
  "#x27": "'",
};

describe("the checks that read a key", () => {
  const rows = rowsOf("build");
  const readBy = (path: string): readonly string[] => {
    const own = shown(path);
    return [...rows]
      .filter(([id]) => id === own || id.startsWith(`${own}_`) || own.startsWith(`${id}_`))
      .flatMap(([, row]) => [...row.matchAll(RULE)].map(([, id = ""]) => id));
  };

  it("are rules there are, and each rule reads something", () => {
    const all = ["build", "parts", "survey"].flatMap((name) =>
      [...rowsOf(name).values()].flatMap((row) => [...row.matchAll(RULE)].map(([, id = ""]) => id)),
    );
    const ids = rules.map(({ id }) => id);
    expect(all.filter((id) => !ids.includes(id))).toEqual([]);
    // These look at the text, at mistakes, or at whatever is quoted or written.
    const apart = (id: string): boolean => id.startsWith("document.") || OF_CELLS.includes(id);
    const unlisted = ids.filter((id) => !all.includes(id) && !apart(id));
    expect(unlisted).toEqual([]);
  });

  // Found the other way round: by leaving the key out of a document in which it decides something.
  const places = written();
  // Names of parts are looked up before any rule asks, and a waiver makes other rules' checks come out otherwise.
  const isFigure = (path: string, forms = fieldsAt(schemas.buildSchema, path)): boolean =>
    forms.length > 0 &&
    forms.every(
      (form) =>
        form.quantity !== undefined || form.pair !== undefined || form.type === "integer" || form.enum !== undefined,
    );
  const leaves = [...places.keys()].filter(
    (path) => rows.has(shown(path)) && !path.startsWith("waivers") && isFigure(path),
  );
  const runs = effort.deep ? leaves.length : 3;
  const [tried = []] = fc.sample(fc.shuffledSubarray(leaves, { minLength: runs, maxLength: runs }), {
    seed: effort.seed,
    numRuns: 1,
  });
  it.each(notEmpty(tried))("are those that come out otherwise without %s", (path) => {
    const changed = (places.get(path) ?? []).slice(0, 3).flatMap(rulesChanged);
    const listed = readBy(path);
    const many = /\d+ rules|the build is made of it/u.test(rows.get(shown(path)) ?? "");
    const found = [...new Set(changed)].filter((rule) => !rule.startsWith("document."));
    expect(many ? [] : found.filter((rule) => !listed.includes(rule))).toEqual([]);
  });
});

describe("what counts when a key is left out", () => {
  it("of a house standard is what the product takes", () => {
    const { standard } = readHouseStandard(undefined);
    const properties = schemas.houseStandardSchema.properties as Readonly<Record<string, { default?: unknown }>>;
    const stated = Object.entries(properties).filter(([, schema]) => schema.default !== undefined);
    for (const [key, schema] of notEmpty(stated))
      expect(standard[key as keyof typeof standard]).toEqual(schema.default);
  });
});

describe("the schemas that are published", () => {
  // Without our own words, as any other program reads them.
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  const schemaOf = (name: string) => JSON.parse(page(`schema/${name}.schema.json`)) as Record<string, unknown>;

  it.each(["build", "parts", "stock", "house-standard", "survey", "wish", "record", "draft"])(
    "%s stands on its own",
    (name) => {
      const schema = schemaOf(name);
      expect(schema.$id).toBeUndefined();
      expect(() => ajv.compile(schema)).not.toThrow();
      const refs = [...JSON.stringify(schema).matchAll(/"\$ref":"([^"]+)"/gu)].map(([, ref = ""]) => ref);
      expect(refs.filter((ref) => !ref.startsWith("#/$defs/"))).toEqual([]);
    },
  );

  it("take the starter's own files, and refuse a key that is none", () => {
    const build = ajv.compile(schemaOf("build"));
    for (const { text } of notEmpty(starter().documents)) {
      const data = parse(/^---\n([\s\S]*?)^---$/mu.exec(text)?.[1] ?? "") as Record<string, unknown>;
      expect(build(data), JSON.stringify(build.errors)).toBe(true);
      expect(build({ ...data, colour: "blue" })).toBe(false);
    }
    const parts = ajv.compile(schemaOf("parts"));
    for (const { text } of notEmpty(starter().parts))
      expect(parts(parse(text)), JSON.stringify(parts.errors)).toBe(true);
    const standard = ajv.compile(schemaOf("house-standard"));
    expect(standard(parse(starter().houseStandard?.text ?? "")), JSON.stringify(standard.errors)).toBe(true);
  });

  it("are linked from the pages about them", () => {
    for (const [name] of FILES) {
      expect(page(`reference/${name}.html`)).toContain(`href="../schema/${name}.schema.json"`);
      expect(page("reference/index.html")).toContain(`href="../schema/${name}.schema.json"`);
    }
  });
});
