import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { madeOnce } from "../../starter.js";
import { docs, EVERY, environment, run, seed } from "./command.js";

/** A command that writes. */
export interface Writing {
  readonly words: readonly string[];
  /** Makes what there is before, in an empty folder. */
  readonly before: (folder: string) => void;
  /** What a message names. */
  readonly names: string;
  /** Two files that are each whole or as they were; anything else is all or nothing. */
  readonly eachByItself?: true;
}

/** The documents under git, without the samples of hooks that git puts there. */
export function underGit(folder: string): void {
  begun ??= madeOnce("under-git", begin);
  cpSync(begun, folder, { recursive: true });
}

let begun: string | undefined;

function begin(folder: string): void {
  docs(folder);
  execFileSync("git", ["init", "--quiet", "--initial-branch=main"], { cwd: folder, env: environment(folder) });
  rmSync(join(folder, ".git/hooks"), { recursive: true });
}

function withOlderHook(folder: string): void {
  underGit(folder);
  mkdirSync(join(folder, ".git/hooks"));
  const mark = "# Put here by `plumbmark hook`; `plumbmark hook --remove` takes it away again.";
  writeFileSync(join(folder, ".git/hooks/pre-commit"), `#!/bin/sh\n${mark}\nexit 0\n`, { mode: 0o755 });
}

function withHook(folder: string): void {
  underGit(folder);
  // What the command puts there is looked at elsewhere, and is the same for every copy but for the place of the copy.
  run(folder, ["hook"]);
}

const HOOK = ".git/hooks/pre-";

/** Those that write little and start fast, so that every step can be tried. */
export const writings: Readonly<Record<string, Writing>> = {
  "start, a new folder": { words: ["start", "deep/new"], before: () => undefined, names: "deep/new" },
  "start, an empty folder": {
    words: ["start", "new"],
    before: (folder) => mkdirSync(join(folder, "new")),
    names: "new",
  },
  "start rule": { words: ["start", "rule", "two-riggers"], before: docs, names: "house-rules/two-riggers" },
  hook: { words: ["hook"], before: underGit, names: HOOK, eachByItself: true },
  "hook, over an older one of ours": { words: ["hook"], before: withOlderHook, names: HOOK, eachByItself: true },
  "hook --remove": { words: ["hook", "--remove"], before: withHook, names: HOOK, eachByItself: true },
};

/** Those that are tried: all in a deep run, two of them in others, in turn. */
export const triedWritings = Object.entries(writings).filter((_, index) => EVERY || (index + seed) % 3 === 0);

const LEFT = /(?:^|\/)\.[^/]+-\d+-[^/]{6}(?:\/|$)/u;

type Tree = Readonly<Record<string, string>>;

/** Whether a tree is as it was, or as it was to become; each file by itself where that is what is promised. */
export function isWhole({ eachByItself }: Writing, found: Tree, was: Tree, is: Tree): boolean {
  const [old, fresh] = [withoutLeft(found, was), withoutLeft(found, is)];
  if (!eachByItself) return isDeepStrictEqual(old, was) || isDeepStrictEqual(fresh, is);
  const paths = [...new Set([...Object.keys(old), ...Object.keys(was), ...Object.keys(is)])];
  return paths.every((path) => old[path] === was[path] || old[path] === is[path]);
}

/** Without what a run could not even take away again, and folders above it with nothing in them; the next one does. */
export function withoutLeft(found: Tree, was: Tree): Tree {
  const rest = Object.entries(found).filter(([path]) => !LEFT.test(path));
  const isEmpty = (path: string): boolean =>
    !rest.some(([each, kind]) => each.startsWith(`${path}/`) && kind !== "folder");
  return Object.fromEntries(rest.filter(([path, kind]) => path in was || kind !== "folder" || !isEmpty(path)));
}
