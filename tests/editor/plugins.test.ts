import { pluginRules } from "@plumbmark/core";
import { expect, test } from "vitest";
import { starter } from "../documents/repository.js";
import { Client } from "./client.js";

const BANNER = "builds/over-stage-banner.md";

test("rules of plugins arrive later than the rest, and nothing is said of them before", async () => {
  const text = starter().documents.find(({ path }) => path === BANNER)?.text ?? "";
  const at = { path: "title", line: 3, column: 1, endLine: 3, endColumn: 6 };
  const found = {
    rule: "low.brackets",
    from: "./low.mjs",
    level: "should",
    outcome: "fails",
    at,
    says: "A title.",
    sources: [],
  } as const;
  const stated = {
    id: "low.brackets",
    states: "S.",
    level: "should",
    why: "w",
    judged: "j",
    sources: ["house"],
    plugin: "./low.mjs",
  } as const;
  let asked: readonly string[] = [];
  let given: readonly string[] = [];
  let release: () => void = () => undefined;
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  const client = await Client.of({
    files: { ...starter(), wishes: [{ path: "wishes/one.yaml", text: "wish: one\ntitle: One\n" }] },
    plugins: ["./low.mjs"],
    pluginRules: async (_, files, wanted) => {
      asked = wanted;
      given = Object.keys(files);
      await held;
      const outcomes = Object.fromEntries(
        files.documents.map(({ path }) => [path, { checks: path === BANNER ? [found] : [] }]),
      );
      return pluginRules({ rules: [{ stated, outcomes }], failed: [], refused: [] });
    },
  });
  const first = await client.open(BANNER, text);
  expect(first.map(({ code }) => code)).toEqual([]);
  release();
  const later = await client.until(BANNER, (all) => all.length > 0);
  expect(later.map(({ code, message }) => [code, message])).toEqual([["low.brackets", "A title."]]);
  expect(asked).toEqual([BANNER]);
  // What a plugin is given decides whether it is asked anew.
  expect(given).toContain("documents");
  expect(given).not.toContain("wishes");
});
