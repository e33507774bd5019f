import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { writeInPlace } from "./file.js";

let top: string;
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), "in-place-"));
});
afterEach(() => rmSync(top, { recursive: true, force: true }));

test("a file is written with the folders above it, and nothing is left beside", () => {
  writeInPlace(join(top, "a/b/file"), "one");
  writeInPlace(join(top, "a/b/file"), "two");
  expect(readFileSync(join(top, "a/b/file"), "utf8")).toBe("two");
  expect(readdirSync(join(top, "a/b"))).toEqual(["file"]);
});

test("a link is replaced, and what it leads to stays", () => {
  writeFileSync(join(top, "theirs"), "keep");
  symlinkSync(join(top, "theirs"), join(top, "file"));
  writeInPlace(join(top, "file"), "ours");
  expect([readFileSync(join(top, "theirs"), "utf8"), readFileSync(join(top, "file"), "utf8")]).toEqual([
    "keep",
    "ours",
  ]);
});

test("what is there stays where only a new file is wanted", () => {
  writeFileSync(join(top, "file"), "keep");
  expect(() => writeInPlace(join(top, "file"), "ours", { onlyNew: true })).toThrow(/EEXIST/u);
  expect(readFileSync(join(top, "file"), "utf8")).toBe("keep");
  expect(readdirSync(top)).toEqual(["file"]);
});

test("where it cannot be moved into place, nothing is left of it, folders that were made for it included", () => {
  mkdirSync(join(top, "full/inner"), { recursive: true });
  expect(() => writeInPlace(join(top, "full"), "ours")).toThrow();
  expect(readdirSync(top)).toEqual(["full"]);
  writeFileSync(join(top, "a-file"), "");
  expect(() => writeInPlace(join(top, "a-file/b/c"), "ours")).toThrow();
  expect(existsSync(join(top, "a-file/b"))).toBe(false);
});
