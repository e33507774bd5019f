import { type CheckEntry, inspect } from "@plumbmark/core";
import { marginBar } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import type { Element } from "hast";
import { describe, expect, it } from "vitest";
import { starterFiles, TODAY } from "../starter-files.js";

const checks = inspect(starterFiles, rules, { today: TODAY, every: true }).documents.flatMap((each) => each.checks);
const base: Omit<CheckEntry, "outcome"> = {
  rule: "a.b",
  level: "shall",
  at: { path: "", line: 1, column: 1, endLine: 1, endColumn: 1 },
  says: "",
  sources: [],
};
const parts = (bar: Element | undefined, name: string): Element[] =>
  (bar?.children ?? []).filter((each): each is Element => each.type === "element" && each.tagName === name);
/** What the bar measures: its coloured rectangle against the track. */
const drawn = (bar: Element | undefined): number | undefined => {
  const [track, filled] = parts(bar, "rect").map((each) => Number(each.properties.width));
  return filled === undefined ? undefined : filled / (track as number);
};

describe("the margin bar", () => {
  it("is as long as the record's share, up to half as much again", () => {
    const shared = checks.filter(({ share, allowed }) => share !== undefined && share >= 0.01 && allowed?.sense !== "exactly");
    expect(shared.length).toBeGreaterThan(100);
    for (const check of shared) expect(drawn(marginBar(check))).toBeCloseTo(Math.min(check.share as number, 1.5), 9);
  });

  it("is dashed and empty where it cannot be told, and says so", () => {
    const bar = marginBar({ ...base, outcome: "open" });
    expect(drawn(bar)).toBeUndefined();
    expect(parts(bar, "rect")[0]?.properties.strokeDashArray).toBeDefined();
    expect(bar?.properties.ariaLabel).toContain("cannot be told");
  });

  it("is not drawn for a plain statement", () => {
    expect(marginBar({ ...base, outcome: "holds" })).toBeUndefined();
  });

  it("has a word and a hatch for every outcome, and is broken off beyond its end", () => {
    const bars = (["holds", "fails", "waived"] as const).map((outcome) => marginBar({ ...base, outcome, share: 0.8 }));
    expect(new Set(bars.map((bar) => parts(bar, "path")[0]?.properties.d)).size).toBe(3);
    for (const [index, word] of ["holds", "fails", "waived"].entries())
      expect(JSON.stringify(parts(bars[index], "text")[0]?.children)).toContain(word);
    const over = (share: number) => parts(marginBar({ ...base, outcome: "fails", share }), "path").length;
    expect(over(4)).toBe(over(1.2) + 1);
  });

  it("never rounds a check that fails to its limit, nor one that holds over it", () => {
    expect(marginBar({ ...base, outcome: "fails", share: 1.0001 })?.properties.ariaLabel).toContain("just over 100 %");
    expect(marginBar({ ...base, outcome: "holds", share: 0.9999 })?.properties.ariaLabel).toContain("just under 100 %");
  });
});
