import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { some } from "../../run/some.js";
import { command, docs, EVERY, environment, scratch, seed } from "./command.js";

// Threads that cannot be had, or die: the record is that of an inspection in one thread, and nobody is kept waiting.

const preload = new URL("dead-threads.mjs", import.meta.url).href;

const inspected = (folder: string, way: string) =>
  spawnSync(process.execPath, ["--import", preload, command, "inspect", "--as", "json", "--no-cache"], {
    cwd: folder,
    env: { ...environment(folder), THREADS: way },
    encoding: "utf8",
    maxBuffer: 1e9,
    timeout: 60_000,
  });

test("however its threads come to grief, an inspection is complete", { timeout: 240_000 }, () => {
  const folder = docs(scratch());
  const text = readFileSync(join(folder, "builds/small-screen.md"), "utf8");
  const short = "---\nbuild: short\ntitle: Short\nstatus: draft\nfaces: {}\n---\n\n# Short\n";
  mkdirSync(join(folder, "builds/many"));
  for (let number = 0; number < 45; number += 1)
    writeFileSync(
      join(folder, `builds/many/b${number}.md`),
      (number < 3 ? text : short)
        .replace(/^build: .*$/mu, `build: many-${number}`)
        .slice(0, number % 9 === 0 ? 900 : undefined),
    );
  const fine = inspected(folder, "fine");
  expect([fine.stderr, fine.status]).toEqual(["", 1]);
  const ways = ["refused", "memory", "ended", "exits", "throws", "missing", "uncopied"];
  for (const way of notEmpty(EVERY ? ways : some(ways, 2, seed))) {
    const { stdout, stderr, status, signal } = inspected(folder, way);
    expect([way, status, signal, stderr]).toEqual([way, 1, null, ""]);
    expect(stdout === fine.stdout, way).toBe(true);
  }
});
