import { spawnSync } from "node:child_process";
import { cp, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { starterRepository } from "@plumbmark/starter";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { plumbmark, type Told } from "../../../../tests/plumbmark.js";

let top: string;

beforeEach(async () => {
  top = await mkdtemp(join(tmpdir(), "plumbmark-"));
  await cp(starterRepository, top, { recursive: true });
  // What an install of the command into the docs repository would put there.
  await symlink(fileURLToPath(new URL("../../../../node_modules", import.meta.url)), join(top, "node_modules"));
});

afterEach(() => rm(top, { recursive: true, force: true }));

const run = (folder: string, ...words: string[]): Promise<Told> => plumbmark(join(top, folder), words);

const tested = (file: string) =>
  spawnSync(process.execPath, ["--test", file], {
    cwd: top,
    encoding: "utf8",
    env: { ...process.env, NODE_OPTIONS: "" },
  });

describe("start rule", () => {
  it("writes a rule whose test passes at once, from anywhere in the docs repository", async () => {
    const { status, out } = await run("builds", "start", "rule", "two-riggers");
    expect(status).toBe(0);
    expect(out).toContain("./house-rules/two-riggers/plugin.mjs");
    const { status: passed, stdout } = tested("house-rules/two-riggers/rule.test.mjs");
    expect(stdout).toMatch(/^# pass 4$/mu);
    expect(passed).toBe(0);
    expect(await readFile(join(top, "house-rules/two-riggers/rule.mjs"), "utf8")).toContain('id: "house.two-riggers"');
  });

  it("the test fails when the rule no longer does what its cases say", async () => {
    await run("", "start", "rule", "rigging.two-riggers");
    const path = join(top, "house-rules/rigging-two-riggers/rule.mjs");
    await writeFile(path, (await readFile(path, "utf8")).replace("us: 3.048", "us: 0.5"));
    expect(tested("house-rules/rigging-two-riggers/rule.test.mjs").status).toBe(1);
  });

  it("never overwrites", async () => {
    await mkdir(join(top, "house-rules/mine"), { recursive: true });
    await writeFile(join(top, "house-rules/mine/notes.txt"), "keep me");
    const { status, err } = await run("", "start", "rule", "mine");
    expect(status).toBe(2);
    expect(err).toContain("is there already");
    expect(await readdir(join(top, "house-rules/mine"))).toEqual(["notes.txt"]);
  });

  it("leaves the house standard as it is and says what to write", async () => {
    const standard = await readFile(join(top, "house-standard.yaml"), "utf8");
    await run("", "start", "rule", "mine");
    expect(await readFile(join(top, "house-standard.yaml"), "utf8")).toBe(standard);
  });

  it.each([
    [["start", "rule"], /no name/u],
    [["start", "rule", "Two Riggers"], /no name of a rule/u],
    [["start", "rule", "power.circuit-load"], /built-in rule/u],
    [["start", "mine", "too"], /one word too many/u],
  ])("%j is refused", async (words, says) => {
    const { status, err } = await run("", ...words);
    expect(status).toBe(2);
    expect(err).toMatch(says);
  });

  it("is refused outside a docs repository", async () => {
    await rm(join(top, "house-standard.yaml"));
    expect((await run("", "start", "rule", "mine")).err).toMatch(/no docs repository here/u);
  });
});

it("the starter's own rule passes its test", () =>
  expect(tested("house-rules/turnaround/rule.test.mjs").status).toBe(0));
