import { spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { CheckEntry, InspectionRecord } from "@plumbmark/core";
import { publint } from "publint";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";

// What an outside author has: the packed packages, in a folder that knows nothing of this workspace. The registry is
// asked for the packages of others.

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const OURS = new URL("outside/", import.meta.url);

// Installing, compiling and removing whole packages takes the disk its time.
vi.setConfig({ testTimeout: 300_000, hookTimeout: 600_000 });

let folder: string;

interface Ran {
  readonly status: number | null;
  readonly out: string;
}

function runIn(place: string, program: string, ...words: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: join(folder, place),
    encoding: "utf8",
    maxBuffer: 1e9,
    // Nothing of the workspace's own surroundings is to help.
    env: {
      PATH: process.env.PATH,
      HOME: process.env.HOME,
      NO_COLOR: "1",
      npm_config_cache: process.env.npm_config_cache,
    },
  });
  return { status, out: `${stdout}${stderr}` };
}

const run = (program: string, ...words: readonly string[]): Ran => runIn("", program, ...words);

const NPM = process.env.npm_execpath ?? join(process.execPath, "../../lib/node_modules/npm/bin/npm-cli.js");
const npm = (...words: readonly string[]): Ran => run(NPM, ...words);
const tool = (path: string, ...words: readonly string[]): Ran => run(join(folder, "node_modules", path), ...words);
const plumbmark = (...words: readonly string[]): Ran => tool("@plumbmark/cli/dist/plumbmark.js", ...words);

const put = (path: string, text: string): void => {
  mkdirSync(join(folder, path, ".."), { recursive: true });
  writeFileSync(join(folder, path), text);
};

const ours = (name: string): string => readFileSync(new URL(`${name}.txt`, OURS), "utf8");

const TSCONFIG = (files: string): string => `{
  "compilerOptions": {
    "target": "ES2023", "lib": ["ES2023"], "module": "NodeNext", "types": ["node"],
    "strict": true, "exactOptionalPropertyTypes": true, "noUncheckedIndexedAccess": true, "skipLibCheck": false,
    "rootDir": "author", "outDir": "builds/house-rules"
  },
  "files": [${files}]
}\n`;

let installed: Ran;

beforeAll(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-outside-")));
  const packed = spawnSync(
    process.execPath,
    [join(ROOT, "packages/build-tools/src/pack.mjs"), join(folder, "packed")],
    { encoding: "utf8" },
  );
  expect(packed.status, packed.stderr).toBe(0);
  put("package.json", `{ "name": "outside", "private": true, "type": "module" }\n`);
  const files = packed.stdout.trim().split("\n");
  installed = npm(
    "install",
    "--no-audit",
    "--no-fund",
    "--prefer-offline",
    ...files,
    "typescript@~5.9",
    "@types/node@^20",
  );
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("the packages install, and none is a link into the workspace", () => {
  expect(installed.status, installed.out).toBe(0);
  const own = readdirSync(join(folder, "node_modules/@plumbmark"));
  expect(own).toEqual(["calc", "cli", "core", "docs-site", "in-place", "kit", "rules", "starter"]);
  for (const name of own) {
    const path = join(folder, "node_modules/@plumbmark", name);
    expect(lstatSync(path).isSymbolicLink()).toBe(false);
    expect(existsSync(join(path, "LICENSE"))).toBe(true);
    expect(JSON.stringify(readdirSync(path, { recursive: true }))).not.toMatch(/\.test\.(js|d\.ts)|tsbuildinfo|"src"/u);
  }
});

test.each(["calc", "cli", "core", "docs-site", "in-place", "kit", "rules", "starter"])(
  "@plumbmark/%s is packed as its package.json says",
  async (name) => {
    const { messages } = await publint({
      pkgDir: join(folder, "node_modules/@plumbmark", name),
      pack: false,
      level: "warning",
    });
    expect(messages).toEqual([]);
  },
);

describe("an outside author", () => {
  beforeAll(() => {
    put("author/rules.ts", ours("rules.ts"));
    put("author/rules.test.ts", ours("rules.test.ts"));
    put("author/wrong.ts", ours("wrong.ts"));
    put("tsconfig.json", TSCONFIG(`"author/rules.ts", "author/rules.test.ts"`));
    put("tsconfig.wrong.json", TSCONFIG(`"author/wrong.ts"`));
    expect(plumbmark("start", "builds").status).toBe(0);
  });

  test("type-checks and compiles a plugin", () => {
    const compiled = tool("typescript/bin/tsc");
    expect(compiled.out).toBe("");
    expect(compiled.status).toBe(0);
  });

  test("is told by the compiler what is wrong, line by line", () => {
    const { out } = tool("typescript/bin/tsc", "-p", "tsconfig.wrong.json", "--noEmit");
    const lines = [...out.matchAll(/^author\/wrong\.ts\((\d+),/gmu)].map((match) => Number(match[1]));
    expect([...new Set(lines)]).toEqual([5, 6, 7, 11, 12]);
  });

  test("tries it out with the test runner of Node.js", () => {
    const { status, out } = run("--test", "builds/house-rules/rules.test.js");
    expect(out).toMatch(/# pass 4/u);
    expect(status).toBe(0);
  });

  const record = (out: string): InspectionRecord => JSON.parse(out.slice(out.indexOf("{"))) as InspectionRecord;
  const from = (whole: InspectionRecord, name: string): readonly CheckEntry[] =>
    whole.documents.flatMap(({ checks }) => checks).filter((check) => check.from === name);

  const name = (plugin: string): void => {
    const path = join(folder, "builds/house-standard.yaml");
    const standard = readFileSync(path, "utf8").replace(/^rules-from:.*\n/gmu, "");
    writeFileSync(path, `${standard}\nrules-from: ["${plugin}"]\n`);
  };

  test("has it loaded from a file of the docs repository", () => {
    name("./house-rules/rules.js");
    const { out } = plumbmark("inspect", "builds", "--as", "json", "--every");
    const checks = from(record(out), "./house-rules/rules.js");
    const builds = record(out).documents.filter(({ build }) => build !== undefined);
    expect(checks.filter(({ rule }) => rule === "outside.crew")).toHaveLength(builds.length);
    expect(checks.filter(({ rule }) => rule === "outside.light").length).toBeGreaterThan(builds.length - 1);
    expect(checks.filter(({ rule }) => rule === "plugin.failed")).toEqual([]);
    expect(plumbmark("rules", "--standard", "builds/house-standard.yaml", "outside.light").out).toContain(
      "./house-rules/rules.js",
    );
  });

  test("has it loaded from a package, and published with the builds", () => {
    put(
      "node_modules/outside-rules/package.json",
      `{ "name": "outside-rules", "version": "1.0.0", "type": "module", "exports": { "import": "./rules.js" } }\n`,
    );
    cpSync(join(folder, "builds/house-rules/rules.js"), join(folder, "node_modules/outside-rules/rules.js"));
    name("outside-rules");
    const { out } = plumbmark("inspect", "builds", "--as", "json", "--every");
    expect(from(record(out), "outside-rules").map(({ rule }) => rule)).toContain("outside.light");
    expect(from(record(out), "outside-rules").map(({ rule }) => rule)).not.toContain("plugin.failed");
    const published = plumbmark("publish", "builds", "--to", "site");
    expect(published.status, published.out).toBe(0);
    expect(readFileSync(join(folder, "site/rules/outside.light.html"), "utf8")).toContain("outside-rules");
    expect(readFileSync(join(folder, "site/rules/index.html"), "utf8")).toContain("outside.crew");
  });

  test("begins a rule that passes its own test at once, and is loaded", () => {
    const command = join(folder, "node_modules/@plumbmark/cli/dist/plumbmark.js");
    const begun = runIn("builds", command, "start", "rule", "two-riggers");
    expect(begun.status, begun.out).toBe(0);
    const tried = run("--test", "builds/house-rules/two-riggers/rule.test.mjs");
    expect(tried.out).toMatch(/# fail 0/u);
    expect(tried.status).toBe(0);
    name("./house-rules/two-riggers/plugin.mjs");
    const { out } = plumbmark("inspect", "builds", "--as", "json", "--every");
    const rules = from(record(out), "./house-rules/two-riggers/plugin.mjs").map(({ rule }) => rule);
    expect([...new Set(rules)]).toEqual(["house.two-riggers"]);
  });
});
