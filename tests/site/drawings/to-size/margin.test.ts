import type { CheckEntry } from "@plumbmark/core";
import { htmlText, marginBar, marginMarks } from "@plumbmark/docs-site";
import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { number, read, words } from "../read.js";
import { boxOf, having, only } from "./paper.js";

// A share is a length: 50 % is half as far as the line of what is allowed.

const check = (share: number, outcome: CheckEntry["outcome"]): CheckEntry => ({
  rule: "a.b",
  level: "shall",
  outcome,
  at: { path: "", line: 1, column: 1, endLine: 1, endColumn: 1 },
  says: "",
  sources: [],
  share,
});

const marks = read(htmlText(marginMarks));
const scale = having(marks, "id", "Margin-scale");
const [track, limit] = scale.children.filter((each) => each.type === "element") as [Element, Element];
const allowed = Number(/^M([\d.]+) 0v15$/u.exec(limit.attributes.d ?? "")?.[1]);

it("the line of what is allowed stands at the end of the track", () => {
  const { x, width } = boxOf(track);
  expect(allowed).toBe(x + width);
  expect(width).toBe(100);
});

describe.each([
  [0.25, "holds", 25],
  [0.5, "holds", 50],
  [1, "holds", 100],
  [1.25, "fails", 125],
  // Broken off at half as much again.
  [3, "fails", 150],
] as const)("a share of %d that %s", (share, outcome, length) => {
  const made = marginBar(check(share, outcome));
  const bar = read(made ? htmlText(made) : "<none/>");
  const box = boxOf(only(bar.all("rect")));

  it(`is a bar of ${length} beside a track of 100`, () => {
    expect(box.x).toBe(boxOf(track).x);
    expect([box.y, box.height]).toEqual([boxOf(track).y, boxOf(track).height]);
    expect(box.width).toBeCloseTo(length, 6);
    expect(box.x + box.width <= allowed).toBe(share <= 1);
  });

  it("says its figure to the right of the longest bar", () => {
    const label = only(bar.all("text"));
    expect(number(label, "x")).toBeGreaterThan(150);
    expect(words(label)).toBe(`${outcome}, used ${share * 100} %`);
  });
});
