import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import {
  type FolderStandard,
  openRepository,
  openStandards,
  pluginRules,
  type RepositoryFiles,
  type Rule,
  type SourceFile,
  StandardError,
} from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";
import fc from "fast-check";
import { afterAll, beforeEach, describe, expect, inject, test } from "vitest";
import { oldFormText } from "../../../../../tests/old-form.js";
import { notEmpty } from "../../../../../tests/run/not-empty.js";
import { rulesOfPlugins } from "../../plugins/plugins.js";
import { gitBlobName } from "../../source/blob-name.js";
import { ResultCache } from "./cache.js";
import { inspectCached } from "./inspect-cached.js";
import { Store } from "./store.js";

// What is kept must never change what comes out: whatever is changed between two inspections, the record is that of an
// inspection that keeps nothing.

const { deep, runs } = inject("effort");

let folder = mkdtempSync(join(tmpdir(), "plumbmark-kept-"));
const used = [folder];
const place = folder;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "plumbmark-kept-"));
  used.push(folder);
});
afterAll(() => {
  for (const each of used) rmSync(each, { recursive: true, force: true });
});

const read = (path: string): SourceFile => ({ path, text: readFileSync(join(starterRepository, path), "utf8") });

interface State {
  readonly documents: ReadonlyMap<string, string>;
  readonly parts: readonly SourceFile[];
  readonly stock: string;
  readonly standard: string;
  readonly folderStandards: readonly FolderStandard[];
  readonly today: string;
  readonly own: readonly Rule[];
}

const start: State = {
  documents: new Map(
    // Two, and a third one in a deep run: what the second shows of the first, a third shows once more.
    ["over-stage-banner", "small-screen", ...(deep ? ["side-strips"] : [])].map((name) => [
      `builds/${name}.md`,
      oldFormText(`builds/${name}.md`),
    ]),
  ),
  parts: readdirSync(join(starterRepository, "parts")).map((name) => read(`parts/${name}`)),
  stock: read("stock.yaml").text,
  standard: read("house-standard.yaml").text,
  folderStandards: [],
  today: "2027-01-10",
  own: [],
};

const filesOf = ({ documents, parts, stock, standard, folderStandards }: State): RepositoryFiles => ({
  documents: [...documents]
    .map(([path, text]) => ({ path, text, id: gitBlobName(Buffer.from(text)) }))
    .sort((one, other) => (one.path < other.path ? -1 : 1)),
  parts,
  stock: { path: "stock.yaml", text: stock },
  papers: readdirSync(join(starterRepository, "letters")).map((name) => `letters/${name}`),
  houseStandard: { path: "house-standard.yaml", text: standard },
  folderStandards,
});

type Change = (state: State) => State;

const inDocument =
  (which: number, edit: (text: string) => string): Change =>
  (state) => {
    const path = [...state.documents.keys()][which % Math.max(1, state.documents.size)];
    if (path === undefined) return state;
    return { ...state, documents: new Map([...state.documents, [path, edit(state.documents.get(path) ?? "")]]) };
  };

const moved =
  (which: number): Change =>
  (state) => {
    const [path, text] = [...state.documents][which % Math.max(1, state.documents.size)] ?? [];
    if (path === undefined || text === undefined) return state;
    const others = [...state.documents].filter(([each]) => each !== path);
    const to = path.startsWith("builds/moved/")
      ? path.replace("builds/moved/", "builds/")
      : path.replace("builds/", "builds/moved/");
    return { ...state, documents: new Map([...others, [to, text]]) };
  };

const gone =
  (which: number): Change =>
  (state) => {
    const path = [...state.documents.keys()][which % Math.max(1, state.documents.size)];
    return { ...state, documents: new Map([...state.documents].filter(([each]) => each !== path)) };
  };

const outcome = (says: string) =>
  pluginRules({
    rules: [
      {
        stated: { ...(rules[0] as Rule), id: "house.from-outside", plugin: "outside" },
        outcomes: Object.fromEntries(
          [...start.documents.keys()].map((file) => [
            file,
            {
              checks: [
                {
                  rule: "house.from-outside",
                  from: "outside",
                  level: "shall",
                  outcome: "fails",
                  at: { path: "", line: 1, column: 1, endLine: 1, endColumn: 1 },
                  says,
                  sources: [],
                },
              ],
            },
          ]),
        ),
      },
    ],
    failed: [],
    refused: [],
  });

const number = fc.nat(5);
const changes: readonly fc.Arbitrary<Change>[] = [
  fc
    .tuple(number, fc.constantFrom("2431", "2507"))
    .map(([which, lot]) => inDocument(which, (text) => text.replace(/lot-\d+/gu, `lot-${lot}`))),
  fc
    .tuple(number, fc.constantFrom("one", "two"))
    .map(([which, name]) => inDocument(which, (text) => text.replace(/^build: .*$/mu, `build: ${name}`))),
  fc
    .tuple(number, fc.nat(20))
    .map(([which, days]) =>
      inDocument(which, (text) => text.replace(/^on-site: .*$/mu, `on-site: 2027-03-${days + 10} to 2027-03-31`)),
    ),
  fc
    .tuple(number, fc.constantFrom("draft", "for-build", "as-built"))
    .map(([which, status]) => inDocument(which, (text) => text.replace(/^status: .*$/mu, `status: ${status}`))),
  fc
    .tuple(number, fc.nat(9))
    .map(([which, amperes]) =>
      inDocument(which, (text) => text.replace(/breaker: \d+ A/u, `breaker: ${amperes + 12} A`)),
    ),
  fc
    .tuple(number, fc.constantFrom("small-screen.md", "moved/small-screen.md", "moved"))
    .map(([which, link]) => inDocument(which, (text) => `${text}\nSee [the other](${link}).\n`)),
  number.map(moved),
  number.map(gone),
  fc.constant<Change>(({ documents, ...rest }) => ({
    ...rest,
    documents: new Map([...documents, ["builds/twin.md", start.documents.get("builds/small-screen.md") ?? ""]]),
  })),
  fc.nat(90).map<Change>((mass) => (state) => ({
    ...state,
    parts: state.parts.map(({ path, text }) => ({ path, text: text.replace(/mass: [\d.]+ kg/u, `mass: ${mass} kg`) })),
  })),
  fc
    .nat(60)
    .map<Change>((count) => (state) => ({ ...state, stock: state.stock.replace(/count: \d+/u, `count: ${count}`) })),
  fc.constantFrom("60 %", "75 %", "80 %").map<Change>((share) => (state) => ({
    ...state,
    standard: state.standard.replace(/share: \d+ %/u, `share: ${share}`),
  })),
  fc.constantFrom("shall", "should", "none", "perhaps").map<Change>((level) => (state) => ({
    ...state,
    standard: state.standard.replace(/^ {4}level: \w+$/mu, `    level: ${level}`),
  })),
  fc.boolean().map<Change>((there) => (state) => ({
    ...state,
    folderStandards: there
      ? [
          {
            path: "builds/moved/house-standard.yaml",
            folder: "builds/moved",
            text: "house-standard: Moved\nrequirements:\n  power.circuit-load: {share: 10 %}\n",
          },
        ]
      : [],
  })),
  fc.constantFrom("2027-01-10", "2027-02-11", "2028-01-01").map<Change>((today) => (state) => ({ ...state, today })),
  fc.constantFrom("one thing", "another").map<Change>((says) => (state) => ({ ...state, own: outcome(says) })),
  fc.constant<Change>((state) => ({ ...state, own: [] })),
];

/** A plugin with a rule on each document and one over all of them, which is made of three files. */
const plugin: Readonly<Record<string, string>> = {
  "house-rules/own.mjs": `import { about, is, plugin, repositoryRule, rule } from "@plumbmark/kit";
import { most, word } from "./helper.mjs";
const page = { states: "S.", level: "should", why: "w", judged: "j", sources: ["house"] };
export default plugin({ kit: 1, rules: [
  rule({ ...page, id: "house.few-faces", *checks({ build }) {
    yield is(build, { holds: build.faces.length <= most, says: \`\${word}: \${build.faces.length} faces\`, mend: "Leave one out." });
  } }),
  repositoryRule({ ...page, id: "house.few-builds", *checks({ repository }) {
    const faces = repository.builds.reduce((sum, build) => sum + build.faces.length, 0);
    for (const build of repository.builds)
      yield about(build, is(build, { holds: repository.builds.length <= most, says: \`\${faces} in all\`, mend: "Fewer." }));
  } }),
] });
`,
  "house-rules/helper.mjs": `import word from "./word.json" with { type: "json" };\nexport { word };\nexport const most = 1;\n`,
  "house-rules/word.json": '"Found"',
};

interface Plugged extends State {
  readonly plugin: Readonly<Record<string, string>>;
}

const inPlugin =
  (path: string, edit: (text: string) => string) =>
  (state: Plugged): Plugged => ({ ...state, plugin: { ...state.plugin, [path]: edit(state.plugin[path] ?? "") } });

const pluginChanges: readonly fc.Arbitrary<(state: Plugged) => Plugged>[] = [
  fc.nat(4).map((most) => inPlugin("house-rules/helper.mjs", (text) => text.replace(/most = \d+/u, `most = ${most}`))),
  fc.constantFrom("Found", "Seen").map((word) => inPlugin("house-rules/word.json", () => JSON.stringify(word))),
  fc
    .constantFrom("faces", "walls")
    .map((unit) => inPlugin("house-rules/own.mjs", (text) => text.replace(/ (?:faces|walls)\\`/u, ` ${unit}\``))),
  fc
    .constantFrom("throw new Error('no'); ", "process.exit(3); ", "")
    .map((fault) =>
      inPlugin("house-rules/own.mjs", (text) =>
        text.replace(/(\{ build \}\) \{\n).*?( {4}yield)/su, (_, before, after) => `${before}${fault}${after}`),
      ),
    ),
  fc
    .constantFrom("./helper.mjs", "./nowhere.mjs")
    .map((from) =>
      inPlugin("house-rules/own.mjs", (text) => text.replace(/"\.\/(?:helper|nowhere)\.mjs"/u, JSON.stringify(from))),
    ),
];

/** Inspects with the rules of the plugin, as the command does. */
async function plugged(state: Plugged, cache: ResultCache | undefined): Promise<unknown> {
  const home = join(place, "plugged");
  mkdirSync(join(home, "house-rules"), { recursive: true });
  for (const [path, text] of Object.entries(state.plugin)) writeFileSync(join(home, path), text);
  const files = filesOf(state);
  const own = await rulesOfPlugins({
    settings: openStandards(files).root.settings,
    standard: files.houseStandard,
    folder: home,
    taken: rules.map(({ id }) => id),
    warn: () => undefined,
    cache,
    on: { files, today: state.today, wanted: files.documents.map(({ path }) => path) },
  });
  const all = [...rules, ...own];
  return cache
    ? inspectCached(files, all, { today: state.today }, cache)
    : openRepository(files, all, { today: state.today }).all();
}

/** Things that happen to the files between two runs. */
const harms: readonly (() => void)[] = [
  () => undefined,
  () => undefined,
  () => {
    for (const name of readdirSync(folder)) truncateSync(join(folder, name), 200);
  },
  () => {
    for (const name of readdirSync(folder)) {
      const bytes = readFileSync(join(folder, name));
      const middle = bytes.length >> 1;
      bytes[middle] = (bytes[middle] ?? 0) ^ 1;
      writeFileSync(join(folder, name), bytes);
    }
  },
  () => rmSync(folder, { recursive: true, force: true }),
];

/** As it is printed: what rules note for one another is no part of it. */
const plainly = (record: unknown): unknown => JSON.parse(JSON.stringify(record));

const orError = async (work: () => unknown): Promise<unknown> => {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StandardError) return error.message;
    throw error;
  }
};

describe("what is kept", () => {
  test("never changes the record, whatever is changed between two inspections", { timeout: 600_000 }, async () => {
    const step = fc.tuple(fc.oneof(...changes), fc.nat(harms.length - 1));
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 3, maxLength: 8 }), async (steps) => {
        let state = start;
        for (const [change, harm] of notEmpty(steps)) {
          state = change(state);
          harms[harm]?.();
          const files = filesOf(state);
          const all = [...rules, ...state.own];
          const cache = new ResultCache(folder, "an edition");
          const warm = await orError(() => inspectCached(files, all, { today: state.today }, cache));
          cache.save();
          const cold = await orError(() => openRepository(files, all, { today: state.today }).all());
          expect(plainly(warm)).toEqual(plainly(cold));
        }
      }),
      { numRuns: deep ? runs / 50 : 1 },
    );
  });

  test("never changes the record with a plugin, whatever is changed of it", { timeout: 600_000 }, async () => {
    // Its messages name the place it lies in, so it is always the same.
    const standard = start.standard.replace(
      /^rules-from: .*$/mu,
      'rules-from: ["./house-rules/own.mjs"]\nplugin-limits: {time: 60 s, memory: 256 MB}',
    );
    const step = fc.tuple(
      fc.oneof(
        { weight: 2, arbitrary: fc.oneof(...pluginChanges) },
        { weight: 1, arbitrary: fc.oneof(...changes) as unknown as (typeof pluginChanges)[number] },
        { weight: 1, arbitrary: fc.constant((state: Plugged) => state) },
      ),
      fc.nat(harms.length - 1),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 3, maxLength: deep ? 6 : 3 }), async (steps) => {
        let state: Plugged = { ...start, standard, plugin };
        for (const [change, harm] of notEmpty(steps)) {
          state = change(state);
          harms[harm]?.();
          const cache = new ResultCache(folder, "an edition");
          const warm = await orError(() => plugged(state, cache));
          cache.save();
          expect(plainly(warm)).toEqual(plainly(await orError(() => plugged(state, undefined))));
        }
      }),
      { numRuns: deep ? runs / 100 : 1 },
    );
  });

  test("is used: an unchanged document is not read again, a changed one is", async () => {
    const cache = new ResultCache(folder, "an edition");
    const files = filesOf(start);
    const cold = await inspectCached(files, rules, { today: start.today }, cache);
    cache.save();
    const read: string[] = [];
    const documents = files.documents.map(({ path, text, ...file }) => ({
      ...file,
      path,
      get text() {
        read.push(path);
        return text;
      },
    }));
    const again = await inspectCached(
      { ...files, documents },
      rules,
      { today: start.today },
      new ResultCache(folder, "an edition"),
    );
    expect(again).toEqual(cold);
    expect(read).toEqual([]);
    await inspectCached({ ...files, documents }, rules, { today: "2027-01-11" }, new ResultCache(folder, "an edition"));
    expect(new Set(read).size).toBe(start.documents.size);
  });

  test("by another edition of Plumbmark is not looked at", async () => {
    const cache = new ResultCache(folder, "an edition");
    cache.entries.set("key", { value: 1 });
    cache.save();
    expect(new ResultCache(folder, "an edition").entries.get("key")).toEqual({ value: 1 });
    expect(new ResultCache(folder, "another edition").entries.get("key")).toBeUndefined();
  });
});

describe("a store", () => {
  test("that two runs share is whole after each of them", () => {
    const path = join(folder, "entries-shared");
    const [one, other] = [new Store(path), new Store(path)];
    one.set("a", 1);
    other.set("b", 2);
    one.save();
    other.save();
    expect(new Store(path).get("b")).toBe(2);
    expect(readdirSync(folder)).toEqual(["entries-shared"]);
  });

  test("in a place that cannot be written to is only empty", () => {
    writeFileSync(join(folder, "file"), "");
    const store = new Store(join(folder, "file", "entries-x"));
    store.set("a", 1);
    store.save();
    expect(store.get("a")).toBe(1);
    expect(new Store(join(folder, "file", "entries-x")).get("a")).toBeUndefined();
  });
});
