import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { RepositoryFiles, SourceFile } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";
import { expect, onTestFinished, test } from "vitest";
import { oldFormText } from "../../../../../tests/old-form.js";
import { gitBlobName } from "../../source/blob-name.js";
import { ResultCache } from "./cache.js";
import { inspectCached } from "./inspect-cached.js";

const read = (path: string): SourceFile => ({ path, text: readFileSync(join(starterRepository, path), "utf8") });

const BANNER = "builds/over-stage-banner.md";
const STRIPS = "builds/side-strips.md";

test("a build that takes more of an item ends what is cached of those that take of it on the same days", async () => {
  const folder = mkdtempSync(join(tmpdir(), "plumbmark-uses-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const filesWith = (strips: string): RepositoryFiles => ({
    documents: Object.entries({ [BANNER]: oldFormText(BANNER), [STRIPS]: strips }).map(([path, text]) => ({
      ...{ path, text, id: gitBlobName(Buffer.from(text)) },
    })),
    parts: readdirSync(join(starterRepository, "parts")).map((name) => read(`parts/${name}`)),
    stock: read("stock.yaml"),
    papers: readdirSync(join(starterRepository, "letters")).map((name) => `letters/${name}`),
    houseStandard: read("house-standard.yaml"),
  });
  const promised = async (strips: string): Promise<string> => {
    const cache = new ResultCache(folder, "an edition");
    const { documents } = await inspectCached(filesWith(strips), rules, { today: "2027-01-10" }, cache);
    cache.save();
    const banner = documents.find(({ file }) => file === BANNER);
    expect(banner?.counts.holds).toBeGreaterThan(100);
    return (banner?.checks ?? [])
      .filter(({ rule }) => rule === "stock.promised-twice")
      .map(({ says }) => says)
      .join("\n");
  };
  const strips = oldFormText(STRIPS);
  expect(strips).toContain("shackle-3-8: 2\n");
  expect(await promised(strips)).toBe("");
  // Neither the days nor what is taken of the lots are others: only how many shackles.
  const more = strips.replace("shackle-3-8: 2\n", "shackle-3-8: 99\n");
  expect(await promised(more)).toMatch(/Of shackle-3-8 \d+ are promised; there are 30\./u);
});
