import { spawnSync } from "node:child_process";
import { chmodSync, cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { starterRepository } from "@plumbmark/starter";
import { expect, inject, test } from "vitest";
import { parse } from "yaml";
import { guidePages } from "../guide/pages.js";
import { oldForm } from "../old-form.js";
import { notEmpty } from "../run/not-empty.js";
import { command, env, scratch } from "./scratch.js";

// Many repositories, inspected as the guide says, with its own commands: by xargs, by GNU parallel as Debian packs it,
// and by the jobs of a matrix, one after another with the names a forge would give them.

const blocks = guidePages.find(({ name }) => name === "living-in-a-repository")?.blocks ?? [];
const shell = (word: string): string =>
  blocks.find(({ language, text }) => language === "sh" && text.includes(word))?.text ?? "";

/** GNU parallel is one script of Perl: the package needs no installing. Lists of packages are read into this folder. */
const FROM_DEBIAN = `
  mkdir -p apt/lists/partial apt/archives/partial
  own="-o Dir::State=$PWD/apt -o Dir::State::status=/var/lib/dpkg/status -o Dir::Cache=$PWD/apt"
  apt-get $own update && apt-get $own download parallel && dpkg --extract parallel_*.deb . && rm -r parallel_*.deb apt
`;

interface Job {
  readonly matrix?: { readonly REPOSITORY: readonly string[] };
  readonly script: readonly string[];
}

/** Two repositories of the starter's documents, one ready and one not, and the programs the commands call. */
function around() {
  const folder = scratch();
  const builds = { north: ["small-screen", "side-strips"], south: ["gala-wall"] };
  for (const [name, names] of Object.entries(builds)) {
    const to = join(folder, "repositories", name);
    mkdirSync(join(to, "builds"), { recursive: true });
    for (const each of ["parts", "stock.yaml", "letters"])
      cpSync(join(starterRepository, each), join(to, each), { recursive: true });
    for (const build of names) cpSync(join(oldForm, `builds/${build}.md`), join(to, `builds/${build}.md`));
    writeFileSync(join(to, "house-standard.yaml"), `house-standard: House of ${name}\npractice: us\n`);
  }
  const bin = join(folder, "bin");
  mkdirSync(bin);
  const programs = { plumbmark: `exec '${process.execPath}' '${command}' "$@"`, npx: 'exec "$@"', npm: "true" };
  for (const [name, line] of Object.entries(programs)) {
    writeFileSync(join(bin, name), `#!/bin/sh\n${line}\n`);
    chmodSync(join(bin, name), 0o755);
  }
  const run = (script: string, more: NodeJS.ProcessEnv = {}) =>
    spawnSync("bash", ["-c", script], {
      cwd: folder,
      encoding: "utf8",
      env: { ...env, HOME: folder, PATH: `${bin}:${join(folder, "usr/bin")}:${process.env.PATH}`, ...more },
    });
  return { folder, run };
}

/** What comes of joining both: three documents, of which the one with planted faults is not ready. */
function expectJoined(folder: string, { status, stdout }: { status: number | null; stdout: string }): void {
  expect(readdirSync(join(folder, "records")).sort()).toEqual(["north.json", "south.json"]);
  for (const build of ["north/builds/side-strips.md", "north/builds/small-screen.md", "south/builds/gala-wall.md"])
    expect(stdout).toContain(build);
  const record = JSON.parse(readFileSync(join(folder, "records/south.json"), "utf8"));
  expect(record.totals).toMatchObject({ documents: 1, ready: 0, "not-ready": 1 });
  expect(status).toBe(1);
}

test("by xargs", () => {
  const { folder, run } = around();
  expectJoined(folder, run(shell("xargs")));
});

test("by GNU parallel", (context) => {
  const { folder, run } = around();
  const isThere = () => run("parallel --version").stdout.startsWith("GNU parallel");
  // To fetch it takes longer than all else that is tested of git.
  if (!isThere() && inject("effort").deep) run(FROM_DEBIAN);
  context.skip(!isThere(), "GNU parallel is not installed here; a deep run fetches Debian's package of it");
  expectJoined(folder, run(shell("parallel")));
});

test("by the jobs of a matrix", () => {
  const { folder, run } = around();
  const { inspect, collate } = parse(
    blocks.find(({ language, text }) => language === "yaml" && text.includes("matrix"))?.text ?? "",
  ) as Readonly<Record<"inspect" | "collate", Job>>;
  for (const REPOSITORY of notEmpty(inspect.matrix?.REPOSITORY ?? []))
    for (const line of notEmpty(inspect.script)) expect(run(line, { REPOSITORY })).toMatchObject({ status: 0 });
  expectJoined(folder, run(collate.script.join("\n")));
});
