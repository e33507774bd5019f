import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { draftCommand } from "../../packages/cli/src/commands/draft.js";
import { Trouble } from "../../packages/cli/src/terminal/trouble.js";
import { copyStarter } from "../starter.js";

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "plumbmark-draft-"));
  copyStarter(folder);
});

afterAll(() => rmSync(folder, { recursive: true }));

async function run(wishes: readonly string[], options: Partial<Parameters<typeof draftCommand>[1]> = {}) {
  let printed = "";
  const context = {
    folder,
    today: "2026-12-01",
    width: 110,
    colour: 0 as const,
    print: (text: string) => {
      printed += text;
    },
    warn: () => undefined,
  };
  const status = await draftCommand(wishes, { as: "text", ...options }, context);
  return { status, printed };
}

const STRIP = "wishes/summer-strip.yaml";

describe("plumbmark draft", () => {
  test("prints options, and writes the one that is chosen, once", async () => {
    const { status, printed } = await run([STRIP]);
    expect(status).toBe(0);
    expect(printed).toMatch(/Option 1: Nearest to what was asked for/u);
    await run([STRIP], { option: "1", to: "builds/strip.md" });
    const text = readFileSync(join(folder, "builds/strip.md"), "utf8");
    expect(text).toMatch(/^---\nbuild: strip\n[\s\S]*\nstatus: draft\nvenue: marlow-quay-hall\n/u);
    await expect(run([STRIP], { option: "1", to: "builds/strip.md" })).rejects.toThrow(/is there already/u);
    await run([STRIP], { option: "2", to: "builds/strip.md", replace: true });
    expect(readFileSync(join(folder, "builds/strip.md"), "utf8")).not.toBe(text);
    rmSync(join(folder, "builds/strip.md"));
  });

  test("gives status 1 where nothing on offer meets the wish, and says what can be made", async () => {
    const text = readFileSync(join(folder, STRIP), "utf8").replace(/height: [^}]+/u, "height: exactly 3 ft");
    writeFileSync(join(folder, "wishes/odd.yaml"), text);
    const { status, printed } = await run(["wishes/odd.yaml"]);
    expect(status).toBe(1);
    expect(printed).toMatch(/The nearest that can be made is 1 ft 7-3\/4 in × 3 ft 3-1\/4 in/u);
    rmSync(join(folder, "wishes/odd.yaml"));
  });

  test("lays out a build that stands in another size, in its place", async () => {
    const { status, printed } = await run([], { like: "builds/over-stage-banner.md", width: "7 ft" });
    expect(status).toBe(0);
    expect(printed).toMatch(/faces\.display\.columns: 6 → 4/u);
    expect(existsSync(join(folder, "builds/over-stage-banner-again.md"))).toBe(false);
  });

  test("asks for what it needs", async () => {
    await expect(run([STRIP], { option: "1" })).rejects.toThrow(Trouble);
    await expect(run([STRIP], { option: "first", to: "builds/a.md" })).rejects.toThrow(/number of no option/u);
    await expect(run([STRIP], { option: "1", to: "../a.md" })).rejects.toThrow(/outside/u);
    await expect(run(["wishes/none.yaml"])).rejects.toThrow(/cannot be read/u);
  });
});
