import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { outlineOf, pluginRules, type RepositoryFiles } from "@plumbmark/core";
import { siteOf } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";
import { afterEach, beforeEach, expect, test } from "vitest";
import { starter } from "../../../../../tests/documents/repository.js";
import { stated } from "../../../../../tests/plugins/stated.js";
import { makeManySheets } from "./sheets-many.js";

const files: RepositoryFiles = {
  ...starter(),
  // Enough that each thread has several.
  documents: starter()
    .documents.slice(0, 4)
    .map((each) => ({ ...each, outline: outlineOf(each) })),
};

let top: string;
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), "sheets-"));
});
afterEach(() => rmSync(top, { recursive: true }));

/** What a plugin came to: threads are sent it, since its code is elsewhere. */
const carriedOut = pluginRules({
  rules: [
    {
      stated: stated("house.first"),
      outcomes: Object.fromEntries(files.documents.slice(1).map(({ path }) => [path, { checks: [] }])),
    },
  ],
  failed: [],
  refused: [],
});

/** Makes all sheets on so many threads; gives what was made and the bytes of every file by its path. */
async function made(threads: number) {
  const into = { fresh: join(top, String(threads)), folder: join(top, "none") };
  const work = { files, rules: [...rules, ...carriedOut], today: "2027-01-01", root: starterRepository };
  const { places } = siteOf(work);
  let count = 0;
  const sheets = await makeManySheets({ ...work, into, places }, () => (count += 1), threads);
  const [listed, put] = [sheets.map((sheet) => sheet.summary), sheets.flatMap((sheet) => sheet.put)];
  const bytes = new Map(put.map(({ path }) => [path, readFileSync(join(into.fresh, path), "utf8")] as const).sort());
  return { listed, bytes, count };
}

test("sheets are the same to the byte however many threads make them, and so is what is listed of them", async () => {
  const alone = await made(1);
  expect(alone.bytes.size).toBeGreaterThan(30);
  const { listed, bytes, count } = await made(2);
  expect(listed).toEqual(alone.listed);
  expect([...bytes.keys()]).toEqual([...alone.bytes.keys()]);
  for (const [path, text] of bytes) expect(text === alone.bytes.get(path), path).toBe(true);
  expect(count).toBe(alone.count);
});
