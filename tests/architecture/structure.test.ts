import { dirname } from "node:path";
import { describe, expect, test } from "vitest";
import { circlesIn, type Graph, PACKAGES, readSource, type Source, sourcesUnder, targetOf } from "./graph.js";

const packages = PACKAGES.map(({ folder }) => sourcesUnder(folder).map((path) => readSource(path)));
const ours = packages.flat();
const all = [...ours, ...["docs-site/browser", "tests"].flatMap(sourcesUnder).map((path) => readSource(path))];

const graphOf = (sources: readonly Source[], what: (source: Source) => readonly string[]): Graph =>
  new Map(sources.map((source) => [source.path, what(source).flatMap((each) => targetOf(source.path, each) ?? [])]));

test("there are sources to look at", () => {
  expect(ours.length).toBeGreaterThan(500);
  expect(ours.flatMap(({ exports }) => exports).length).toBeGreaterThan(1000);
  expect([...graphOf(ours, ({ values }) => values).values()].flat().length).toBeGreaterThan(1000);
});

describe("the reading of sources", () => {
  test("tells values from types", () => {
    const text = [
      `import type { A } from "./a.js";`,
      `import { type B } from "./b.js";`,
      `import { type C, c } from "./c.js";`,
      `import "./d.js";`,
      `export * from "./e.js";`,
      `export type { F } from "./f.js";`,
      `const g = () => import("./g.js");`,
    ].join("\n");
    const { values, types } = readSource("x/y.ts", text);
    expect([...values].sort()).toEqual(["./c.js", "./d.js", "./e.js", "./g.js"]);
    expect([...types].sort()).toEqual(["./a.js", "./b.js", "./f.js"]);
  });

  test("finds what is declared and exported, and nothing else", () => {
    const text = `export const a = 1, b = 2;\nexport function c() {}\nexport type D = 1;\nexport { e } from "./e.js";\nconst f = 1;\nexport default f;`;
    expect(readSource("x/y.ts", text).exports).toEqual(["a", "b", "c", "D"]);
  });

  test("finds circles, and none where there is none", () => {
    const graph = (edges: Record<string, readonly string[]>): Graph => new Map(Object.entries(edges));
    expect(circlesIn(graph({ a: ["b"], b: ["c"], c: ["a"], d: ["a"] }))).toEqual([["a", "b", "c"]]);
    expect(circlesIn(graph({ a: ["b", "c"], b: ["c"], c: [] }))).toEqual([]);
    expect(circlesIn(graph({ a: ["a"] }))).toEqual([["a"]]);
  });
});

describe("imports", () => {
  test("of values form no circle", () => {
    expect(circlesIn(graphOf(all, ({ values }) => values))).toEqual([]);
  });

  test("of types form one only inside a folder", () => {
    const circles = circlesIn(graphOf(all, ({ values, types }) => [...values, ...types]));
    const wide = circles.filter((circle) => new Set(circle.map((path) => dirname(path))).size > 1);
    expect(wide).toEqual([]);
  });
});

test("no exported name is declared twice: a name leads to one thing", () => {
  const places = new Map<string, string[]>();
  for (const { path, exports } of ours)
    for (const name of exports) places.set(name, [...(places.get(name) ?? []), path]);
  expect([...places].filter(([, paths]) => paths.length > 1)).toEqual([]);
});

/** Folders with more than twenty sources, and why they are not divided. */
const LARGE: Readonly<Record<string, string>> = {
  "packages/calc/src/signal": "rasters, links and what they carry: a standard's table or formula each, used across",
  "packages/cli/src/commands": "a command each",
  "packages/cli/src/report": "a form of report each, and the pieces they share",
};

test("a folder has at most twenty sources, or a reason", () => {
  const counts = new Map<string, number>();
  for (const { path } of ours) counts.set(dirname(path), (counts.get(dirname(path)) ?? 0) + 1);
  const large = [...counts].filter(([, count]) => count > 20).map(([folder]) => folder);
  expect(large.filter((folder) => !(folder in LARGE))).toEqual([]);
});
