import { chmodSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { GitBatch } from "./batch.js";
import { Read, readBlobsNow } from "./blobs.js";
import { notStarted } from "./not-started.js";
import { ask } from "./run.js";

// What is said when git does not start is what the system said (POSIX.1-2017, exec and fork: ENOENT, EACCES, EAGAIN, …).

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "plumbmark-start-"));
  vi.stubEnv("PATH", folder);
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

const ID = "0123456789012345678901234567890123456789";

/** Each way git is asked. */
const ways: readonly (readonly [string, () => Promise<unknown>])[] = [
  ["a question", () => ask(folder, ["version"])],
  ["contents", () => new GitBatch(folder).ask([ID])],
  ["contents at once", async () => readBlobsNow(folder, [ID], new Read())],
];

test.each(ways)("without git, %s says to install it", async (_, way) => {
  await expect(way()).rejects.toMatchObject({
    says: "The program git cannot be run: there is no such program on the search path (ENOENT).",
    mend: "Install git, or inspect without what needs git.",
  });
});

test.each(ways)("with a git that may not be run, %s says so and nothing of installing", async (_, way) => {
  writeFileSync(join(folder, "git"), "#!/bin/sh\n");
  chmodSync(join(folder, "git"), 0o644);
  await expect(way()).rejects.toMatchObject({
    says: "The program git cannot be run: you have no right to run it (EACCES).",
    mend: "Give yourself the right to run it, or inspect without what needs git.",
  });
});

test.each(ways)("in a folder that is gone, %s says that it is", async (_, way) => {
  rmSync(folder, { recursive: true });
  await expect(way()).rejects.toMatchObject({
    says: `git cannot be run in ${folder}: the folder is not there any more.`,
  });
});

test("a second question to what did not start is not kept waiting", async () => {
  const batch = new GitBatch(folder);
  await expect(batch.ask([ID])).rejects.toThrow();
  await expect(batch.ask([ID])).rejects.toThrow(/ENOENT/u);
  batch.end();
});

test.each([
  ["EAGAIN", "the system starts no more programs for you"],
  ["EMFILE", "too many files are open"],
  ["ENOMEM", "there is no memory left for it"],
  ["ETXTBSY", "the system refused it"],
])("%s is told as what it is, without a word of installing", (code, reason) => {
  const { says, mend } = notStarted(Object.assign(new Error(), { code, syscall: "spawn git" }), folder);
  expect(says).toBe(`The program git cannot be run: ${reason} (${code}).`);
  expect(mend).not.toMatch(/install/iu);
});
