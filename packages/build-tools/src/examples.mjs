// Runs the cases of every rule and keeps what came out, so that a rule's page can show documents that were really judged.
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
import { build } from "esbuild";
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
function judged({ documents, parts, surveys, stock, houseStandard }, rule, { rules, openRepository }) {
  const all = rules.map((each) => (each === rule ? rule : { ...each, checks: () => [] }));
  const files = {
    documents,
    parts: parts.length > 0 ? parts : folder(STARTER, "parts"),
    surveys,
    stock: stock ?? read(STARTER, "stock.yaml"),
    ...(houseStandard ? { houseStandard } : {}),
  };
  const repository = openRepository(files, all, { today: DAY, every: true });
  const first = documents[0] && repository.one(documents[0].path);
  return {
    system: first?.system ?? "metric",
    practice: first?.build.practice,
    checks: repository.all().documents.flatMap(({ checks }) => checks.filter((check) => check.rule === rule.id)),
  };
}

function examplesOf(rule, modules) {
  const path = `${top}rules/${rule.id.replace(".", "/")}/cases`;
  if (!existsSync(path)) return [];
  return readdirSync(path)
    .sort()
    .map((name) => {
      const files = filesOf(path, name);
      const shown = [...files.documents, ...files.surveys, ...files.parts, files.stock, files.houseStandard].filter(
        (each) => each !== undefined,
      );
      return { name: name.replace(/\.md$/u, ""), files: shown, ...judged(files, rule, modules) };
    });
}

/** The rules and the engine as they stand in the sources, bundled so that nothing has to be compiled first. */
async function modulesFromSources() {
  const place = mkdtempSync(`${top}node_modules/.examples-`);
  try {
    const outfile = join(place, "rules.mjs");
    await build({
      stdin: {
        contents: 'export { rules } from "@plumbmark/rules"; export { openRepository } from "@plumbmark/core";',
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

/** Writes the examples anew when anything they are made from has changed. */
export async function generateExamples() {
  const first = `// Generated from the cases of the rules. ${digest()}`;
  if (existsSync(TO) && readFileSync(TO, "utf8").startsWith(first)) return;
  const modules = await modulesFromSources();
  const all = Object.fromEntries(modules.rules.map((rule) => [rule.id, examplesOf(rule, modules)]));
  mkdirSync(join(TO, ".."), { recursive: true });
  const text = JSON.stringify(JSON.stringify({ day: DAY, rules: all }));
  writeFileSync(
    TO,
    `${first}\n/** The cases of every rule with the checks that came out, as JSON. */\nexport const examplesJson: string =\n  ${text};\n`,
  );
}
