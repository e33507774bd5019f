import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { rules } from "@plumbmark/rules";
import { afterAll, expect, test, vi } from "vitest";
import { plumbmark } from "../plumbmark.js";
import { copyStarter } from "../starter.js";

// Whoever wants to know how a check comes about begins at the command and goes from function to function. The stack at
// the first rule is that walk.

/** What judges: the rest only leads there. */
const JUDGES = ["inspectDocument", "sureChecks", "judgeDocument", "runRule", "applyRule"];

const scratch = mkdtempSync(join(tmpdir(), "plumbmark-walk-"));
const { stackTraceLimit } = Error;

afterAll(() => {
  Error.stackTraceLimit = stackTraceLimit;
  rmSync(scratch, { recursive: true });
});

/** Functions of ours that stand on the stack when the first rule is run, from the command on. */
async function walk(...words: readonly string[]): Promise<readonly string[]> {
  Error.stackTraceLimit = 100;
  const stacks: string[] = [];
  const [first] = rules;
  const { checks } = first as NonNullable<typeof first>;
  const spy = vi.spyOn(first as { checks: typeof checks }, "checks").mockImplementation((given) => {
    stacks.push(new Error("here").stack ?? "");
    return checks(given as never);
  });
  await plumbmark(scratch, words).finally(() => spy.mockRestore());
  return (stacks[0] ?? "")
    .replaceAll(/ \[as \w+\]/gu, "")
    .split("\n")
    .flatMap((line) => /([\w$#]+) \(.*\/packages\/(?:cli|core)\/(?:src|dist)\//u.exec(line)?.[1] ?? [])
    .reverse();
}

test("from the command `inspect` to the first rule at most six functions judge nothing", async () => {
  copyStarter(join(scratch, "docs"));
  const all = await walk("inspect", "docs", "--no-cache");
  expect(all).toEqual(expect.arrayContaining(["inspectCommand", ...JUDGES]));
  const leading = all.slice(all.indexOf("inspectCommand")).filter((name) => !JUDGES.includes(name));
  // The words of DEVELOPERS.md: whoever adds one has to take one out.
  expect(leading).toEqual(["inspectCommand", "inspect", "inspectCached", "inspectMany", "one", "#judge"]);
});
