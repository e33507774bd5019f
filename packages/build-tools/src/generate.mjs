// Makes what is derived from one source: types and validators from the JSON Schemas.
import { mkdir, readFile, writeFile } from "node:fs/promises";
import Ajv2020 from "ajv/dist/2020.js";
import standaloneCode from "ajv/dist/standalone/index.js";
import { build } from "esbuild";
import { compile } from "json-schema-to-typescript";
import { rulesIndex } from "./list-rules.mjs";
import { top } from "./steps.mjs";
import { wholeSchema } from "./whole-schema.mjs";

const NAMES = ["build", "parts", "stock", "house-standard", "record", "survey", "wish", "draft"];
const folder = `${top}packages/core/src/generated/`;

const camel = (name) => name.replace(/-(.)/g, (_, letter) => letter.toUpperCase());

/**
 * Vocabulary of our own in the schemas: what kind of quantity, pair, range or reference a text has to be, whether it may
 * be less than nothing (`sign: "any"`), the least and most that are plausible for the field, whether it is a day or days
 * on site (`form`), whether it may be written as a guess or a bound (`guess`), and where a person finds it (`found`). `none: true`: the
 * word `none` may be written for it.
 */
const VOCABULARY = [
  "quantity",
  "pair",
  "range",
  "extent",
  "refers",
  "sign",
  "plausible",
  "form",
  "guess",
  "found",
  "none",
];

export async function generate() {
  await mkdir(folder, { recursive: true });
  const written = await Promise.all(
    NAMES.map(async (name) => JSON.parse(await readFile(`${top}packages/core/schema/${name}.schema.json`, "utf8"))),
  );
  const byFile = Object.fromEntries(NAMES.map((name, index) => [`${name}.schema.json`, written[index]]));
  const schemas = written.map((schema) => wholeSchema(schema, byFile));
  const types = await Promise.all(
    schemas.map((schema) =>
      compile(structuredClone(schema), schema.title, { bannerComment: "", additionalProperties: false, format: false }),
    ),
  );
  const write = (name, text) => writeFile(`${folder}${name}`, text);
  for (const [index, name] of NAMES.entries())
    await write(`${name}.ts`, `// Generated from schema/${name}.schema.json.\n${types[index]}`);
  await write(
    "schemas.ts",
    `// Generated from schema/*.schema.json.\n${NAMES.map((name, index) => `export const ${camel(name)}Schema: Record<string, unknown> = ${JSON.stringify(schemas[index])};`).join("\n")}\n`,
  );
  await bundleValidators(schemas, write);
  const index = `${top}rules/index.ts`;
  if ((await readFile(index, "utf8").catch(() => "")) !== rulesIndex()) await writeFile(index, rulesIndex());
}

async function bundleValidators(schemas, write) {
  const ajv = new Ajv2020({
    allErrors: true,
    verbose: true,
    strictSchema: true,
    strictRequired: false,
    allowUnionTypes: true,
    discriminator: true,
    code: { source: true, esm: true },
  });
  for (const word of VOCABULARY) ajv.addKeyword(word);
  for (const schema of schemas) ajv.addSchema(schema);
  const code = standaloneCode.default(
    ajv,
    Object.fromEntries(schemas.map((schema, index) => [camel(NAMES[index]), schema.$id])),
  );
  const bundled = await build({
    stdin: { contents: code, resolveDir: top, loader: "js" },
    bundle: true,
    write: false,
    format: "esm",
    target: "es2022",
  });
  await write(
    "validators.ts",
    `// @ts-nocheck\n// Generated from schema/*.schema.json by ajv.\n${bundled.outputFiles[0].text}`,
  );
}
