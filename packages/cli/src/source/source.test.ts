import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { gitIdentity } from "../../../../tests/git-identity.js";
import { sourceAt } from "../git/scope.js";
import { disk } from "./disk.js";
import { memorySource } from "./memory.js";
import type { FileSource } from "./source.js";

// One contract for every place files come from: whoever reads a docs repository does not have to know which it is.

const FILES: Readonly<Record<string, string | Uint8Array>> = {
  "house-standard.yaml": "house-standard: House\n",
  "builds/one.md": "---\nbuild: one\n---\n",
  "builds/deep/two.md": "\ufeff---\nbuild: two\n---\n",
  "builds/notes.txt": "No Markdown.\n",
  "builds/sixteen.md": Buffer.from("---\nbuild: sixteen\n", "utf16le"),
  "builds/broken.md": Uint8Array.of(0x2d, 0xff, 0xfe),
  "node_modules/x/builds/three.md": "---\nbuild: three\n---\n",
};

let top: string;
beforeAll(() => {
  top = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-source-")));
  for (const [path, content] of Object.entries(FILES)) {
    mkdirSync(dirname(join(top, path)), { recursive: true });
    writeFileSync(join(top, path), content);
  }
  const git = (...words: string[]) => execFileSync("git", words, { cwd: top, env: { ...process.env, ...gitIdentity } });
  git("init", "--quiet");
  git("add", "--all");
  git("commit", "--quiet", "--message", "Everything");
});
afterAll(() => rmSync(top, { recursive: true, force: true }));

const sources: readonly (readonly [string, () => FileSource | Promise<FileSource>])[] = [
  ["the disk", () => disk],
  ["git", () => sourceAt(top, "HEAD")],
  ["memory", () => memorySource(new Map(Object.entries(FILES).map(([path, content]) => [join(top, path), content])))],
];

describe.each(sources)("%s", (_, make) => {
  test("finds what fits the patterns, in order, and nothing of other people's packages", async () => {
    const tree = (await make()).treeAt(top);
    expect(await tree.find(["builds/**/*.md", "**/three.md"])).toEqual([
      "builds/broken.md",
      "builds/deep/two.md",
      "builds/one.md",
      "builds/sixteen.md",
    ]);
    expect(await tree.find(["builds/**/*.md", "!builds/deep/**"])).not.toContain("builds/deep/two.md");
    expect(await (await make()).treeAt(join(top, "builds")).find(["*.md"])).toContain("one.md");
  });

  test("reads texts in the order asked for, each with git's name of its bytes", async () => {
    const tree = (await make()).treeAt(top);
    const id = execFileSync("git", ["hash-object", "builds/one.md"], { cwd: top, encoding: "utf8" }).trim();
    expect(await tree.read(["builds/deep/two.md", "builds/one.md"])).toMatchObject([
      { text: "---\nbuild: two\n---\n" },
      { text: "---\nbuild: one\n---\n", id },
    ]);
  });

  test.each([
    ["nowhere.md", "not there"],
    ["builds/sixteen.md", "UTF-16"],
    ["builds/broken.md", "not valid UTF-8 at line 1, column 2"],
    ["../elsewhere.md", "outside the docs repository"],
  ])("tells why %s cannot be read", async (path, why) => {
    const source = await make();
    const text = await source.text(join(top, path), top);
    expect("problem" in text ? text.problem.says : text.text).toContain(why);
  });

  test("tells what is at a path", async () => {
    const source = await make();
    const kinds = ["builds/one.md", "builds/deep", "builds/none.md"].map((path) => source.kind(join(top, path)));
    expect(await Promise.all(kinds)).toEqual(["file", "folder", undefined]);
  });
});
