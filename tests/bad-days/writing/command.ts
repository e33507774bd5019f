import { type SpawnSyncOptions, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
  cpSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { starterRepository } from "@plumbmark/starter";
import { afterAll, beforeAll, inject, onTestFinished } from "vitest";
import { gitIdentity } from "../../git-identity.js";
import { oldFormText } from "../../old-form.js";
import { some } from "../../run/some.js";
import { approveCopy, madeOnce } from "../../starter.js";

/** The command as it is built and installed. */
export const command = fileURLToPath(new URL("../../../packages/cli/dist/plumbmark.js", import.meta.url));
export const preload = new URL("faults.mjs", import.meta.url).href;

/** What goes wrong, and when; see faults.mjs. */
export interface Fault {
  readonly at?: number;
  readonly code?: string;
  readonly on?: boolean;
  readonly signal?: NodeJS.Signals;
  readonly count?: string;
}

export interface Ran {
  readonly status: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly out: string;
  readonly err: string;
}

/** Nothing of the machine's own settings may change how a test comes out. */
export const environment = (home: string): NodeJS.ProcessEnv => ({
  PATH: process.env.PATH,
  HOME: home,
  ...gitIdentity,
});

/** Words that run the command, with what goes wrong built in. */
export const wordsOf = (words: readonly string[]): readonly string[] => ["--import", preload, command, ...words];

/** Runs the built command to its end in a folder, which is its home as well. */
export function run(folder: string, words: readonly string[], fault: Fault = {}, more: SpawnSyncOptions = {}): Ran {
  const { status, signal, stdout, stderr, error } = spawnSync(process.execPath, [...wordsOf(words)], {
    cwd: folder,
    env: { ...environment(folder), PLUMBMARK_FAULT: JSON.stringify(fault) },
    encoding: "utf8",
    timeout: 60_000,
    ...more,
  });
  if (error) throw error;
  return { status, signal, out: String(stdout ?? ""), err: String(stderr ?? "") };
}

/** A folder of its own, taken away after the test. */
export function scratch(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-writing-")));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A folder for all tests of a file. */
export function scratchUntilEnd(): () => string {
  let folder = "";
  beforeAll(() => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-writing-")));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return () => folder;
}

/** A docs repository with one build that is ready. */
export function docs(folder: string): string {
  oneBuild ??= madeOnce("one-build", writeDocs);
  cpSync(oneBuild, folder, { recursive: true });
  return folder;
}

let oneBuild: string | undefined;

function writeDocs(folder: string): void {
  mkdirSync(join(folder, "builds"), { recursive: true });
  for (const path of ["parts", "stock.yaml", "letters"])
    cpSync(join(starterRepository, path), join(folder, path), { recursive: true });
  const starter = (path: string): string => readFileSync(join(starterRepository, path), "utf8");
  // It is ready by the house standard it was written for, and alone: what it links to is not there.
  writeFileSync(join(folder, "house-standard.yaml"), starter("house-standard.yaml").replace(/^rules-from: .*\n/mu, ""));
  const build = oldFormText("builds/small-screen.md").replace(/\[([^\]]*)\]\([a-z-]+\.md\)/gu, "$1");
  writeFileSync(join(folder, "builds/small-screen.md"), build);
  approveCopy(folder);
}

type Tree = Readonly<Record<string, string>>;

/** Everything in a folder but the user's cache: files by a hash of their bytes, links by where they lead. */
export function tree(folder: string, leave: (path: string) => boolean = () => false): Tree {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const full = join(entry.parentPath, entry.name);
    const path = full.slice(folder.length + 1);
    if (leave(path) || /^\.cache(?:\/|$)/u.test(path)) continue;
    const mode = (lstatSync(full).mode & 0o111).toString(8);
    if (entry.isSymbolicLink()) found[path] = `link to ${readlinkSync(full)}`;
    else if (entry.isFile()) found[path] = `${mode} ${createHash("sha256").update(readFileSync(full)).digest("hex")}`;
    else found[path] = entry.isDirectory() ? "folder" : "something else";
  }
  return found;
}

/** How many steps a command takes that writes, when nothing goes wrong. */
export function stepsOf(folder: string, words: readonly string[]): number {
  const place = mkdtempSync(join(tmpdir(), "plumbmark-count-"));
  const { status, err } = run(folder, words, { count: join(place, "count") });
  // 1: a document is not ready, and the command was carried out.
  if (status !== 0 && status !== 1) throw new Error(err);
  const steps = Number(readFileSync(join(place, "count"), "utf8"));
  rmSync(place, { recursive: true });
  return steps;
}

const { deep, seed } = inject("effort");

export { seed };

/** In a deep run every step is tried with every fault. */
export const EVERY = deep;

/** Every step in a deep run; else two: the first or the last, where most is decided, and one between, others each time. */
export function chosen(steps: number): readonly number[] {
  const all = Array.from({ length: steps }, (_, index) => index + 1);
  if (EVERY || steps <= 2) return all;
  const between = some(all.slice(1, -1), 1, seed);
  return seed % 2 === 0 ? [1, ...between] : [...between, steps];
}
