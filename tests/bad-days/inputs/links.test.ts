import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { InspectionRecord } from "@plumbmark/core";
import { expect, test } from "vitest";
import { plumbmark } from "../../plumbmark.js";
import { copyStarter } from "../../starter.js";
import { repository } from "./nobody.js";

const said = async (folder: string, ...words: string[]): Promise<Readonly<Record<string, string>>> => {
  const { out, err } = await plumbmark(folder, ["inspect", "--as", "json", ...words]);
  if (out === "") throw new Error(err);
  const { documents } = JSON.parse(out) as InspectionRecord;
  return Object.fromEntries(documents.map(({ file, checks }) => [file, checks[0]?.says ?? ""]));
};

test("links that lead nowhere, round in a circle or outside are told, and nothing waits for what is no file", async () => {
  const folder = repository();
  const link = (to: string, path: string): void => symlinkSync(to, join(folder, path));
  link("self.md", "builds/self.md");
  link("two.md", "builds/one.md");
  link("one.md", "builds/two.md");
  link("nowhere", "builds/dangling.md");
  link("/etc/hostname", "builds/out.md");
  link("/dev/zero", "builds/zero.md");
  link("/etc", "builds/outside");
  link("..", "builds/up");
  link(".", "parts/here");
  execFileSync("mkfifo", [join(folder, "builds/fifo.md"), join(folder, "parts/fifo.yaml")]);
  mkdirSync(join(folder, "builds/folder.md"));
  const found = await said(folder);
  expect(found).toMatchObject({
    "builds/self.md": "The link leads back to itself.",
    "builds/one.md": "The link leads back to itself.",
    "builds/two.md": "The link leads back to itself.",
    "builds/dangling.md": "The link leads nowhere.",
    "builds/out.md": "The link leads outside the docs repository.",
    "builds/zero.md": "The link leads outside the docs repository.",
    "builds/outside": "The link leads outside the docs repository.",
    "builds/up": "The link leads back to a folder it stands in.",
    "builds/fifo.md": "This is not a file.",
    "parts/fifo.yaml": "This is not a file.",
  });
  expect(Object.keys(found).filter((file) => file.startsWith("builds/up/"))).toEqual([]);
});

test("a folder is read once, whatever links lead to it, from the disk and from git", async () => {
  const folder = repository();
  mkdirSync(join(folder, "archive"));
  const text = readFileSync(join(folder, "builds/small-screen.md"), "utf8").replace(/^build: .*/mu, "build: older");
  writeFileSync(join(folder, "archive/older.md"), text);
  symlinkSync("../archive", join(folder, "builds/2026"));
  symlinkSync("../builds", join(folder, "archive/again"));
  symlinkSync("..", join(folder, "builds/up"));
  const names = (found: object) => Object.keys(found).filter((file) => /older|again|up/u.test(file));
  expect(names(await said(folder))).toEqual(["builds/2026/older.md", "builds/up"]);
  execFileSync("git", ["init", "--quiet"], { cwd: folder });
  execFileSync("git", ["add", "--all"], { cwd: folder });
  const { err } = await plumbmark(folder, ["inspect", "--staged"]);
  expect(err).toBe("");
});

test.each([
  ["a pipe", (path: string) => void execFileSync("mkfifo", [path])],
  ["a folder", (path: string) => void mkdirSync(path)],
  ["a link that leads nowhere", (path: string) => symlinkSync("nowhere", path)],
  ["a link to itself", (path: string) => symlinkSync("house-standard.yaml", path)],
  ["a link that leads outside", (path: string) => symlinkSync("/etc/hostname", path)],
])("a house standard that is %s is trouble: by the defaults the documents would be judged wrongly", async (_, put) => {
  const folder = repository();
  rmSync(join(folder, "house-standard.yaml"));
  put(join(folder, "house-standard.yaml"));
  const { status, out, err } = await plumbmark(folder, ["inspect"]);
  expect([status, out]).toEqual([2, ""]);
  expect(err).toContain("The house standard house-standard.yaml cannot be read.");
});

test("an edition outside the docs repository is not read", async () => {
  const folder = repository();
  const inner = join(folder, "inner");
  copyStarter(inner);
  execFileSync("git", ["init", "--quiet"], { cwd: inner });
  const standard = join(inner, "house-standard.yaml");
  const text = readFileSync(standard, "utf8").replace(/^in-force: .*\n/mu, "");
  writeFileSync(standard, `${text}\nin-force: 2099-01-01\nreplaces: ../house-standard.yaml\n`);
  const { status, err } = await plumbmark(inner, ["inspect"]);
  expect(status).toBe(2);
  expect(err).toMatch(/house-standard\.yaml:\d+:11: .*It lies outside the docs repository/u);
});
