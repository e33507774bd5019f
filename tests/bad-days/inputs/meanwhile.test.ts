import { execFileSync } from "node:child_process";
import fs, { mkdirSync, renameSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { syncBuiltinESMExports } from "node:module";
import { join } from "node:path";
import type { InspectionRecord } from "@plumbmark/core";
import { afterEach, expect, test } from "vitest";
import { pictureReader } from "../../../packages/cli/src/source/read-picture.js";
import { plumbmark } from "../../plumbmark.js";
import { notEmpty } from "../../run/not-empty.js";
import { small } from "./small.js";

// Somebody else works in the same folder: a file is another, or none, between the moment it was found and the moment
// it is read. Nothing waits for it, and it is told or read as what it has become.

const real = { stat: fs.promises.stat, open: fs.promises.open, realpathSync: fs.realpathSync, openSync: fs.openSync };
type Step = keyof typeof real;

function put(functions: Partial<typeof real>): void {
  for (const name of ["stat", "open"] as const) Object.assign(fs.promises, { [name]: functions[name] ?? real[name] });
  for (const name of ["realpathSync", "openSync"] as const)
    Object.assign(fs, { [name]: functions[name] ?? real[name] });
  syncBuiltinESMExports();
}

afterEach(() => put({}));

/** Does something to a file just before the first time a step is taken with it. */
function before(step: Step, path: string, work: (path: string) => void): () => boolean {
  let done = false;
  const wrapped = (...words: readonly unknown[]): unknown => {
    if (!done && words[0] === path) {
      done = true;
      work(path);
    }
    return (real[step] as (...all: readonly unknown[]) => unknown)(...words);
  };
  put({ [step]: wrapped });
  return () => done;
}

const instead = (path: string): string => {
  rmSync(path, { recursive: true });
  return path;
};

const CHANGES: Readonly<Record<string, (path: string) => void>> = {
  removed: (path) => void instead(path),
  truncated: (path) => truncateSync(path, 0),
  "cut in half": (path) => truncateSync(path, 12),
  "turned into a folder": (path) => mkdirSync(instead(path)),
  "turned into a pipe": (path) => void execFileSync("mkfifo", [instead(path)]),
  "turned into a link to itself": (path) => fs.symlinkSync(path, instead(path)),
  "replaced by bytes": (path) => {
    writeFileSync(`${path}.new`, Buffer.of(1, 0, 2));
    renameSync(`${path}.new`, path);
  },
};

const NO_FILE = /^turned into (?!a link (?:to|that leads) (?!itself))/u;
const FILES = ["builds/a.md", "parts/p.yaml", "stock.yaml", "house-standard.yaml"] as const;
const cases = FILES.flatMap(
  (file) =>
    Object.keys(CHANGES).flatMap((change) => (["stat", "open"] as const).map((step) => ({ file, change, step }))),
  // These are looked for by name: taken away before the first look, they are not there and nobody misses them.
).filter(({ file, change, step }) => !(/^[sh]/u.test(file) && change === "removed" && step === "stat"));

test.each(notEmpty(cases))("$file $change before $step", async ({ file, change, step }) => {
  const folder = small();
  const happened = before(step, join(folder, file), CHANGES[change] as (path: string) => void);
  const { status, out, err } = await plumbmark(folder, ["inspect", "--as", "json", "--no-cache"]);
  expect(happened()).toBe(true);
  expect(err).not.toMatch(/mistake in Plumbmark|\n {4}at /u);
  const isStandard = file === "house-standard.yaml";
  expect(status).toBe(isStandard ? 2 : 1);
  if (isStandard) expect(err).toContain(file);
  // A stock list that is no file any more is told where the house standard names it.
  else
    expect((JSON.parse(out) as InspectionRecord).documents).toContainEqual(
      expect.objectContaining(
        file === "stock.yaml" && step === "stat" && NO_FILE.test(change)
          ? { file: "house-standard.yaml", checks: [expect.objectContaining({ says: expect.stringContaining(file) })] }
          : { file, verdict: "not ready" },
      ),
    );
});

const PNG = Buffer.from("89504e470d0a1a0a0000000d49484452", "hex");

test("a picture is read", () => {
  expect(pictureReader(small({ "photo.png": PNG }))("photo.png")).toEqual(PNG);
});

const STRANGE = Object.keys(CHANGES).filter((change) => !/trunc|cut|bytes/u.test(change));
test.each(
  notEmpty(STRANGE.flatMap((change) => (["realpathSync", "openSync"] as const).map((step) => ({ change, step })))),
)("a picture $change before $step is told", ({ change, step }) => {
  const folder = small({ "photo.png": PNG });
  const happened = before(step, join(folder, "photo.png"), CHANGES[change] as (path: string) => void);
  const found = pictureReader(folder)("photo.png");
  expect(happened()).toBe(true);
  expect(found).toMatch(/^it is not|^a link/u);
});

test("pictures that cannot be shown are told when they are published, each where it stands, and their words are shown", async () => {
  const names = ["gone.png", "2027", "link.png", "large.png", "%00.png", `${"x".repeat(300)}.png`, "gone.png"];
  const body = names.map((name) => `![the truss](${name})\n`).join("\n");
  const folder = small({
    "builds/a.md": `---\nbuild: a\ntitle: A\nstatus: draft\n---\n\n# A\n\n${body}`,
    "builds/large.png": Buffer.alloc(20_100_000, PNG),
    "builds/2027/x.md": "",
  });
  fs.symlinkSync("/etc/hostname", join(folder, "builds/link.png"));
  rmSync(join(folder, "builds/2027/x.md"));
  const { status, err } = await plumbmark(folder, ["publish", "--to", "site"]);
  expect(status).toBe(0);
  const says = [
    "it is not there",
    "not a file",
    "outside the docs repository",
    "20.1 MB",
    "no file can have this name",
    "name is too long",
    "it is not there",
  ];
  const lines = err.trim().split("\n");
  expect(lines).toEqual(says.map((why) => expect.stringContaining(why)));
  // The title stands on line 7, and behind it every second line has a picture (CommonMark 0.31, 6.4).
  for (const [index, line] of lines.entries()) expect(line).toContain(`: builds/a.md:${9 + 2 * index}:1: the picture`);
  expect(fs.readFileSync(join(folder, "site/builds/a.html"), "utf8")).toContain("the truss");
});
