import { spawn } from "node:child_process";
import { readdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { chosen, command, EVERY, environment, run, scratch, stepsOf } from "./command.js";
import { underGit } from "./writings.js";

// What is kept of an inspection is of no account: whatever keeps it from being written, or spoils it, the report is that
// of an inspection that keeps nothing.

const words = ["inspect", "--every", "--as", "json"];
const CACHE = ".git/plumbmark";

const repository = (): string => {
  const folder = scratch();
  underGit(folder);
  return folder;
};

const WHOLE = /^(?:answers|(?:entries|outlines|readings|plugins)-[0-9a-f]{16})$/u;

test("refused or ended at any step of writing it, nothing comes out otherwise", {
  timeout: EVERY ? 600_000 : 180_000,
}, () => {
  const folder = repository();
  const cold = run(folder, ["inspect", "--as", "json", "--no-cache"]);
  const plain = ["inspect", "--as", "json"];
  const steps = stepsOf(folder, plain);
  expect(steps).toBeGreaterThan(3);
  for (const at of chosen(steps, 5)) {
    rmSync(join(folder, CACHE), { recursive: true, force: true });
    const code = at % 2 === 0 ? "ENOSPC" : "EIO";
    expect(run(folder, plain, { at, code, on: at % 4 < 2 }), `step ${at}, ${code}`).toEqual(cold);
    rmSync(join(folder, CACHE), { recursive: true, force: true });
    const signal = at % 2 === 0 ? "SIGKILL" : "SIGTERM";
    expect(run(folder, plain, { at, signal }).signal).toBe(signal);
    expect(run(folder, plain), `after ${signal} at step ${at}`).toEqual(cold);
    expect(readdirSync(join(folder, CACHE)).filter((name) => !WHOLE.test(name))).toEqual([]);
  }
});

test("spoilt, or a file where its folder should be, it is as none", { timeout: 60_000 }, () => {
  const folder = repository();
  const cold = run(folder, ["inspect", "--as", "json", "--no-cache"]);
  const warm = () => run(folder, ["inspect", "--as", "json"]);
  expect(warm()).toEqual(cold);
  for (const entry of readdirSync(join(folder, CACHE), { recursive: true, withFileTypes: true }))
    if (entry.isFile()) writeFileSync(join(entry.parentPath, entry.name), "spoilt");
  expect(warm()).toEqual(cold);
  rmSync(join(folder, CACHE), { recursive: true });
  writeFileSync(join(folder, CACHE), "a file");
  expect(warm()).toEqual(cold);
});

const atOnce = (folder: string, all: readonly (readonly string[])[]) =>
  Promise.all(
    all.map(
      (each) =>
        new Promise<readonly [number | null, string]>((resolve) => {
          const child = spawn(process.execPath, [command, ...each], { cwd: folder, env: environment(folder) });
          let out = "";
          child.stdout.setEncoding("utf8").on("data", (text: string) => {
            out += text;
          });
          child.on("close", (status) => resolve([status, out]));
        }),
    ),
  );

test("several inspections that share it come to the same", { timeout: 60_000 }, async () => {
  const folder = repository();
  const cold = run(folder, [...words, "--no-cache"]);
  const plain = ["inspect", "--as", "json"];
  const { status, out } = run(folder, [...plain, "--no-cache"]);
  for (const [got, printed] of await atOnce(folder, [plain, plain, plain]))
    expect([got, printed]).toEqual([status, out]);
  expect(run(folder, words)).toEqual(cold);
});

test("several hooks put in place at once are one hook", { timeout: 60_000 }, async () => {
  const folder = repository();
  const all = await atOnce(folder, [["hook"], ["hook"], ["hook"], ["hook"]]);
  expect(all.map(([status]) => status)).toEqual([0, 0, 0, 0]);
  expect(readdirSync(join(folder, ".git/hooks"))).toEqual(["pre-commit", "pre-merge-commit"]);
});
