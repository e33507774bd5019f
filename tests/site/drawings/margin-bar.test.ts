import type { CheckEntry } from "@plumbmark/core";
import { htmlText, marginBar, marginMarks } from "@plumbmark/docs-site";
import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { openedStarter } from "../../documents/repository.js";
import { read, words } from "./read.js";

const checks = openedStarter()
  .all()
  .documents.flatMap((each) => each.checks);
const base: Omit<CheckEntry, "outcome"> = {
  rule: "a.b",
  level: "shall",
  at: { path: "", line: 1, column: 1, endLine: 1, endColumn: 1 },
  says: "",
  sources: [],
};
const parts = (bar: string | undefined, name: string): readonly Element[] =>
  bar === undefined ? [] : read(bar).all(name);
const barOf = (check: CheckEntry): string | undefined => {
  const bar = marginBar(check);
  return bar && htmlText(bar);
};
const labelOf = (check: CheckEntry): string => read(barOf(check) ?? "<none/>").root.attributes["aria-label"] ?? "";
/** What all bars are measured against stands on the page once. */
const marks = read(htmlText(marginMarks));
const scaleOf = (bar: string | undefined) => {
  const [use] = parts(bar, "use");
  const [, group] = marks.having("id").find(([id]) => `#${id}` === use?.attributes.href) ?? [];
  return group?.children[0] as Element;
};
/** What the bar measures: its coloured rectangle against the track. */
const drawn = (bar: string | undefined): number | undefined => {
  const [filled] = parts(bar, "rect");
  return filled && Number(filled.attributes.width) / Number(scaleOf(bar).attributes.width);
};

describe("the margin bar", () => {
  it("is as long as the record's share, up to half as much again", () => {
    const shared = checks.filter(
      ({ share, allowed }) => share !== undefined && share >= 0.01 && allowed?.sense !== "exactly",
    );
    expect(shared.length).toBeGreaterThan(100);
    for (const check of shared) expect(drawn(barOf(check))).toBeCloseTo(Math.min(check.share as number, 1.5), 3);
  });

  it("is dashed and empty where it cannot be told, and says so", () => {
    const check = { ...base, outcome: "open" } as const;
    const bar = barOf(check);
    expect(drawn(bar)).toBeUndefined();
    expect(scaleOf(bar).attributes["stroke-dasharray"]).toBeDefined();
    expect(labelOf(check)).toContain("cannot be told");
  });

  it("is not drawn for a plain statement", () => {
    expect(marginBar({ ...base, outcome: "holds" })).toBeUndefined();
  });

  it("has a word and a hatch for every outcome, and is broken off beyond its end", () => {
    const bars = (["holds", "fails", "waived"] as const).map((outcome) => barOf({ ...base, outcome, share: 0.8 }));
    const tiles = bars.map((bar) => {
      const id = /^url\(#(.*)\)$/u.exec(parts(bar, "rect")[0]?.attributes.fill ?? "")?.[1];
      return marks.having("id").find(([own]) => own === id)?.[1].children[0] as Element;
    });
    expect(new Set(tiles.map(({ attributes }) => attributes.d)).size).toBe(3);
    for (const [index, word] of ["holds", "fails", "waived"].entries())
      expect(words(parts(bars[index], "text")[0] as Element)).toContain(word);
    const over = (share: number) => parts(barOf({ ...base, outcome: "fails", share }), "path").length;
    expect(over(4)).toBe(over(1.2) + 1);
  });

  it("never rounds a check that fails to its limit, nor one that holds over it", () => {
    expect(labelOf({ ...base, outcome: "fails", share: 1.0001 })).toContain("just over 100 %");
    expect(labelOf({ ...base, outcome: "holds", share: 0.9999 })).toContain("just under 100 %");
  });
});
