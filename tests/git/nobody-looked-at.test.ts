import { spawnSync } from "node:child_process";
import { delimiter } from "node:path";
import type { InspectionRecord } from "@plumbmark/core";
import { expect, test } from "vitest";
import { command, committed, env, type Repository, unborn } from "./scratch.js";

const BANNER = "builds/over-stage-banner.md";

const bare = {
  ...env,
  PATH: process.env.PATH?.split(delimiter)
    .filter((each) => !each.includes("node_modules"))
    .join(delimiter),
};

const git = (repository: Repository, ...words: string[]): { status: number | null; said: string } => {
  const { status, stdout, stderr } = spawnSync("git", words, { cwd: repository.folder, env: bare, encoding: "utf8" });
  return { status, said: stdout + stderr };
};

const hooked = (): Repository => {
  const repository = committed();
  const { status } = spawnSync(process.execPath, [command, "hook"], { cwd: repository.folder, env });
  expect(status).toBe(0);
  return repository;
};

/** Paths of build documents that no pattern matches. */
const UNMATCHED = ["builds/a.MD", "builds/b.markdown", "shows/c.md", "d.md", "builds/deep/e.mkd"];

test("a build document that no pattern matches is a finding, whatever its path", async () => {
  const repository = unborn();
  for (const [index, path] of UNMATCHED.entries())
    repository.write(path, repository.read(BANNER).replace("build: over-stage-banner", `build: other-${index}`));
  const told = JSON.parse((await repository.plumbmark("inspect", "--as", "json")).out) as InspectionRecord;
  const found = UNMATCHED.map((path) => told.documents.find(({ file }) => file === path));
  expect(found.map((each) => [each?.file, each?.verdict])).toEqual(UNMATCHED.map((path) => [path, "not ready"]));
  for (const each of found) expect(each?.checks.map(({ says }) => says)).toContainEqual(expect.stringMatching(NOBODY));
  const { out, status } = await repository.plumbmark("inspect");
  expect(status).toBe(1);
  expect(out.replace(/\s+/gu, " ")).toMatch(NOBODY);
});
const NOBODY = /no pattern of the house standard matches its path: nobody would look/u;

test("one that was meant to be is a finding, other Markdown is none, and what is left out by name is left out", async () => {
  const repository = unborn();
  repository.write("shows/meant.md", "---\nBuild: a\nstatus: for-build\n---\n");
  repository.write("shows/notes.md", "# Notes\n");
  repository.write("shows/blog.md", "---\ntitle: A blog\n---\n\nbuild: text\n");
  expect(Object.keys(await repository.verdicts()).filter((path) => path.startsWith("shows/"))).toEqual([
    "shows/meant.md",
  ]);
  repository.change("house-standard.yaml", 'documents: ["builds/**/*.md"', 'documents: ["builds/**/*.md", "!shows/**"');
  expect(Object.keys(await repository.verdicts()).filter((path) => path.startsWith("shows/"))).toEqual([]);
});

test("a commit in which a document leaves the patterns is refused", () => {
  const repository = hooked();
  repository.git("mv", BANNER, "over-stage-banner.md");
  const { status, said } = git(repository, "commit", "--quiet", "--message", "Away");
  expect(status).not.toBe(0);
  expect(said).toContain("over-stage-banner.md");
});

test("a merge that makes a commit is guarded, and hook says what it cannot guard", () => {
  const repository = hooked();
  repository.git("checkout", "--quiet", "-b", "side");
  repository.change(BANNER, "breaker: 20 A", "breaker: 1 A");
  repository.commit();
  repository.git("checkout", "--quiet", "main");
  repository.write("NOTES.txt", "Something else\n");
  repository.commit();
  const { status, said } = git(repository, "merge", "--no-edit", "side");
  expect(status).not.toBe(0);
  expect(said).toContain("power.circuit-load");
  const told = spawnSync(process.execPath, [command, "hook"], { cwd: repository.folder, env, encoding: "utf8" });
  expect(told.stdout).toMatch(/pre-merge-commit/u);
  for (const unguarded of ["--no-verify", "forward", "rebase", "cherry-pick", "push"])
    expect(told.stdout).toContain(unguarded);
});

test("a changed plugin, or a lock file of what it uses, has all documents judged", async () => {
  const repository = committed();
  repository.write(
    "house-rules/none.mjs",
    "import { plugin } from '@plumbmark/kit';\nexport default plugin({ kit: 1, rules: [] });\n",
  );
  repository.write("yarn.lock", "# one\n");
  // Two show it as well as all of them.
  for (const name of ["riser-fascias", "side-strips", "over-stage-banner"]) repository.remove(`builds/${name}.md`);
  repository.change("house-standard.yaml", "practice: us", 'practice: us\nrules-from: ["./house-rules/none.mjs"]');
  repository.commit();
  const all = Object.keys(await repository.verdicts("--no-plugins")).filter((path) => path.startsWith("builds/"));
  const staged = async (path: string) => {
    repository.write(path, `${repository.read(path)}\n`);
    repository.git("add", path);
    const { out } = await repository.plumbmark("inspect", "--staged", "--no-plugins", "--as", "json");
    repository.git("reset", "--quiet", "--hard");
    return (JSON.parse(out) as InspectionRecord).documents.map(({ file }) => file);
  };
  expect(all.length).toBeGreaterThan(1);
  for (const path of ["house-rules/none.mjs", "yarn.lock"]) expect(await staged(path)).toEqual(all);
});
