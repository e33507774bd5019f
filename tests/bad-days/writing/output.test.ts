import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { some } from "../../run/some.js";
import { command, docs, EVERY, environment, scratch, seed } from "./command.js";

// Where the output goes to: a pipe somebody closes, a disk that is full, nothing at all.

const shell = (folder: string, line: string) =>
  spawnSync("bash", ["-c", line.replaceAll("plumbmark", `'${process.execPath}' '${command}'`)], {
    cwd: folder,
    env: environment(folder),
    encoding: "utf8",
  });

const COMMANDS = [
  "inspect --every",
  "inspect --every --as json",
  "inspect --every --as sarif",
  "inspect --every --as gnu",
  "inspect --every --as markdown",
  "workings builds/small-screen.md --as json",
  "takeoff builds/small-screen.md --as csv",
  "rules --as markdown",
  "collate record.json --as json",
];

/** All in a deep run, else every fourth: others in each run, and others for each test. */
const taken = (of: number) => [...COMMANDS.entries()].filter(([index]) => EVERY || (index + seed + 2 * of) % 4 === 0);

let record: string | undefined;

function ready(): string {
  const folder = docs(scratch());
  record ??= shell(folder, "plumbmark inspect --every --as json").stdout;
  writeFileSync(join(folder, "record.json"), record);
  return folder;
}

test("a reader that closes the pipe is no fault: quiet, and the status is that of the command", {
  timeout: 120_000,
}, () => {
  const folder = ready();
  for (const [index, words] of notEmpty(taken(0))) {
    const reader = index % 2 === 0 ? "head -c 1 >/dev/null" : "true";
    const { stdout, stderr } = shell(folder, `plumbmark ${words} | ${reader}; echo \${PIPESTATUS[0]}`);
    const { status } = shell(folder, `plumbmark ${words} >/dev/null`);
    expect([words, stderr, stdout]).toEqual([words, "", `${status}\n`]);
  }
});

test.skipIf(!existsSync("/dev/full"))(
  "a full disk behind the output is status 2 with the reason",
  { timeout: 120_000 },
  () => {
    const folder = ready();
    for (const [, words] of notEmpty(taken(1))) {
      const { status, stderr } = shell(folder, `plumbmark ${words} >/dev/full`);
      expect([words, status]).toEqual([words, 2]);
      expect(stderr, words).toContain("there is no room left on the disk");
      expect(stderr, words).not.toContain("mistake in Plumbmark");
    }
  },
);

test("a file that may not grow to hold all of it is status 2, not a report cut short", () => {
  const folder = ready();
  const { status, stderr } = shell(folder, "ulimit -f 8; plumbmark inspect --every --as json --no-cache > out.json");
  expect([status, stderr.split("\n").length]).toEqual([2, 3]);
  expect(stderr).toContain("larger than is allowed");
  expect(readFileSync(join(folder, "out.json")).length).toBeLessThanOrEqual(8192);
});

test("closed streams change nothing but what can be seen", { timeout: 60_000 }, () => {
  const folder = ready();
  const { status } = shell(folder, "plumbmark inspect");
  expect([0, 1]).toContain(status);
  const closings = [">&-", "2>&-", "<&-", "<&- >&- 2>&-"];
  for (const closed of notEmpty(EVERY ? closings : some(closings, 2, seed)))
    expect([closed, shell(folder, `plumbmark inspect ${closed}`).status]).toEqual([closed, status]);
});

test("what cannot be said does not end in a loop or a stack", () => {
  const folder = scratch();
  mkdirSync(join(folder, "empty"));
  expect(shell(folder, "plumbmark inspect empty 2>/dev/full").status).toBe(2);
});
