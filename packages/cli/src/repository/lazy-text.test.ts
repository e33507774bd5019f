import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { disk } from "../source/disk.js";
import { Trouble } from "../terminal/trouble.js";
import { readMany } from "./lazy-text.js";

// A few documents are held, of many the texts are read again when they are looked at; either way they are what was read.

let top: string;
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), "let-go-"));
});
afterEach(() => rmSync(top, { recursive: true, force: true }));

const text = (number: number): string => `---\nbuild: wall-${number}\n---\n\n3 × 4 panels, ${number}.\n`;

function written(count: number): readonly string[] {
  const paths = Array.from({ length: count }, (_, number) => `b${String(number).padStart(4, "0")}.md`);
  for (const [number, path] of paths.entries()) writeFileSync(join(top, path), text(number));
  return paths;
}

const read = (paths: readonly string[]) => readMany(disk.treeAt(top), paths);

test.each([3, 450])("%i documents have their texts, in their order, without what is no document", async (count) => {
  const paths = written(count);
  writeFileSync(join(top, "notes.md"), "Nothing to build.\n");
  const { files, unreadable } = await read([...paths, "notes.md", "not-there.md"]);
  expect(files.map((file) => file.path)).toEqual(paths);
  expect(files.map((file) => file.text)).toEqual(paths.map((_, number) => text(number)));
  expect(unreadable.map((file) => file.path)).toEqual(["not-there.md"]);
});

const harms: readonly (readonly [string, (path: string) => void])[] = [
  ["written to", (path) => writeFileSync(path, text(-1))],
  ["emptied", (path) => writeFileSync(path, "")],
  ["taken away", (path) => rmSync(path)],
  ["replaced by a folder", (path) => [rmSync(path), mkdirSync(path)]],
  ["replaced by a pipe nobody writes to", (path) => [rmSync(path), execFileSync("mkfifo", [path])]],
];

test.each(harms)(
  "of many, one that is %s meanwhile is no longer what was read, and is said to be so",
  async (_, harm) => {
    const paths = written(300);
    const { files } = await read(paths);
    harm(join(top, "b0007.md"));
    expect(() => files[7]?.text).toThrow(Trouble);
    expect(() => files[7]?.text).toThrow(/b0007\.md was changed/u);
    expect(files[8]?.text).toBe(text(8));
  },
);

test("a few stay as they were read", async () => {
  const { files } = await read(written(3));
  rmSync(join(top, "b0001.md"));
  expect(files[1]?.text).toBe(text(1));
});
