import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { command, docs, environment, scratch } from "./command.js";

// A process that inspects and is ended takes the processes of its plugins with it, even one that never ends by itself.

const PLUGIN = `
import { writeFileSync } from "node:fs";
writeFileSync(new URL("number", import.meta.url), String(process.pid));
for (;;);
`;

const runs = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    // One that nobody has asked after is over all the same.
    return !existsSync(`/proc/${pid}/stat`) || !/\) Z /u.test(readFileSync(`/proc/${pid}/stat`, "utf8"));
  } catch {
    return false;
  }
};

async function until(holds: () => boolean): Promise<void> {
  for (let left = 400; left > 0 && !holds(); left -= 1) await new Promise((resolve) => setTimeout(resolve, 50));
  expect(holds()).toBe(true);
}

test.each(["SIGKILL", "SIGTERM", "SIGINT", "SIGHUP"] as const)(
  "%s leaves no process of a plugin",
  { timeout: 60_000 },
  async (signal) => {
    const folder = docs(scratch());
    mkdirSync(join(folder, "house-rules"));
    writeFileSync(join(folder, "house-rules/endless.mjs"), PLUGIN);
    writeFileSync(
      join(folder, "house-standard.yaml"),
      'house-standard: Test\npractice: us\nrules-from: ["./house-rules/endless.mjs"]\nplugin-limits: { time: 60 s, memory: 256 MB }\n',
    );
    const child = spawn(process.execPath, [command, "inspect"], {
      cwd: folder,
      env: environment(folder),
      stdio: "ignore",
    });
    const ended = new Promise((resolve) => child.once("exit", (_, by) => resolve(by)));
    const file = join(folder, "house-rules/number");
    await until(() => existsSync(file) && readFileSync(file, "utf8") !== "");
    const pid = Number(readFileSync(file, "utf8"));
    expect(runs(pid)).toBe(true);
    child.kill(signal);
    expect(await ended).toBe(signal);
    await until(() => !runs(pid));
  },
);
