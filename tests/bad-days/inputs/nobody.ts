import { spawnSync } from "node:child_process";
import { chmodSync, cpSync, mkdtempSync, readdirSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { starterRepository } from "@plumbmark/starter";
import { onTestFinished } from "vitest";
import { putOldForm } from "../../old-form.js";
import { copyStarter } from "../../starter.js";

const command = fileURLToPath(new URL("../../../packages/cli/dist/plumbmark.js", import.meta.url));
const NOBODY = 65534;
const isRoot = process.getuid?.() === 0;

export interface Told {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

const spawned = (folder: string, words: readonly string[], env: NodeJS.ProcessEnv, mine: boolean): Told => {
  const owner = isRoot && !mine ? { uid: NOBODY, gid: NOBODY } : {};
  const limits = { timeout: 60_000, maxBuffer: 1e9 };
  const done = spawnSync(process.execPath, [command, ...words], {
    cwd: folder,
    env,
    encoding: "utf8",
    ...limits,
    ...owner,
  });
  return { status: done.status, out: done.stdout, err: done.stderr };
};

/** Runs the built command by somebody with no rights of their own: root may read everything. */
export const asNobody = (folder: string, words: readonly string[], env: NodeJS.ProcessEnv = process.env): Told =>
  spawned(folder, words, env, false);

/** Builds that are ready: more of them would show nothing more, and take their time. */
const KEPT = ["over-stage-banner.md", "side-strips.md", "small-screen.md"];

/** Some of the starter's documents where anybody may go; its plugin only when asked for. */
export function repository({ plugin = false } = {}): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-days-")));
  onTestFinished(() => {
    chmodSync(folder, 0o755);
    rmSync(folder, { recursive: true, force: true });
  });
  chmodSync(folder, 0o755);
  if (plugin) {
    cpSync(starterRepository, folder, { recursive: true });
    putOldForm(folder);
  } else copyStarter(folder);
  for (const name of readdirSync(join(folder, "builds")))
    if (!KEPT.includes(name)) rmSync(join(folder, "builds", name));
  return folder;
}

/** Why rights cannot be tried out here; undefined where they can. */
export function whyNot(): string | undefined {
  if (process.platform === "win32") return "there are no such rights on Windows";
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-days-")));
  chmodSync(folder, 0o755);
  const path = join(folder, "x.mjs");
  writeFileSync(path, "");
  chmodSync(path, 0);
  const owner = isRoot ? { uid: NOBODY, gid: NOBODY } : {};
  const may = (file: string): boolean => spawnSync(process.execPath, [file], { cwd: folder, ...owner }).status === 0;
  const [closed, program] = [may(path), spawnSync(process.execPath, [command, "--version"], { cwd: folder, ...owner })];
  rmSync(folder, { recursive: true });
  if (closed) return "a closed file can be read all the same";
  return program.status === 0 ? undefined : "nobody cannot run the program from where it lies";
}
