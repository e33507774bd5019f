import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type InspectionRecord, schemas } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import Ajv2020 from "ajv/dist/2020.js";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { plumbmark, type Told } from "../../../../tests/plumbmark.js";
import { notEmpty } from "../../../../tests/run/not-empty.js";
import { copyStarter } from "../../../../tests/starter.js";

// What is checked here is the contract of the command: exit status 0 ready, 1 not ready, 2 could not be carried out,
// and a message that says what to do. The figures of an inspection are checked against their sources elsewhere.

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "plumbmark-"));
});

afterEach(() => rm(folder, { recursive: true, force: true }));

const run = (...words: string[]): Promise<Told> => plumbmark(folder, words);

const put = async (path: string, content: string | Uint8Array): Promise<void> => {
  await mkdir(join(folder, path, ".."), { recursive: true });
  await writeFile(join(folder, path), content);
};

const record = (out: string): InspectionRecord => JSON.parse(out) as InspectionRecord;

describe("a command line that cannot be carried out", () => {
  const wrong: readonly (readonly [words: string[], says: RegExp])[] = [
    [[], /No command was given/u],
    [["inspekt"], /inspect/u],
    [["help", "inspekt"], /no command `inspekt`/u],
    [["inspect", "--al"], /--as/u],
    [["inspect", "--as", "poem"], /text, json/u],
    [["inspect", "nowhere.md"], /no file or folder `nowhere\.md`/u],
    [["inspect"], /no build document/u],
    [["rules", "power.circut-load"], /Did you mean `power\.circuit-load`/u],
    [["workings", "."], /is a folder/u],
    [["start"], /what/u],
  ];
  it.each(wrong)("%j ends with status 2 and says what is wrong", async (words, says) => {
    const { status, out, err } = await run(...words);
    expect(status).toBe(2);
    expect(out).toBe("");
    expect(err).toMatch(says);
    expect(err).not.toMatch(/^\s+at /mu);
  });
});

describe("a file that cannot be inspected", () => {
  const files: readonly (readonly [name: string, content: string | Uint8Array, says: RegExp])[] = [
    ["an empty one", "", /empty/u],
    ["one of 20 MB", new Uint8Array(20_000_000).fill(97), /20\.0 MB/u],
    ["a binary one", new Uint8Array([80, 0, 1, 2]), /not text/u],
    ["one in UTF-16", new Uint8Array([0xff, 0xfe, 45, 0]), /UTF-16/u],
    // RFC 3629: the byte E9 begins a sequence of three and cannot end a text.
    ["one that is not UTF-8", new Uint8Array([97, 0xe9]), /UTF-8/u],
    ["one with broken YAML", "---\nbuild: [a\n---\n", /bracket `\[` is not closed/u],
    ["one whose key is misspelt", "---\nbiuld: a\nfaces: {}\n---\n", /biuld/u],
  ];
  it.each(files)("%s is an entry that is not ready", async (_, content, says) => {
    await put("banner.md", content);
    const { status, out, err } = await run("inspect", "banner.md");
    expect(status).toBe(1);
    expect(out).toMatch(says);
    expect(out).toContain("Not ready.");
    expect(err).toBe("");
  });

  it("is found among the documents of a docs repository, too", async () => {
    copyStarter(folder);
    await put("builds/photo.md", new Uint8Array([0, 0]));
    const { documents } = record((await run("inspect", "--as", "json")).out);
    expect(documents.find(({ file }) => file === "builds/photo.md")?.verdict).toBe("not ready");
  });

  it("is trouble when it is the house standard", async () => {
    await put("house-standard.yaml", "house-standard: [");
    await put("builds/a.md", "---\nbuild: a\n---\n");
    const { status, err } = await run("inspect");
    expect(status).toBe(2);
    expect(err).toMatch(/house-standard\.yaml.*\n.*line 1/u);
  });
});

describe("a house standard", () => {
  it("that sets a rule nobody knows is trouble, with the nearest rule", async () => {
    await put("house-standard.yaml", "house-standard: House\nrequirements:\n  power.circut-load: {level: none}\n");
    await put("builds/a.md", "---\nbuild: a\n---\n");
    const { status, err } = await run("inspect");
    expect(status).toBe(2);
    expect(err).toContain("Did you mean `power.circuit-load`");
  });

  it("brings the rules of its plugins", async () => {
    const yields =
      '*checks() { yield { at: "", form: "plain", holds: false, says: () => "Not in our house.", mend: "Mend it." }; }';
    const stated = 'id: "house.own", states: "S.", level: "shall", why: "W.", judged: "J.", sources: ["house"]';
    const plugin = `export default { kit: 1, rules: [{ ${stated}, ${yields} }] };`;
    await put("house-rules/index.mjs", plugin);
    await put("house-standard.yaml", 'house-standard: House\nrules-from: ["./house-rules/index.mjs"]\n');
    await put("builds/a.md", "---\nbuild: a\n---\n");
    expect((await run("inspect")).out).toContain("Not in our house.");
    expect((await run("rules", "house.own")).out).toContain("./house-rules/index.mjs");
    expect((await run("inspect", "--no-plugins")).out).not.toContain("Not in our house.");
  });

  it("with a plugin that breaks is inspected without it, and not as if nothing were wrong", async () => {
    await put("house-rules/index.mjs", 'throw new Error("broken on purpose");');
    await put("house-standard.yaml", 'house-standard: House\nrules-from: ["./house-rules/index.mjs"]\n');
    await put("builds/a.md", "---\nbuild: a\n---\n");
    const { status, out, err } = await run("inspect", "--as", "gnu");
    expect(status).toBe(2);
    expect(out).toMatch(/plugin\.failed.*house-rules\/index\.mjs.*broken on purpose/u);
    expect(out).toContain("document.sections");
    expect(err).toContain("./house-rules/index.mjs failed");
  });

  const nowhere: readonly (readonly [what: string, name: string, says: RegExp])[] = [
    ["that is not there", "./house-rules/none.mjs", /house-standard\.yaml:3:5: there is no plugin/u],
    [
      "outside the docs repository",
      "../../etc/hosts",
      /house-standard\.yaml:3:5: (there is no plugin|the plugin .* is outside)/u,
    ],
    ["that is not compiled", "./house-rules/index.ts", /house-standard\.yaml:3:5: .* is TypeScript/u],
  ];
  it.each(nowhere)("with a plugin %s is trouble, with its place", async (_, name, says) => {
    await put("house-rules/index.ts", "export default 1;");
    await put("house-standard.yaml", `house-standard: House\nrules-from:\n  - ${name}\n`);
    await put("builds/a.md", "---\nbuild: a\n---\n");
    const { status, err } = await run("inspect");
    expect(status).toBe(2);
    expect(err).toMatch(says);
  });

  it("that sets a plugin's rule wrongly is trouble, with the place and what may stand there", async () => {
    const stated = 'id: "house.own", states: "S.", level: "shall", why: "W.", judged: "J.", sources: ["house"]';
    const most = 'most: { us: 5, iec: 5, kind: "mass", describe: "most mass", schema: { maximum: 9 } }';
    const settings = `settings: { ${most} }, checks: () => []`;
    await put("house-rules/index.mjs", `export default { kit: 1, rules: [{ ${stated}, ${settings} }] };`);
    const standard = (entry: string): string =>
      `house-standard: House\nrules-from: ["./house-rules/index.mjs"]\nrequirements:\n  house.own: {${entry}}\n`;
    await put("builds/a.md", "---\nbuild: a\n---\n");
    for (const [entry, says] of [
      ["most: 5 m", /house-standard\.yaml:4:\d+: .*`5 m`, which is a length/u],
      ["most: 10 kg", /house-standard\.yaml:4:\d+: .*`10 kg`.*at most 9 \(kg\)/u],
      ["least: 5 kg", /house-standard\.yaml:4:\d+: house\.own has no setting `least`/u],
    ] as const) {
      await put("house-standard.yaml", standard(entry));
      const { status, err } = await run("inspect");
      expect(status).toBe(2);
      expect(err).toMatch(says);
    }
  });

  it("may not name files outside its folder", async () => {
    await put("house-standard.yaml", 'house-standard: House\ndocuments: ["../**/*.md"]\n');
    expect((await run("inspect")).status).toBe(2);
  });
});

/** One that is not ready, one that is and a small one: more of them show nothing more. */
const KEPT = ["gala-wall.md", "gallery-header.md", "small-screen.md"];

describe("a docs repository", () => {
  beforeEach(async () => {
    copyStarter(folder);
    for (const name of await readdir(join(folder, "builds")))
      if (!KEPT.includes(name)) await rm(join(folder, "builds", name));
  });

  it("gives a record that follows its published schema", async () => {
    const { out } = await run("inspect", "--as", "json", "--every");
    const ajv = new Ajv2020({ strict: false });
    const follows = ajv.validate(schemas.recordSchema, JSON.parse(out));
    expect(ajv.errors).toBeNull();
    expect(follows).toBe(true);
  });

  it("is not ready while one of its documents is not", async () => {
    const { status, out } = await run("inspect", "--as", "json");
    expect(record(out).totals["not-ready"]).toBeGreaterThan(0);
    expect(status).toBe(1);
  });

  it("lists what was asked for, with totals that add up", async () => {
    const all = record((await run("inspect", "--as", "json")).out);
    const asked = record((await run("inspect", "--as", "json", "builds/small-screen.md")).out);
    expect(asked.documents).toEqual(all.documents.filter(({ file }) => file === "builds/small-screen.md"));
    expect(asked.totals.checks).toBe(asked.documents[0]?.counts.checks);
    expect(asked.totals.documents).toBe(1);
  });

  it("lists every check when asked to", async () => {
    const { documents } = record((await run("inspect", "--as", "json", "--every")).out);
    for (const { checks, counts } of notEmpty(documents)) expect(checks).toHaveLength(counts.checks);
  });

  it("leaves other Markdown alone", async () => {
    await put("builds/notes.md", "# Notes\n");
    const { documents } = record((await run("inspect", "--as", "json")).out);
    expect(documents.map(({ file }) => file)).not.toContain("builds/notes.md");
    expect((await run("inspect", "builds/notes.md")).status).toBe(2);
  });

  it("is found from a folder inside it", async () => {
    const { out } = await run("inspect", "--as", "json", "builds");
    expect(record(out).standard).toMatch(/edition/u);
  });

  it("closes the report with what it does not replace", async () => {
    const { out } = await run("inspect");
    expect(out.replace(/\s+/gu, " ")).toContain("does not replace, local codes, the maker's instructions");
    for (const line of out.split("\n")) expect([...line].length).toBeLessThanOrEqual(100);
  });

  it("shows computed values by path", async () => {
    const { status, out } = await run("workings", "builds/small-screen.md", "faces", "--as", "json");
    expect(status).toBe(0);
    expect(Object.keys(JSON.parse(out) as object).every((path) => path.startsWith("faces."))).toBe(true);
  });
});

describe("start", () => {
  it("copies the starter into a new folder and nothing beside it", async () => {
    expect((await run("start", "mine")).status).toBe(0);
    expect(await readdir(folder)).toEqual(["mine"]);
    const copied = await readFile(join(folder, "mine", "house-standard.yaml"), "utf8");
    expect(copied.startsWith(await readFile(join(starterRepository, "house-standard.yaml"), "utf8"))).toBe(true);
  });

  it("leaves what is in the folder as it is", async () => {
    await put("mine/stock.yaml", "keep me");
    expect((await run("start", "mine")).status).toBe(0);
    expect(await readFile(join(folder, "mine/stock.yaml"), "utf8")).toBe("keep me");
  });

  it("takes an empty folder", async () => {
    await mkdir(join(folder, "mine"));
    expect((await run("start", "mine")).status).toBe(0);
    expect(await readdir(join(folder, "mine"))).toContain("builds");
  });
});
