import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { starterRepository } from "@plumbmark/starter";
import { expect, test, vi } from "vitest";
import { oldFormText } from "../../../../tests/old-form.js";
import { plumbmark } from "../../../../tests/plumbmark.js";

test("inspect --watch inspects again after a change, and ends with the status of the last time", async () => {
  const folder = mkdtempSync(join(tmpdir(), "plumbmark-watch-"));
  mkdirSync(join(folder, "builds"));
  for (const name of ["parts", "stock.yaml"])
    cpSync(join(starterRepository, name), join(folder, name), { recursive: true });
  writeFileSync(join(folder, "builds/small-screen.md"), oldFormText("builds/small-screen.md"));
  writeFileSync(join(folder, "house-standard.yaml"), "house-standard: Watched\npractice: us\n");
  const printed: string[] = [];
  const told: string[] = [];
  let end: () => void = () => undefined;
  const ended = new Promise<void>((resolve) => {
    end = resolve;
  });
  const context = {
    today: "2027-01-01",
    print: (text: string) => void printed.push(text),
    warn: (text: string) => void told.push(text),
    ended: () => ended,
  };
  try {
    const running = plumbmark(folder, ["inspect", "--as", "gnu", "--watch"], context);
    await vi.waitFor(() => expect(told.join("")).toContain("Watching"), { timeout: 20_000 });
    const path = join(folder, "builds/small-screen.md");
    const text = readFileSync(path, "utf8").replace(/^build: .*$/mu, "build: [not, a, name]");
    // The watcher is ready a moment after it is made: the change is repeated until it is seen.
    await vi.waitFor(
      () => {
        writeFileSync(path, text);
        expect(printed.length).toBeGreaterThan(1);
      },
      { timeout: 30_000, interval: 1000 },
    );
    end();
    expect((await running).status).toBe(1);
    expect(printed.at(-1)).toContain("document.front-matter");
  } finally {
    end();
    rmSync(folder, { recursive: true, force: true });
  }
});
