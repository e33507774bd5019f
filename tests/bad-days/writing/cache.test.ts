import { execFileSync, spawn } from "node:child_process";
import { createHash } from "node:crypto";
import {
  chmodSync,
  chownSync,
  cpSync,
  existsSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { some } from "../../run/some.js";
import { chosen, command, EVERY, environment, run, scratch, seed, stepsOf } from "./command.js";
import { underGit } from "./writings.js";

// What is kept of an inspection is of no account: whatever keeps it from being written, or spoils it, the report is that
// of an inspection that keeps nothing.

const words = ["inspect", "--every", "--as", "json"];
const CACHE = ".cache/plumbmark";

/** Files of the cache, by their names. */
const kept = (folder: string): readonly string[] =>
  existsSync(join(folder, CACHE))
    ? readdirSync(join(folder, CACHE), { recursive: true, withFileTypes: true })
        .filter((each) => each.isFile())
        .map(({ name }) => name)
    : [];

const repository = (): string => {
  const folder = scratch();
  underGit(folder);
  return folder;
};

const WHOLE = /^(?:entries|outlines|plugins|sheets)-[0-9a-f]{16}$/u;

test("refused or ended at any step of writing it, nothing comes out otherwise", {
  timeout: EVERY ? 600_000 : 180_000,
}, () => {
  const folder = repository();
  const cold = run(folder, ["inspect", "--as", "json", "--no-cache"]);
  const plain = ["inspect", "--as", "json"];
  const steps = stepsOf(folder, plain);
  expect(steps).toBeGreaterThan(3);
  for (const at of chosen(steps)) {
    rmSync(join(folder, ".cache"), { recursive: true, force: true });
    const code = at % 2 === 0 ? "ENOSPC" : "EIO";
    expect(run(folder, plain, { at, code, on: at % 4 < 2 }), `step ${at}, ${code}`).toEqual(cold);
    rmSync(join(folder, ".cache"), { recursive: true, force: true });
    const signal = at % 2 === 0 ? "SIGKILL" : "SIGTERM";
    expect(run(folder, plain, { at, signal }).signal).toBe(signal);
    expect(run(folder, plain), `after ${signal} at step ${at}`).toEqual(cold);
    expect(kept(folder).filter((name) => !WHOLE.test(name))).toEqual([]);
    expect(kept(folder).length).toBeGreaterThan(0);
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

/** Paths of the files of the cache. */
const paths = (folder: string): readonly string[] =>
  readdirSync(join(folder, CACHE), { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => join(each.parentPath, each.name));

test("a path of it that would keep a reader waiting is refused at once", { timeout: 120_000 }, () => {
  const folder = repository();
  const cold = run(folder, ["inspect", "--as", "json", "--no-cache"]);
  const warm = () => run(folder, ["inspect", "--as", "json"], {}, { timeout: 20_000 });
  const hanging: readonly ((path: string) => void)[] = [
    (path) => void execFileSync("mkfifo", [path]),
    (path) => symlinkSync("/dev/zero", path),
    (path) => symlinkSync(path, path),
  ];
  for (const put of notEmpty(EVERY ? hanging : some(hanging, 1, seed))) {
    expect(warm()).toEqual(cold);
    const files = paths(folder);
    expect(files.length).toBeGreaterThan(0);
    for (const path of files) {
      rmSync(path);
      put(path);
    }
    expect(warm()).toEqual(cold);
    rmSync(join(folder, CACHE), { recursive: true });
    put(join(folder, CACHE));
    expect(warm()).toEqual(cold);
    rmSync(join(folder, CACHE));
  }
});

/** Puts another verdict into a cache, as whoever knows how it is written would. */
function plant(folder: string): void {
  for (const path of paths(folder)) {
    if (!path.includes("/entries-")) continue;
    const edition = /entries-([0-9a-f]{16})$/u.exec(path)?.[1] ?? "";
    const whole = new RegExp(`${edition}[0-9a-f]{48}`, "u").exec(
      readFileSync(join(dirname(command), "program.cjs"), "latin1"),
    );
    const lines = readFileSync(path, "utf8")
      .split("\n")
      .filter((line) => line !== "");
    const changed = lines.map((line) => {
      const [key = "", , ...rest] = line.split(" ");
      const value = rest
        .join(" ")
        .replaceAll(
          /"verdict":"(not ready|ready)"/gu,
          (_, was) => `"verdict":"${was === "ready" ? "not ready" : "ready"}"`,
        );
      const check = createHash("sha256").update(`${whole?.[0]}\n${key} ${value}`).digest("hex").slice(0, 32);
      return `${key} ${check} ${value}\n`;
    });
    writeFileSync(path, changed.join(""));
  }
}

test("a planted one changes nothing: it is read only where its user alone may write", { timeout: 120_000 }, () => {
  const folder = repository();
  const cold = run(folder, ["inspect", "--as", "json", "--no-cache"]);
  const warm = () => run(folder, ["inspect", "--as", "json"]);
  const opened: readonly ((path: string) => void)[] = [
    (path) => chmodSync(path, 0o666),
    (path) => chmodSync(dirname(path), 0o777),
    ...(process.getuid?.() === 0 ? [(path: string) => chownSync(path, 65_534, 65_534)] : []),
    ...(process.getuid?.() === 0 ? [(path: string) => chownSync(dirname(path), 65_534, 65_534)] : []),
  ];
  expect(warm()).toEqual(cold);
  plant(folder);
  const planted = join(scratch(), "planted");
  cpSync(join(folder, CACHE), planted, { recursive: true });
  // It is good enough to be believed while nobody else could have written it.
  expect(warm()).not.toEqual(cold);
  for (const open of notEmpty(EVERY ? opened : some(opened, 1, seed))) {
    rmSync(join(folder, CACHE), { recursive: true, force: true });
    cpSync(planted, join(folder, CACHE), { recursive: true });
    for (const path of paths(folder)) open(path);
    expect(warm()).toEqual(cold);
  }
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
  for (const [got, printed] of await atOnce(folder, [plain, plain])) expect([got, printed]).toEqual([status, out]);
  expect(run(folder, words)).toEqual(cold);
});

test("several hooks put in place at once are one hook", { timeout: 60_000 }, async () => {
  const folder = repository();
  const all = await atOnce(folder, [["hook"], ["hook"], ["hook"], ["hook"]]);
  expect(all.map(([status]) => status)).toEqual([0, 0, 0, 0]);
  expect(readdirSync(join(folder, ".git/hooks"))).toEqual(["pre-commit", "pre-merge-commit"]);
});
