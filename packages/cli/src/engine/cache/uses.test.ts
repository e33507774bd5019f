import { mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { InspectionRecord } from "@plumbmark/core";
import { expect, onTestFinished, test, vi } from "vitest";
import { plumbmark } from "../../../../../tests/plumbmark.js";
import { copyStarter } from "../../../../../tests/starter.js";

const scratch = (): string => {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-uses-")));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
};

test("a build that takes more of an item ends what is cached of those that take of it on the same days", async () => {
  const folder = scratch();
  vi.stubEnv("XDG_CACHE_HOME", scratch());
  copyStarter(folder);
  const inChange = (path: string, from: string, to: string): void => {
    const text = readFileSync(join(folder, path), "utf8");
    expect(text).toContain(from);
    writeFileSync(join(folder, path), text.replace(from, to));
  };
  const promised = async (): Promise<readonly string[]> => {
    const { out } = await plumbmark(folder, ["inspect", "--as", "json"]);
    const { documents } = JSON.parse(out) as InspectionRecord;
    const banner = documents.find(({ build }) => build === "over-stage-banner");
    expect(banner?.counts.holds).toBeGreaterThan(100);
    return (banner?.checks ?? [])
      .filter(({ rule, outcome }) => rule === "stock.promised-twice" && outcome !== "holds")
      .map(({ says }) => says);
  };
  expect(await promised()).toEqual([]);
  // Neither the days nor what is taken of the lots are others: only how many shackles.
  inChange("builds/side-strips.md", "shackle-3-8: 2", "shackle-3-8: 99");
  expect((await promised()).join("\n")).toMatch(/Of shackle-3-8 \d+ are promised; there are 30\./u);
});
