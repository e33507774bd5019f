import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as after } from "node:timers/promises";
import { expect, test } from "vitest";
import { command, docs, environment, scratch, tree } from "./command.js";

/** A wish whose search takes many seconds: everything that can be made of what is on the shelf. */
const LONG = "wish: long\ntitle: Everything there is\nsupport: wall\nout-of: holdings\n";

test("Ctrl-C ends a draft while it is searching, and nothing is written", { timeout: 60_000 }, async () => {
  const folder = scratch();
  docs(folder);
  mkdirSync(join(folder, "wishes"));
  writeFileSync(join(folder, "wishes/long.yaml"), LONG);
  const was = tree(folder);
  const words = [command, "draft", "wishes/long.yaml", "--every", "--option", "1", "--to", "builds/long.md"];
  const child = spawn(process.execPath, words, {
    cwd: folder,
    env: environment(folder),
    stdio: "ignore",
  });
  const ended = once(child, "exit") as Promise<[number | null, NodeJS.Signals | null]>;
  // Alone the search takes many times as long.
  await after(1500);
  child.kill("SIGINT");
  const [status, signal] = await ended;
  expect([status, signal]).toEqual([null, "SIGINT"]);
  expect(tree(folder)).toEqual(was);
});
