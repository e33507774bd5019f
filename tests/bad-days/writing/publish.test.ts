import { spawn } from "node:child_process";
import { cpSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { some } from "../../run/some.js";
import { docs, EVERY, environment, run, scratchUntilEnd, seed, stepsOf, tree, wordsOf } from "./command.js";

// The real command, over an earlier site: whatever refuses or ends it, and wherever, the earlier site stays whole or
// the new one stands whole, and the next publish makes the same bytes and leaves nothing beside them.

const words = ["publish", "docs", "--to", "site"];
let model: string;
let was: ReturnType<typeof tree>;
let is: ReturnType<typeof tree>;
let steps: number;
const folder = scratchUntilEnd();

const outside = (path: string): boolean => !path.startsWith("site");
const site = (): ReturnType<typeof tree> => tree(folder(), outside);
const beside = (): readonly string[] => readdirSync(folder()).filter((name) => name.startsWith(".site"));

function begin(): void {
  rmSync(folder(), { recursive: true, force: true });
  cpSync(model, folder(), { recursive: true });
}

const models = scratchUntilEnd();
beforeAll(() => {
  model = join(models(), "model");
  docs(join(model, "docs"));
  run(model, words);
  was = tree(model, outside);
  writeFileSync(join(model, "docs/house-standard.yaml"), "house-standard: Another\npractice: us\n");
  begin();
  steps = stepsOf(folder(), words);
  is = site();
  expect(is).not.toEqual(was);
}, 120_000);

/**
 * The first, one among the pages, and the last: the mark, both moves, the clearing away. In an ordinary run it is refused
 * at one of them and killed at one, others each time: a publish takes longer than all else here, and every step of
 * writing a small site is tried beside this.
 */
const places = (count: number): readonly (readonly [index: number, at: number])[] => {
  const all = Array.from({ length: steps }, (_, index) => index + 1);
  const few = [1, Math.floor(steps / 2), ...all.slice(-4)];
  return EVERY ? [...all.entries()] : some([...few.entries()], count, seed);
};

test("refused at a step, it leaves the earlier site or the new one", { timeout: EVERY ? 7_200_000 : 240_000 }, () => {
  for (const [index, at] of notEmpty(places(1))) {
    begin();
    const code = index % 2 === 0 ? "ENOSPC" : "EIO";
    const { status, err } = run(folder(), words, { at, code, on: index % 2 === 0 });
    const told = `step ${at} of ${steps}, ${code}: ${err}`;
    expect(site(), told).toEqual(status === 0 ? is : was);
    if (status === 0) continue;
    expect(status, told).toBe(2);
    expect(err, told).toMatch(
      /^plumbmark: The site cannot be written to .*site: (?:there is no room|the disk reports)/u,
    );
    expect(beside(), told).toEqual([]);
  }
});

test("killed at a step, it leaves the earlier site or the new one to the next", {
  timeout: EVERY ? 7_200_000 : 240_000,
}, () => {
  const signals = ["SIGKILL", "SIGINT", "SIGTERM", "SIGHUP"] as const;
  for (const [index, at] of notEmpty(places(1))) {
    begin();
    const wanted = signals[index % signals.length] as NodeJS.Signals;
    const { signal } = run(folder(), words, { at, signal: wanted });
    const told = `step ${at} of ${steps}, ${wanted}`;
    expect(signal, told).toBe(wanted);
    const now = site();
    // Between the two moves the place is empty, and the earlier site waits beside it.
    if ("site/index.html" in now) expect([was, is], told).toContainEqual(now);
    else expect(at, told).toBe(steps - 1);
    expect(run(folder(), words).status, told).toBe(0);
    expect([site(), beside()], told).toEqual([is, []]);
  }
});

test("two at once both leave a whole site", { timeout: 120_000 }, async () => {
  begin();
  const env = { ...environment(folder()), PLUMBMARK_FAULT: "{}" };
  const both = await Promise.all(
    [1, 2].map(
      () =>
        new Promise<readonly [number | null, string]>((resolve) => {
          const child = spawn(process.execPath, [...wordsOf(words)], { cwd: folder(), env });
          let err = "";
          child.stderr.setEncoding("utf8").on("data", (text: string) => {
            err += text;
          });
          child.on("close", (status) => resolve([status, err]));
        }),
    ),
  );
  expect(both).toEqual([
    [0, ""],
    [0, ""],
  ]);
  expect([site(), beside()]).toEqual([is, []]);
});
