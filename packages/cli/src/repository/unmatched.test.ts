import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { readRepository } from "./read-repository.js";

let top: string;
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), "unmatched-"));
  for (const folder of ["builds", "parts"]) mkdirSync(join(top, folder));
  writeFileSync(join(top, "builds/a.md"), "---\nbuild: a\n---\n");
  writeFileSync(join(top, "parts/own.yaml"), "tile: {kind: panel}\n");
});
afterEach(() => rmSync(top, { recursive: true }));

async function unmatched(standard: string): Promise<readonly string[]> {
  writeFileSync(join(top, "house-standard.yaml"), standard);
  return (await readRepository({ folder: top, paths: [], today: "2027-01-01" })).remarks;
}

test("a pattern that matches no file is told with its place", async () => {
  const standard = 'house-standard: X\ndocuments: ["builds/**/*.md"]\nparts:\n  - parts/*.yaml\n  - prats/*.yaml\n';
  expect(await unmatched(standard)).toEqual([
    "house-standard.yaml:5:5: No file matches `prats/*.yaml`, one of its `parts`.",
  ]);
});

test("what is left out, and what goes without saying, is not", async () => {
  rmSync(join(top, "parts/own.yaml"));
  expect(await unmatched('house-standard: X\ndocuments: ["builds/*.md", "!builds/old/*.md"]\n')).toEqual([]);
});
