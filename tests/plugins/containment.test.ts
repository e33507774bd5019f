import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type CheckEntry, type InspectionRecord, schemas } from "@plumbmark/core";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, beforeAll, describe, expect, inject, test, vi } from "vitest";
import { some } from "../run/some.js";
import { hostilePlugins, rudePlugins } from "./hostile.js";

// One inspection by the built command, with every hostile plugin at once and a good one among them. What it has to come
// to is known without looking at it: the built-in rules as without plugins, the good plugin as alone, and of each
// hostile one why it could not be told.

const PLUMBMARK = fileURLToPath(new URL("../../packages/cli/dist/plumbmark.js", import.meta.url));
const FILES = ["builds/one.md", "builds/two.md"];

const GOOD = `import { atLeast, counted, plugin, quantityOf, rule } from "@plumbmark/kit";
export default plugin({ kit: 1, rules: [rule({
  id: "good.columns", states: "S.", level: "should", why: "w", judged: "j", sources: ["house"],
  settings: { least: { us: 2, iec: 2, describe: "least number of columns" } },
  *checks({ build, limits }) {
    for (const face of build.faces)
      yield atLeast(face, { measured: counted(face.columns, "columns"), allowed: limits.least, says: ({ measured, allowed }) => \`\${face.label} has \${measured}; \${allowed} are the least.\`, mend: "Add columns." });
  },
})] });
`;

const document = (name: string, columns: number): string =>
  `---\nbuild: ${name}\ntitle: ${name}\nstatus: draft\nfaces:\n  wall: {panel: tile, columns: ${columns}, rows: 1, support: wall}\n---\n\n# ${name}\n`;

/** Each has a process, so an ordinary run tries some, other ones each time, and a deep run all. */
const { deep, seed } = inject("effort");
const tried = deep ? hostilePlugins : some(hostilePlugins, 8, seed);

// Some of them are given their whole time, and each has a process to start.
vi.setConfig({ testTimeout: 300_000, hookTimeout: 600_000 });

let folder: string;
const put = (path: string, text: string): void => {
  mkdirSync(join(folder, path, ".."), { recursive: true });
  writeFileSync(join(folder, path), text);
};

interface Ran {
  readonly status: number | null;
  readonly err: string;
  readonly record: InspectionRecord;
}

function inspect(plugins: readonly string[], ...more: readonly string[]): Ran {
  const rules = `sections: []\nrequirements:\n  document.cautions: {level: none}\n${plugins.includes("good") ? "  good.columns: {least: 3}\n" : ""}`;
  const named = plugins.map((name) => `./plugins/${name}.mjs`);
  put(
    "house-standard.yaml",
    `house-standard: House\nrules-from: ${JSON.stringify(named)}\nplugin-limits: {time: 5 s, memory: 64 MB}\n${rules}`,
  );
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [PLUMBMARK, "inspect", "--as", "json", "--every", ...more],
    {
      cwd: folder,
      encoding: "utf8",
      maxBuffer: 1e9,
    },
  );
  return { status, err: stderr, record: JSON.parse(stdout) as InspectionRecord };
}

const checksIn = ({ record }: Ran, file: string): readonly CheckEntry[] =>
  record.documents.find((each) => each.file === file)?.checks ?? [];

const without = (checks: readonly CheckEntry[]): readonly CheckEntry[] =>
  checks.filter(({ from }) => from === undefined);

let bare: Ran;
let alone: Ran;
let all: Ran;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "plumbmark-plugins-"));
  put("builds/one.md", document("one", 2));
  put("builds/two.md", document("two", 4));
  put(
    "parts/tile.yaml",
    "tile:\n  kind: panel\n  size: 500 mm x 500 mm\n  pixels: 160 x 160\n  mass: 7.9 kg\n  power: {maximum: 133 W}\n",
  );
  put("plugins/good.mjs", GOOD);
  for (const { name, module } of [...hostilePlugins, ...rudePlugins]) put(`plugins/${name}.mjs`, module);
  bare = inspect([]);
  alone = inspect(["good"]);
  const names = [...tried, ...rudePlugins].map(({ name }) => name);
  all = inspect([...names.slice(0, 6), "good", ...names.slice(6)]);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const of = (file: string, name: string): readonly CheckEntry[] =>
  checksIn(all, file).filter(({ from }) => from === `./plugins/${name}.mjs`);

test("there are at least twenty-five of them", () => {
  expect(hostilePlugins.length).toBeGreaterThanOrEqual(25);
  expect(tried.length).toBeGreaterThanOrEqual(8);
});

test("the record is the record, follows its schema, and the exit status is not 0", () => {
  expect([bare.status, alone.status, all.status]).toEqual([0, 0, 2]);
  const ajv = new Ajv2020({ strict: false });
  expect(ajv.validate(schemas.recordSchema, all.record), JSON.stringify(ajv.errors)).toBe(true);
});

test.each(FILES)("what the built-in rules find in %s is what they find without plugins", (file) => {
  expect(without(checksIn(bare, file)).length).toBeGreaterThan(0);
  expect(without(checksIn(all, file))).toEqual(without(checksIn(bare, file)));
});

test("a good plugin among them finds what it finds alone, by the settings of the house", () => {
  // By hand: 2 columns are fewer than the 3 that are set, 4 are not.
  expect(FILES.map((file) => of(file, "good").map(({ outcome }) => outcome))).toEqual([["fails"], ["holds"]]);
  const good = (ran: Ran) => FILES.map((file) => checksIn(ran, file).filter(({ rule }) => rule === "good.columns"));
  expect(good(all)).toEqual(good(alone));
});

test("no document is ready that a plugin failed on, though both are drafts", () =>
  expect(all.record.documents.map(({ verdict }) => verdict)).toEqual(["not ready", "not ready"]));

describe.each(tried.map((each) => [each.name, each] as const))("%s", (name, { says, whole }) => {
  test.each(FILES)("is told of in %s, and nothing else of it is lost", (file) => {
    const checks = of(file, name);
    const failed = checks.filter(({ rule }) => rule === "plugin.failed");
    expect(failed.map(({ outcome, level }) => [outcome, level])).toEqual([["fails", "shall"]]);
    expect(failed[0]?.says).toMatch(says);
    expect(failed[0]?.says).toContain(`./plugins/${name}.mjs`);
    if (whole) return expect(checks).toHaveLength(1);
    expect(failed[0]?.says).toContain(`${name}.hostile`);
    expect(failed[0]?.says).toContain(file);
    const sound = checks.filter(({ rule }) => [`${name}.before`, `${name}.after`].includes(rule));
    expect(sound.map(({ outcome }) => outcome)).toEqual(["holds", "holds"]);
  });
});

describe.each(rudePlugins.map(({ name, says }) => [name, says] as const))("%s", (name, says) => {
  test.each(FILES)("is carried out on %s", (file) => {
    const checks = of(file, name);
    expect(checks.map(({ outcome }) => outcome)).toEqual(["holds", "holds", "holds"]);
    expect(checks.find(({ rule }) => rule === `${name}.hostile`)?.says).toMatch(says);
  });
});

test("what a plugin prints goes to standard error, with its name before it", () => {
  expect(all.err).toContain("./plugins/q-prints.mjs: {}\n");
  expect(all.err).toContain("./plugins/q-prints.mjs: [1]\n");
  expect(all.err).toContain("./plugins/q-prints.mjs: loud\n");
});

test("refused plugins do not run; their rules are open and the documents are not counted as passed", () => {
  put("plugins/tells.mjs", `import { writeFileSync } from "node:fs"; writeFileSync("ran.txt", "x");`);
  const refused = inspect(["tells", "good"], "--no-plugins");
  expect(() => readFileSync(join(folder, "ran.txt"))).toThrow(/ENOENT/u);
  for (const file of FILES) {
    const open = checksIn(refused, file).filter(({ rule }) => rule === "plugin.failed");
    expect(open.map(({ outcome, from }) => [outcome, from])).toEqual([
      ["open", "./plugins/tells.mjs"],
      ["open", "./plugins/good.mjs"],
    ]);
    expect(without(checksIn(refused, file))).toEqual(without(checksIn(bare, file)));
  }
});

test("a rule that brings its process down on every document is not begun for ever", () => {
  const files = ["a", "b", "c", "d", "e", "f"].map((name) => `builds/more-${name}.md`);
  for (const [index, file] of files.entries()) put(file, document(`more-${index}`, 2));
  const ran = inspect(["r-exits"]);
  const says = [...FILES, ...files].map(
    (file) => checksIn(ran, file).find(({ rule }) => rule === "plugin.failed")?.says ?? "",
  );
  expect(says.filter((each) => /ended its process \(with/u.test(each) && !/not begun again/u.test(each))).toHaveLength(
    3,
  );
  expect(says.filter((each) => /not begun again after 3/u.test(each))).toHaveLength(5);
  for (const file of files) rmSync(join(folder, file));
});
