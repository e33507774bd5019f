import { spawn } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { command, docs, environment, scratch, tree } from "./command.js";

interface Ended {
  readonly status: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly said: string;
}

/** Ends a command that watches as soon as it says so. */
function endedBy(folder: string, words: readonly string[], signal: NodeJS.Signals): Promise<Ended> {
  const child = spawn(process.execPath, [command, ...words], { cwd: folder, env: environment(folder) });
  let said = "";
  const take = (text: string): void => {
    said += text;
    // The watcher is made a moment after it is told.
    if (text.includes("Watching")) setTimeout(() => child.kill(signal), 500);
  };
  for (const stream of [child.stdout, child.stderr]) stream.setEncoding("utf8").on("data", take);
  return new Promise((resolve) => child.once("close", (status, by) => resolve({ status, signal: by, said })));
}

test("Ctrl-C ends watching with the status of the last inspection, and SIGTERM as ever", {
  timeout: 120_000,
}, async () => {
  const folder = docs(scratch());
  expect(await endedBy(folder, ["inspect", "--watch"], "SIGINT")).toMatchObject({ status: 0, signal: null });
  expect(await endedBy(folder, ["inspect", "--watch"], "SIGTERM")).toMatchObject({ status: null, signal: "SIGTERM" });
  writeFileSync(join(folder, "builds/other.md"), "---\nbuild: other\n---\n");
  expect(await endedBy(folder, ["inspect", "--watch"], "SIGINT")).toMatchObject({ status: 1, signal: null });
});

test("Ctrl-C leaves a published site whole, and nothing beside it", { timeout: 120_000 }, async () => {
  const folder = scratch();
  docs(join(folder, "docs"));
  expect(await endedBy(folder, ["publish", "docs", "--to", "site", "--watch"], "SIGINT")).toMatchObject({ status: 0 });
  expect(Object.keys(tree(folder)).filter((path) => /^\.site|^site\/index/u.test(path))).toEqual(["site/index.html"]);
});
