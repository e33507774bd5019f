import { spawnSync } from "node:child_process";
import { cp, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type InspectionRecord, schemas } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { plumbmark, type Told } from "../../../../tests/plumbmark.js";
import { notEmpty } from "../../../../tests/run/not-empty.js";
import { partForm, partKinds } from "../starting/forms/part-form.js";

let top: string;
beforeEach(async () => {
  top = await mkdtemp(join(tmpdir(), "plumbmark-start-"));
});
afterEach(() => rm(top, { recursive: true, force: true }));

const run = (folder: string, ...words: string[]): Promise<Told> => plumbmark(join(top, folder), words);
const read = (path: string): Promise<string> => readFile(join(top, path), "utf8");
const put = async (path: string, text: string): Promise<void> => {
  await mkdir(join(top, path, ".."), { recursive: true });
  await writeFile(join(top, path), text);
};
const verdicts = async (folder: string): Promise<Readonly<Record<string, string>>> => {
  const { out } = await run(folder, "inspect", "--no-plugins", "--as", "json");
  const { documents } = JSON.parse(out) as InspectionRecord;
  return Object.fromEntries(documents.map(({ file, verdict }) => [file, verdict]));
};

/** What a living repository needs, beside the documents. */
const LIVING = [".gitignore", "house-standard.yaml", "package.json", "pipeline"];

describe("start, where people stand", () => {
  it("in a folder git has just begun", async () => {
    spawnSync("git", ["init", "--quiet"], { cwd: top });
    const { status, out } = await run("", "start", ".");
    expect(status).toBe(0);
    expect(out).toContain("npm install");
    expect(await readdir(top)).toEqual(expect.arrayContaining([".git", "builds", ...LIVING]));
    expect((await run("", "inspect", "--no-plugins", "builds/small-screen.md")).status).toBeLessThan(2);
  });

  it("beside package.json and node_modules, which stay as they are", async () => {
    await put("package.json", '{ "name": "venue-papers" }\n');
    await put("node_modules/x/index.js", "1;\n");
    await put("README.md", "# Ours\n");
    const { status, out } = await run("", "start", ".");
    expect(status).toBe(0);
    expect(out).toContain("Left as it was: README.md, package.json");
    expect(out).toMatch(/npm install --save-dev --save-exact plumbmark@\d/u);
    expect(await read("package.json")).toBe('{ "name": "venue-papers" }\n');
    expect(await read("README.md")).toBe("# Ours\n");
    expect(await readdir(join(top, "node_modules"))).toEqual(["x"]);
    expect(await readdir(top)).toContain("house-standard.yaml");
  });

  it("in the docs of a larger repository, without a file of a pipeline nobody would look at", async () => {
    spawnSync("git", ["init", "--quiet"], { cwd: top });
    spawnSync("git", ["remote", "add", "origin", "git@github.com:nobody/nothing.git"], { cwd: top });
    await put("docs/notes.md", "# Notes\n");
    expect((await run("docs", "start", ".")).status).toBe(0);
    expect(await readdir(join(top, "docs"))).toEqual(expect.arrayContaining(["notes.md", "builds", ...LIVING]));
    expect(await readdir(join(top, "docs"))).not.toContain(".github");
    expect(await readdir(top)).toEqual(expect.arrayContaining([".git", "docs"]));
  });

  it.each([
    ["git@github.com:nobody/nothing.git", ".github/workflows/plumbmark.yml"],
    ["https://gitlab.com/nobody/nothing.git", ".gitlab-ci.yml"],
  ])("with the pipeline file of the forge at %s", async (address, path) => {
    spawnSync("git", ["init", "--quiet"], { cwd: top });
    spawnSync("git", ["remote", "add", "origin", address], { cwd: top });
    await run("", "start", ".");
    expect(JSON.stringify(parse(await read(path)))).toContain("pipeline/inspect.sh");
    expect(await read("pipeline/inspect.sh")).toContain("--as sarif");
  });

  it("in iec practice: builds of that practice alone, and each ready", async () => {
    expect((await run("", "start", "metric", "--practice", "iec")).status).toBe(0);
    expect(await read("metric/house-standard.yaml")).toMatch(/^practice: iec$/mu);
    const found = await verdicts("metric");
    expect(Object.keys(found).length).toBeGreaterThan(0);
    for (const name of notEmpty(await readdir(join(top, "metric/venues"))))
      expect(await read(`metric/venues/${name}`)).toMatch(/^practice: iec$/mu);
    // Its own rules are not asked here, and that alone is open.
    const { out } = await run("metric", "inspect", "--no-plugins", "--as", "json");
    const against = (JSON.parse(out) as InspectionRecord).documents.flatMap(({ checks }) =>
      checks.filter(({ level, outcome }) => level === "shall" && (outcome === "fails" || outcome === "open")),
    );
    expect([...new Set(against.map(({ rule }) => rule))]).toEqual(["plugin.failed"]);
  });

  it("says to an editor which schema a file has", async () => {
    await run("", "start", "new");
    for (const path of ["house-standard.yaml", "stock.yaml", "parts/panels.yaml"])
      expect(await read(`new/${path}`)).toMatch(/\n# yaml-language-server: \$schema=\S+\.schema\.json\n$/u);
  });

  it("is refused in a docs repository and below one", async () => {
    await run("", "start", "new");
    for (const folder of ["new", "new/builds"]) {
      const before = await readdir(join(top, folder));
      const { status, err } = await run(folder, "start", ".");
      expect(status).toBe(2);
      expect(err).toContain("docs repository");
      expect(await readdir(join(top, folder))).toEqual(before);
    }
  });

  it("writes nothing through a link that leads out of the folder", async () => {
    await mkdir(join(top, "elsewhere"));
    await mkdir(join(top, "here"));
    await put("here/notes.txt", "x");
    await symlink("../elsewhere", join(top, "here/parts"));
    const { status, err } = await run("here", "start", ".");
    expect(status).toBe(2);
    expect(err).toContain("a link leads there");
    expect(await readdir(join(top, "elsewhere"))).toEqual([]);
    expect((await readdir(join(top, "here"))).toSorted()).toEqual(["notes.txt", "parts"]);
  });

  it.each([
    [["start", "new", "--practice", "uk"], /practice `uk`/u],
    [["start", "new", "--forge", "elsewhere"], /pipeline is known/u],
    [["start", "new", "old"], /one word too many/u],
    [["start", "build"], /The new build has no name/u],
    [["start", "part"], /The new part has no name/u],
    [["start", "build", "x"], /no docs repository here/u],
  ])("%j is refused", async (words, says) => {
    const { status, err } = await run("", ...words);
    expect(status).toBe(2);
    expect(err).toMatch(says);
    expect(await readdir(top)).toEqual([]);
  });
});

describe("start build, start part", () => {
  beforeEach(() => cp(starterRepository, top, { recursive: true }));

  it("a build is a draft that can be inspected, and asks for what it lacks", async () => {
    const { status } = await run("builds", "start", "build", "spring-banner", "--venue", "Old hall");
    expect(status).toBe(0);
    const text = await read("builds/spring-banner.md");
    expect(text).toContain("venue: Old hall");
    const { status: told, out } = await run("", "inspect", "--no-plugins", "builds/spring-banner.md", "--as", "json");
    const [entry] = (JSON.parse(out) as InspectionRecord).documents;
    expect([told, entry?.verdict]).toEqual([0, "draft"]);
    expect(entry?.checks.filter(({ outcome }) => outcome === "fails")).toEqual([]);
    expect(entry?.checks.filter(({ outcome }) => outcome === "open").length).toBeGreaterThan(10);
  });

  it("every key of a build stands in it", async () => {
    await run("", "start", "build", "spring-banner");
    const text = await read("builds/spring-banner.md");
    // An older form, and what `approve` writes.
    for (const key of notEmpty(Object.keys((schemas.buildSchema as { properties: object }).properties)))
      if (!["approved-by", "approved"].includes(key)) expect(text).toMatch(new RegExp(`^#?${key}:`, "mu"));
  });

  it.each(notEmpty(partKinds))("a form of one, %s, is a part, and shows every key of its kind", async (kind) => {
    expect((await run("", "start", "part", "x-new", "--kind", kind)).status).toBe(0);
    const text = await read("parts/x-new.yaml");
    expect(text).toBe(partForm("x-new", kind));
    const node = Object.values(
      (
        schemas.partsSchema as {
          $defs: Record<string, { required?: string[]; properties?: Record<string, { const?: string }> }>;
        }
      ).$defs,
    ).find(({ properties }) => properties?.kind?.const === kind);
    // What it is nothing without is there, and empty.
    const needed = (node?.required ?? []).filter((key) => key !== "kind");
    expect(parse(text)).toEqual({ "x-new": { kind, ...Object.fromEntries(needed.map((key) => [key, []])) } });
    for (const key of notEmpty(Object.keys(node?.properties ?? {})))
      expect(text).toMatch(new RegExp(`^  #?${key}:`, "mu"));
    // A key is where it belongs once its mark is taken away.
    const keys = Object.keys((parse(text.replace(/^( +)#/gmu, "$1")) as { "x-new": object })["x-new"]);
    expect(keys.toSorted()).toEqual(Object.keys(node?.properties ?? {}).toSorted());
  });

  it("nothing is found against a form of any kind", async () => {
    for (const kind of notEmpty(partKinds))
      expect((await run("", "start", "part", `x-new-${kind}`, "--kind", kind)).status).toBe(0);
    expect((await readdir(join(top, "parts"))).filter((name) => name.startsWith("x-new-"))).toHaveLength(
      partKinds.length,
    );
    const { status, out } = await run("", "inspect", "--no-plugins", "builds/small-screen.md");
    expect(status).toBeLessThan(2);
    expect(out).not.toContain("x-new-");
  });

  it("nothing is written over", async () => {
    await run("", "start", "build", "mine");
    await put("builds/mine.md", "mine");
    const { status, err } = await run("", "start", "build", "mine");
    expect([status, await read("builds/mine.md")]).toEqual([2, "mine"]);
    expect(err).toContain("is there already");
  });

  it("a survey that is inspected alone is told to be one, and what judges it", async () => {
    await run("", "start", "venue", "heron-hall");
    const { status, err } = await run("", "inspect", "venues/heron-hall.md");
    expect(status).toBe(2);
    expect(err).toContain("venues/heron-hall.md is a survey, and nothing in it is written wrongly.");
    expect((await run("", "inspect", "stock.yaml")).err).toContain("stock.yaml is a file of the holdings");
    expect((await run("", "inspect", "house-standard.yaml")).err).toContain("is the house standard");
  });

  it.each([
    [["start", "build", "Spring Banner"], /no name of a build[\s\S]*such as `spring-banner`/u],
    [["start", "venue", "Haus Österwald 2"], /no name of a venue[\s\S]*such as `haus-osterwald-2`/u],
    [["start", "wish", "?"], /no name of a wish[\s\S]*such as `spring-banner`/u],
    [["start", "build", "x", "--panel", "tile-nowhere"], /no panel `tile-nowhere`/u],
    [["start", "part", "x", "--kind", "wheel"], /no kind of part `wheel`/u],
    [["start", "part", "../x"], /no name of a part/u],
  ])("%j is refused", async (words, says) => {
    const { status, err } = await run("", ...words);
    expect(status).toBe(2);
    expect(err).toMatch(says);
  });
});
