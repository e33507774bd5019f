// Runs the cases of every rule and keeps what came out and what was read, so that a rule's page can show documents that
// were really judged, and the reference which rules read a field.
import { createHash } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { brotliCompressSync, constants as zlib } from "node:zlib";
import { build } from "esbuild";
import { parse } from "yaml";
import { valuesIn, watchReadings } from "./readings.mjs";
import { top } from "./steps.mjs";

const DAY = "2027-01-01";
const STARTER = `${top}packages/starter/repository`;
const TO = `${top}docs-site/src/generated/examples.ts`;
const MADE_FROM = [
  "packages/calc/src",
  "packages/core/src",
  "packages/kit/src",
  "packages/core/schema",
  "rules",
  "packages/starter/repository",
];

const filesBelow = (path) =>
  readdirSync(path, { withFileTypes: true })
    .filter(({ name }) => name !== "node_modules" && name !== "dist" && name !== "generated")
    .sort((one, other) => (one.name < other.name ? -1 : 1))
    .flatMap((each) => (each.isDirectory() ? filesBelow(join(path, each.name)) : [join(path, each.name)]));

const digest = () => {
  const hash = createHash("sha256").update(readFileSync(new URL(import.meta.url)));
  hash.update(readFileSync(new URL("readings.mjs", import.meta.url)));
  for (const path of MADE_FROM.flatMap((each) => filesBelow(top + each))) hash.update(path).update(readFileSync(path));
  return hash.digest("hex");
};

const read = (from, path) => ({ path, text: readFileSync(join(from, path), "utf8") });
const folder = (from, name) =>
  existsSync(join(from, name))
    ? readdirSync(join(from, name))
        .sort()
        .map((file) => read(from, `${name}/${file}`))
    : [];
const optional = (from, name) => (existsSync(join(from, name)) ? read(from, name) : undefined);

/** The files of a case: one document, or a folder with what it needs of a repository of its own. */
function filesOf(path, name) {
  if (!statSync(join(path, name)).isDirectory()) return { documents: [read(path, name)], parts: [], surveys: [] };
  const from = join(path, name);
  return {
    documents: folder(from, "builds"),
    parts: folder(from, "parts"),
    surveys: folder(from, "venues"),
    stock: optional(from, "stock.yaml"),
    houseStandard: optional(from, "house-standard.yaml"),
  };
}

/** The case judged by its own rule alone, with the starter's catalogue and stock where it brings none. */
function judged({ documents, parts, surveys, stock, houseStandard }, rule, { rules, openRepository }, watch) {
  const all = rules.map((each) => (each === rule ? watch.watched(rule) : { ...each, checks: () => [] }));
  const files = {
    documents,
    parts: parts.length > 0 ? parts : folder(STARTER, "parts"),
    surveys,
    stock: stock ?? read(STARTER, "stock.yaml"),
    ...(houseStandard ? { houseStandard } : {}),
  };
  const repository = openRepository(files, all, { today: DAY, every: true });
  watch.watchParts(repository);
  const first = documents[0] && repository.one(documents[0].path);
  return {
    system: first?.system ?? "metric",
    practice: first?.build.practice,
    checks: repository.all().documents.flatMap(({ checks }) => checks.filter((check) => check.rule === rule.id)),
  };
}

function examplesOf(rule, modules, watch) {
  const path = `${top}rules/${rule.id.replace(".", "/")}/cases`;
  if (!existsSync(path)) return [];
  return readdirSync(path)
    .sort()
    .map((name) => {
      const files = filesOf(path, name);
      const shown = [...files.documents, ...files.surveys, ...files.parts, files.stock, files.houseStandard].filter(
        (each) => each !== undefined,
      );
      return { name: name.replace(/\.md$/u, ""), files: shown, ...judged(files, rule, modules, watch) };
    });
}

/** The rules and the engine as they stand in the sources, bundled so that nothing has to be compiled first. */
async function modulesFromSources() {
  const place = mkdtempSync(`${top}node_modules/.examples-`);
  try {
    const outfile = join(place, "rules.mjs");
    await build({
      stdin: {
        contents: `export { rules } from "@plumbmark/rules";
          export { openRepository, schemas } from "@plumbmark/core";
          export { Reader } from "../packages/core/src/model/reading/reader.ts";`,
        resolveDir: `${top}docs-site`,
      },
      bundle: true,
      platform: "node",
      format: "esm",
      target: "node20",
      conditions: ["source"],
      banner: { js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);' },
      outfile,
      logLevel: "error",
    });
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(place, { recursive: true, force: true });
  }
}

/** One build of the starter, whose parts are of more kinds than the cases have, looked at by every rule. */
function readStarter({ rules, openRepository }, watch) {
  const files = {
    documents: [read(STARTER, "builds/over-stage-banner.md")],
    parts: folder(STARTER, "parts"),
    surveys: folder(STARTER, "venues"),
    stock: read(STARTER, "stock.yaml"),
  };
  const repository = openRepository(files, rules.map(watch.watched), { today: DAY });
  watch.watchParts(repository);
  repository.all();
}

/** What a text says; null for one of the cases that cannot be read. */
function saidIn(text) {
  try {
    return parse(text);
  } catch {
    return null;
  }
}

const matterOf = (text) => saidIn(/^---\n([\s\S]*?)^---$/mu.exec(text)?.[1] ?? "");

/** A case that holds shows how something is written; one that fails is for the page of its rule. */
const holdingFirst = (one, other) => Number(/\/cases\/holds/u.test(other)) - Number(/\/cases\/holds/u.test(one));

/** Texts of the cases' own files, or of those in a folder of theirs. */
const casesWith = (name) =>
  filesBelow(`${top}rules`)
    .sort(holdingFirst)
    .filter((path) => path.match(/\/cases\/(?:[^/]+\/([^/]+)\/)?[^/]+$/u)?.[1] === name)
    .map((path) => readFileSync(path, "utf8"));

/** Values as they are written: in the starter, else in a case. */
function valuesWritten({ schemas }) {
  const { buildSchema, surveySchema, partsSchema, stockSchema, houseStandardSchema, wishSchema } = schemas;
  const texts = (name) => folder(STARTER, name).map(({ text }) => text);
  const of = (schema, all) => valuesIn(schema, schema, all);
  const parts = [...texts("parts"), ...casesWith("parts")].flatMap((text) => Object.values(saidIn(text) ?? {}));
  return {
    build: of(buildSchema, [...texts("builds"), ...casesWith(undefined), ...casesWith("builds")].map(matterOf)),
    survey: of(surveySchema, [...texts("venues"), ...casesWith("venues")].map(matterOf)),
    parts: Object.assign(
      {},
      ...Object.entries(partsSchema.$defs).map(([kind, schema]) => {
        const found = valuesIn(
          partsSchema,
          schema,
          parts.filter((part) => part?.kind === kind),
        );
        return Object.fromEntries(Object.entries(found).map(([path, text]) => [`${kind}.${path}`, text]));
      }),
    ),
    stock: of(stockSchema, [parse(read(STARTER, "stock.yaml").text)]),
    "house-standard": of(houseStandardSchema, [parse(read(STARTER, "house-standard.yaml").text)]),
    wish: of(
      wishSchema,
      texts("wishes").map((text) => parse(text)),
    ),
  };
}

/** Writes the examples anew when anything they are made from has changed. */
export async function generateExamples() {
  const first = `// Generated from the cases of the rules. ${digest()}`;
  if (existsSync(TO) && readFileSync(TO, "utf8").startsWith(first)) return;
  const modules = await modulesFromSources();
  const watch = watchReadings(modules);
  const all = Object.fromEntries(modules.rules.map((rule) => [rule.id, examplesOf(rule, modules, watch)]));
  readStarter(modules, watch);
  const fields = { readBy: watch.end(), values: valuesWritten(modules) };
  mkdirSync(join(TO, ".."), { recursive: true });
  const json = JSON.stringify({ day: DAY, rules: all, fields });
  // The cases repeat one another over more than a package's own compression sees: a fifth of the command would be these.
  const packed = brotliCompressSync(json, {
    params: { [zlib.BROTLI_PARAM_QUALITY]: 9, [zlib.BROTLI_PARAM_LGWIN]: 22 },
  });
  writeFileSync(
    TO,
    `${first}\n/** The cases of every rule with the checks that came out: JSON, compressed with Brotli (RFC 7932), in base64. */\nexport const packedExamples: string =\n  "${packed.toString("base64")}";\n`,
  );
}
