import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { SMALL, starter, TODAY } from "../documents/repository.js";
import { pageOf } from "./page-of.js";

/** The page of a document on its own. */
function page(text: string): string {
  const files = { ...starter(), documents: [{ path: "builds/small.md", text }], surveys: [] };
  return pageOf({ files, rules, today: TODAY }, /^builds\/[^/]+\.html$/u) ?? "";
}

// OSHA 4105: outdoors only, away from doors, windows and vents.
const EXHAUST = "stands outdoors, away from doors, windows and air inlets";

describe("the cautions the product prints", () => {
  test("tell how it comes down, in the order in which nobody is hurt", () => {
    const text = page(SMALL);
    const [open, plug, second, count] = [
      "breakers open, locked and tagged",
      "only then touch a plug",
      "second suspension comes off last",
      "counted back",
    ].map((words) => text.indexOf(words));
    expect(open).toBeGreaterThan(0);
    for (const [before, after] of [
      [open, plug],
      [plug, second],
      [second, count],
    ])
      expect(Number(after)).toBeGreaterThan(Number(before));
  });

  test("tell of a generator where there is one", () => {
    expect(page(SMALL)).not.toContain(EXHAUST);
    const set = SMALL.replace("  circuits:\n", "  supplies: {set-1: {generator: {rated: 20 kVA}}}\n  circuits:\n");
    expect(page(set)).toContain(EXHAUST);
  });

  test("tell of everything where nothing can be read", () =>
    expect(page(SMALL.replace("faces:\n", "faces: {\n"))).toContain(EXHAUST));
});
