import { type SpawnOptions, spawn, spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { CheckEntry, InspectionRecord } from "@plumbmark/core";
import { publint } from "publint";
import { afterAll, beforeAll, describe, expect, inject, test, vi } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";

// What somebody outside has: the one packed package, in a folder that knows nothing of this workspace. The registry is
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

const runIn = (place: string, program: string, ...words: readonly string[]): Ran =>
  spawnedIn(place, process.execPath, program, ...words);

const around = (place: string) =>
  ({
    cwd: join(folder, place),
    // Nothing of the workspace's own surroundings is to help.
    env: {
      PATH: process.env.PATH,
      HOME: process.env.HOME,
      XDG_CACHE_HOME: join(folder, "cache"),
      NO_COLOR: "1",
      npm_config_cache: process.env.npm_config_cache,
    },
  }) satisfies SpawnOptions;

function spawnedIn(place: string, node: string, ...words: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(node, [...words], {
    ...around(place),
    encoding: "utf8",
    maxBuffer: 1e9,
  });
  return { status, out: `${stdout}${stderr}` };
}

/** The same, while others run. */
function begunIn(place: string, ...words: readonly string[]): Promise<Ran> {
  const child = spawn(process.execPath, [...words], { ...around(place), stdio: ["ignore", "pipe", "pipe"] });
  let out = "";
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding("utf8").on("data", (text: string) => {
      out += text;
    });
  return new Promise((resolve, reject) => {
    child.once("error", reject).once("close", (status) => resolve({ status, out }));
  });
}

const run = (program: string, ...words: readonly string[]): Ran => runIn("", program, ...words);

const NPM = process.env.npm_execpath ?? join(process.execPath, "../../lib/node_modules/npm/bin/npm-cli.js");
const npm = (...words: readonly string[]): Ran => run(NPM, ...words);
const tool = (path: string, ...words: readonly string[]): Ran => run(join(folder, "node_modules", path), ...words);
const plumbmark = (...words: readonly string[]): Ran => tool("plumbmark/plumbmark.js", ...words);

const put = (path: string, text: string): void => {
  mkdirSync(join(folder, path, ".."), { recursive: true });
  writeFileSync(join(folder, path), text);
};

const ours = (name: string): string => readFileSync(new URL(`${name}.txt`, OURS), "utf8");

const TSCONFIG = (files: string, isLibraryRead = true): string => `{
  "compilerOptions": {
    "target": "ES2023", "lib": ["ES2023"], "module": "NodeNext", "types": ["node"],
    "strict": true, "exactOptionalPropertyTypes": true, "noUncheckedIndexedAccess": true, "skipLibCheck": ${!isLibraryRead},
    "rootDir": "author", "outDir": "builds/house-rules"
  },
  "files": [${files}]
}\n`;

let installed: Ran;
let packed: readonly string[];
let fetched: Promise<Ran>;

const PLATFORM = `${process.platform}-${process.arch}`;

/** Other versions of Node.js, as the packages of its binaries, and another package manager: by the names they get here. */
const OTHERS = {
  "node-22": `${binaries()}@22`,
  "node-24": `${binaries()}@24`,
  pnpm: "pnpm@9",
} as const;

/** Each costs a download and a site: an ordinary run tries one of them, another each time, and a deep run all. */
const { deep, seed } = inject("effort");
const tried = Object.entries(OTHERS).filter(([name]) => deep || some(Object.keys(OTHERS), 1, seed).includes(name));
const isTried = (name: keyof typeof OTHERS): boolean => tried.some(([each]) => each === name);

function binaries(): string {
  return `node-${process.platform === "win32" ? "win" : process.platform}-${process.arch}`;
}

beforeAll(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-outside-")));
  put("others/package.json", `{ "private": true }\n`);
  const named = notEmpty(tried).map(([name, of]) => `${name}@npm:${of}`);
  fetched = begunIn("others", NPM, "install", "--no-audit", "--no-fund", "--prefer-offline", ...named);
  const made = spawnSync(process.execPath, [join(ROOT, "packages/build-tools/src/pack.mjs"), join(folder, "packed")], {
    encoding: "utf8",
  });
  expect(made.status, made.stderr).toBe(0);
  packed = made.stdout.trim().split("\n");
  put("package.json", `{ "name": "outside", "private": true, "type": "module" }\n`);
  installed = npm(
    "install",
    "--no-audit",
    "--no-fund",
    "--prefer-offline",
    whole(),
    "typescript@~7.0.2",
    "@types/node@^20",
  );
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The one that is installed. */
const whole = (): string => packed.find((path) => /\/plumbmark-\d[^/]*\.tgz$/u.test(path)) ?? "";

const listed = (path: string): readonly string[] =>
  spawnSync("tar", ["-tzf", path], { encoding: "utf8" }).stdout.trim().split("\n");

test("every package has its licence and a page, and nothing of one machine or of this workspace alone", () => {
  expect(packed.length).toBeGreaterThan(8);
  for (const path of notEmpty(packed)) {
    const names = listed(path);
    expect(names).toEqual(expect.arrayContaining(["package/LICENSE", "package/README.md", "package/package.json"]));
    expect(
      names.filter((name) => /\.test\.(?:js|d\.ts)$|tsbuildinfo|\.map$|\.code$|^package\/src\//u.test(name)),
    ).toEqual([]);
  }
});

test("one package is installed, of at most 3 MB, with what it is made of inside", () => {
  expect(installed.status, installed.out).toBe(0);
  expect(statSync(whole()).size).toBeLessThan(3e6);
  expect(readdirSync(join(folder, "node_modules")).filter((name) => name.includes("plumbmark"))).toEqual(["plumbmark"]);
  const home = join(folder, "node_modules/plumbmark");
  expect(readdirSync(home)).toEqual(expect.arrayContaining(["CHANGELOG.md", "NOTICES.md", "schema"]));
  // Licences ask for their text to go with the work: one of each library in the bundle.
  const bundled = JSON.parse(readFileSync(join(ROOT, "packages/cli/dist/bundled.json"), "utf8")) as readonly string[];
  const notices = readFileSync(join(home, "NOTICES.md"), "utf8");
  for (const path of notEmpty(bundled)) expect(notices).toContain(`## ${path.replace(/^.*node_modules\//u, "")} `);
  const schema = JSON.parse(readFileSync(join(home, "schema/build.schema.json"), "utf8")) as { readonly $id: string };
  expect(schema.$id).toContain("build.schema.json");
});

test("it is packed as its package.json says", async () => {
  const { messages } = await publint({ pkgDir: join(folder, "node_modules/plumbmark"), pack: false, level: "warning" });
  expect(messages).toEqual([]);
});

const leaves = (place: string, kind: string, left: readonly string[]): void => {
  const names = readdirSync(join(folder, place, kind));
  expect(names).toEqual(expect.arrayContaining([...left]));
  for (const name of notEmpty(names)) if (!left.includes(name)) rmSync(join(folder, place, kind, name));
};

/** Leaves one build of the starter in a docs repository, and these wishes: each costs its time, and shows nothing new. */
function withFew(place: string, wishes: readonly string[]): void {
  leaves(place, "builds", ["over-stage-banner.md"]);
  leaves(place, "wishes", wishes);
}
const STRIP = "summer-strip.yaml";

/** A docs repository begun, inspected and published by a command that is run in some way. */
function begun(place: string, wishes: readonly string[], run: (...words: string[]) => Ran): void {
  const started = run("start", "docs");
  expect(started.status, started.out).toBe(0);
  withFew(`${place}/docs`, wishes);
  const { status, out } = run("inspect", "docs", "--as", "json");
  expect(status, out).toBe(0);
  const { documents } = JSON.parse(out.slice(out.indexOf("{"))) as InspectionRecord;
  expect(documents.filter(({ verdict }) => verdict === "ready")).toHaveLength(1);
  // Its own rules are asked: the kit is found wherever the package lies.
  const checks = documents.flatMap((document) => document.checks);
  expect(checks.filter(({ rule }) => rule === "plugin.failed")).toEqual([]);
  expect(run("publish", "docs", "--to", "site").status).toBe(0);
  expect(existsSync(join(folder, place, "site/index.html"))).toBe(true);
}

describe("in an empty folder", () => {
  beforeAll(async () => {
    const { status, out } = await fetched;
    expect(status, out).toBe(0);
  });

  const onNode = (major: "22" | "24") => (): void => {
    const place = `on-node-${major}`;
    put(`${place}/package.json`, `{ "private": true }\n`);
    const node = join(folder, `others/node_modules/node-${major}/bin/node`);
    expect(spawnSync(node, ["--version"], { encoding: "utf8" }).stdout).toMatch(new RegExp(`^v${major}\\.`, "u"));
    const command = join(folder, "node_modules/plumbmark/plumbmark.js");
    begun(place, major === "24" ? [STRIP] : [], (...words) => spawnedIn(place, node, command, ...words));
  };
  test.runIf(isTried("node-22"))("on Node.js 22", onNode("22"));
  test.runIf(isTried("node-24"))("on Node.js 24", onNode("24"));

  test.runIf(isTried("pnpm"))("under pnpm, whose packages see only what they name", () => {
    put("pnpm/package.json", `{ "private": true }\n`);
    const pnpm = join(folder, "others/node_modules/pnpm/bin/pnpm.cjs");
    const added = runIn("pnpm", pnpm, "add", "--ignore-workspace", "--store-dir", join(folder, "pnpm/store"), whole());
    expect(added.status, added.out).toBe(0);
    expect(readdirSync(join(folder, "pnpm/node_modules")).filter((name) => !name.startsWith("."))).toEqual([
      "plumbmark",
    ]);
    begun("pnpm", [], (...words) => runIn("pnpm", join(folder, "pnpm/node_modules/plumbmark/plumbmark.js"), ...words));
  });
});

test("what V8 makes of the script is kept for every command that is used, not for the first alone", () => {
  rmSync(join(folder, "cache"), { recursive: true, force: true });
  put("kept/package.json", `{ "private": true }\n`);
  const command = (...words: readonly string[]): Buffer => {
    const { status, out } = runIn("kept", join(folder, "node_modules/plumbmark/plumbmark.js"), ...words);
    expect(status, out).toBe(0);
    const cache = join(folder, "cache/plumbmark");
    const names = readdirSync(cache).filter((name) => name.endsWith(`-program-${process.version}-${PLATFORM}.code`));
    expect(names).toHaveLength(1);
    return readFileSync(join(cache, names[0] as string));
  };
  const first = command("start", "docs");
  withFew("kept/docs", []);
  const second = command("inspect", "docs", "--every");
  // The bytes are said to be sound by a digest before them, and are of the commands that stand before them.
  expect(second.toString("latin1", 32, 60)).toMatch(/^start inspect\n/u);
  expect(second.length).toBeGreaterThan(1.5 * first.length);
  expect(command("inspect", "docs", "--every").equals(second)).toBe(true);
});

describe("an outside author", () => {
  beforeAll(() => {
    put("author/rules.ts", ours("rules.ts"));
    put("author/rules.test.ts", ours("rules.test.ts"));
    put("author/wrong.ts", ours("wrong.ts"));
    put("tsconfig.json", TSCONFIG(`"author/rules.ts", "author/rules.test.ts"`));
    put("tsconfig.wrong.json", TSCONFIG(`"author/wrong.ts"`, false));
    expect(plumbmark("start", "builds").status).toBe(0);
    withFew("builds", [STRIP]);
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
    const command = join(folder, "node_modules/plumbmark/plumbmark.js");
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
