import { mkdirSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { some } from "../../run/some.js";
import { docs, EVERY, run, scratch, seed, tree } from "./command.js";

// Places a site may not go to: each is refused with status 2, and nothing in it is touched.

function places(): string {
  const folder = scratch();
  docs(join(folder, "docs"));
  writeFileSync(join(folder, "file"), "keep");
  mkdirSync(join(folder, "theirs/deep"), { recursive: true });
  writeFileSync(join(folder, "theirs/deep/letter.txt"), "keep");
  symlinkSync("theirs", join(folder, "link"));
  symlinkSync("/nowhere/at/all", join(folder, "dangling"));
  symlinkSync("loop", join(folder, "loop"));
  return folder;
}

const targets: readonly (readonly [string, string])[] = [
  ["the docs repository", "docs"],
  ["the folder above it", "."],
  ["a folder of it with something in it", "docs/builds"],
  ["a file", "file"],
  ["a file on the way", "file/site"],
  ["somebody's folder", "theirs"],
  ["a link", "link"],
  ["a link to nothing", "dangling"],
  ["a link to itself", "loop"],
  ["a place below a link to itself", "loop/site"],
  ["the whole disk", "/"],
  ["a name that is too long", "x".repeat(300)],
  ["where no folder can be made", "/proc/site"],
];

test.each(notEmpty(EVERY ? targets : some(targets, 6, seed)))("%s is refused", { timeout: 60_000 }, (_, to) => {
  const folder = places();
  const before = tree(folder);
  const { status, err } = run(folder, ["publish", "docs", "--to", to]);
  expect([status, err.trim().split("\n").length], err).toEqual([2, 2]);
  expect(err).not.toContain("mistake in Plumbmark");
  expect(tree(folder)).toEqual(before);
});

test("a docs repository comes into the folder somebody stands in, which stays the same folder", () => {
  const folder = scratch();
  const { ino } = statSync(folder);
  expect(run(folder, ["start", "."])).toMatchObject({ status: 0, err: "" });
  expect(statSync(folder).ino).toBe(ino);
  expect(Object.keys(tree(folder))).toContain("house-standard.yaml");
});
