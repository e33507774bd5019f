import { spawnSync } from "node:child_process";
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { starterRepository } from "@plumbmark/starter";
import { afterAll, describe, expect, test } from "vitest";
import { disk } from "../files/disk.js";
import { beginToWitness } from "../files/seen.js";
import { ownFile } from "../own-file.js";
import { answerAt, keepAnswer } from "./answers.js";

// An answer that is kept is given again only while everything it rests on is as it was. The program is the built one:
// run from its sources it keeps nothing, since nobody could tell when they change.

const scratch = mkdtempSync(join(tmpdir(), "plumbmark-answers-"));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** A docs repository of two documents, without the plugin of the starter. */
function repository(name: string): string {
  const root = join(scratch, name);
  for (const each of ["parts", "stock.yaml", "builds/small-screen.md", "builds/side-strips.md"])
    cpSync(join(starterRepository, each), join(root, each), { recursive: true });
  const standard = readFileSync(join(starterRepository, "house-standard.yaml"), "utf8");
  writeFileSync(join(root, "house-standard.yaml"), standard.replace(/^rules-from: .*\n/mu, ""));
  mkdirSync(join(root, ".git"));
  writeFileSync(join(root, ".git/HEAD"), "ref: refs/heads/main\n");
  return root;
}

const run = (root: string, ...words: readonly string[]) => {
  const program = ownFile("dist/plumbmark.js").pathname;
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, "inspect", ...words], {
    cwd: root,
    encoding: "utf8",
  });
  return { status, stdout, stderr };
};

const edit = (path: string, change: (text: string) => string): void =>
  writeFileSync(path, change(readFileSync(path, "utf8")));

const FOLDER_STANDARD = "house-standard: Below\nrequirements:\n  power.circuit-load: {share: 10 %}\n";

const changes: readonly (readonly [what: string, change: (root: string) => void])[] = [
  ["nothing", () => undefined],
  [
    "a document",
    (root) => edit(join(root, "builds/small-screen.md"), (text) => text.replace(/breaker: \d+/u, "breaker: 1")),
  ],
  [
    "a document, its size and times being as before",
    (root) => {
      const path = join(root, "builds/small-screen.md");
      edit(path, (text) => text.replace("breaker: 1", "breaker: 2"));
      utimesSync(path, 1, 1);
    },
  ],
  [
    "a part",
    (root) => edit(join(root, "parts", readdirSync(join(root, "parts"))[0] ?? ""), (text) => text.replaceAll("A", "B")),
  ],
  ["the stock", (root) => edit(join(root, "stock.yaml"), (text) => text.replace(/count: \d+/u, "count: 1"))],
  ["a document more", (root) => cpSync(join(root, "builds/small-screen.md"), join(root, "builds/twin.md"))],
  ["a new name", (root) => renameSync(join(root, "builds/twin.md"), join(root, "builds/other.md"))],
  ["a file that is no build document", (root) => writeFileSync(join(root, "builds/notes.md"), "# Notes\n")],
  ["that file becoming one", (root) => writeFileSync(join(root, "builds/notes.md"), "---\nbuild: notes\n---\n")],
  ["a house standard below", (root) => writeFileSync(join(root, "builds/house-standard.yaml"), FOLDER_STANDARD)],
  [
    "a file that turns into a link",
    (root) => {
      renameSync(join(root, "builds/other.md"), join(root, "other.txt"));
      symlinkSync("../other.txt", join(root, "builds/other.md"));
    },
  ],
  [
    "a link that leads outside",
    (root) => {
      renameSync(join(root, "other.txt"), `${root}-other.txt`);
      rmSync(join(root, "builds/other.md"));
      symlinkSync(`${root}-other.txt`, join(root, "builds/other.md"));
    },
  ],
  [
    "what was kept being cut short",
    (root) => {
      const kept = join(root, ".git/plumbmark/answers");
      for (const name of readdirSync(kept)) truncateSync(join(kept, name), 3000);
    },
  ],
  ["a house standard that is gone", (root) => rmSync(join(root, "house-standard.yaml"))],
];

test("whatever changes, the answer is that of an inspection that keeps nothing", { timeout: 300_000 }, () => {
  const root = repository("changed");
  for (const [what, change] of changes) {
    run(root);
    change(root);
    expect([what, run(root)]).toEqual([what, run(root, "--no-cache")]);
    expect([what, run(root)]).toEqual([what, run(root, "--no-cache")]);
  }
});

test("other words have an answer of their own", { timeout: 60_000 }, () => {
  const root = repository("words");
  for (const words of [[], ["--every"], ["--as", "json"], ["builds/small-screen.md"], ["--as", "gnu"]]) {
    run(root, ...words);
    expect(run(root, ...words)).toEqual(run(root, ...words, "--no-cache"));
  }
  expect(readdirSync(join(root, ".git/plumbmark/answers")).length).toBe(5);
});

describe("what is seen of the disk", () => {
  const printed = Buffer.from("printed");
  const answer = { status: 1, warned: ["warned"], printed };

  async function seen(name: string) {
    const root = repository(name);
    const { facts } = beginToWitness();
    const tree = disk.treeAt(root);
    await tree.read(await tree.find(["builds/*.md"]));
    const path = join(root, ".git/plumbmark/answers/one");
    keepAnswer(path, answer, facts);
    return { root, path };
  }

  test("is believed as long as it is so", async () => {
    const { root, path } = await seen("so");
    expect(answerAt(path)).toMatchObject(answer);
    appendFileSync(join(root, "stock.yaml"), "# not looked at\n");
    expect(answerAt(path)).toMatchObject(answer);
    appendFileSync(join(root, "builds/small-screen.md"), "\n");
    expect(answerAt(path)).toBeUndefined();
  });

  test("is not believed when a byte of it is damaged", async () => {
    const { path } = await seen("damaged");
    edit(path, (text) => text.replace("printed", "prinked"));
    expect(answerAt(path)).toBeUndefined();
  });
});
