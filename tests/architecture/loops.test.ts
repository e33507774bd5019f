import { readdirSync } from "node:fs";
import { join, relative } from "node:path";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { hollowLoops } from "./loops.js";
import { sourceAt, sourceOf } from "./sources.js";

// A loop over nothing asserts nothing, and its test passes: of every loop that asserts, and of every list of cases, it
// has to be seen that there is something in it. A list written there has; `notEmpty(…)` sees to it; else a test says so.

const over = (text: string): readonly string[] => hollowLoops(sourceOf(text)).map((each) => each.over);

describe("is found", () => {
  test.each([
    ["for … of", `test("a", () => { for (const a of found()) expect(a).toBe(1); });`, "found()"],
    ["for … in", `test("a", () => { for (const a in found()) expect(a).toBe(1); });`, "found()"],
    ["forEach", `it("a", () => { found().forEach((a) => { expect(a).toBe(1); }); });`, "found()"],
    ["map", `it("a", async () => { await Promise.all(found().map(async (a) => expect(a).toBe(1))); });`, "found()"],
    ["a parameter", `test.each([[[]]])("a", (list) => { for (const a of list) expect(a).toBe(1); });`, "list"],
    ["an empty list", `const none = []; test("a", () => { for (const a of none) expect(a).toBe(1); });`, "none"],
    ["a filter", `test("a", () => { for (const a of [1].filter(odd)) expect(a).toBe(1); });`, "[1].filter(odd)"],
    ["a spread", `test("a", () => { for (const a of [...found()]) expect(a).toBe(1); });`, "[...found()]"],
    [
      "a loop in a loop",
      `test("a", () => { for (const a of [1]) for (const b of of(a)) expect(b).toBe(1); });`,
      "of(a)",
    ],
    [
      "one of two",
      `test("a", () => { expect(other).toEqual([1]); for (const a of list) expect(a).toBe(1); });`,
      "list",
    ],
    [
      "said to be empty",
      `test("a", () => { expect(list).toEqual([]); for (const a of list) expect(a).toBe(1); });`,
      "list",
    ],
    [
      "a helper that asserts",
      `const holds = (a) => expect(a).toBe(1); test("a", () => { for (const a of found()) holds(a); });`,
      "found()",
    ],
    [
      "a helper that throws",
      `function holds(a) { if (!a) throw new Error("no"); } test("a", () => { for (const a of found()) holds(a); });`,
      "found()",
    ],
    ["cases of a test", `test.each(found())("%s", (a) => expect(a).toBe(1));`, "found()"],
    ["cases of a suite", `describe.each(found())("%s", (a) => { it("b", () => expect(a).toBe(1)); });`, "found()"],
    ["tests in a loop", `for (const a of found()) test(a, () => expect(a).toBe(1));`, "found()"],
    [
      "what another list of the name says",
      `const list = [1]; test("a", () => { const list = found(); for (const a of list) expect(a).toBe(1); });`,
      "list",
    ],
  ])("%s", (_, text, wanted) => expect(over(text)).toEqual([wanted]));
});

describe("is left alone", () => {
  test.each([
    ["a list written there", `test("a", () => { for (const a of [1, 2]) expect(a).toBe(1); });`],
    ["a constant", `const list = ["a"] as const; test("a", () => { for (const a of list) expect(a).toBe("a"); });`],
    ["its entries", `test("a", () => { for (const a of Object.entries({ a: 1 })) expect(a).toBe(1); });`],
    ["as many as there were", `const list = [1]; test.each(list.map(String))("a", (a) => expect(a).toBe("1"));`],
    ["so many", `test("a", () => { for (const a of Array.from({ length: 3 })) expect(a).toBe(1); });`],
    ["notEmpty", `test("a", () => { for (const a of notEmpty(found())) expect(a).toBe(1); });`],
    ["cases of notEmpty", `describe.each(notEmpty(found()))("a", (a) => { it("b", () => expect(a).toBe(1)); });`],
    [
      "a length that is told",
      `test("a", () => { expect(list).toHaveLength(3); for (const a of list) expect(a).toBe(1); });`,
    ],
    [
      "what is compared whole",
      `test("a", () => { expect(list).toEqual([1]); for (const a of list) expect(a).toBe(1); });`,
    ],
    ["not being empty", `test("a", () => { expect(list).not.toEqual([]); for (const a of list) expect(a).toBe(1); });`],
    [
      "a count",
      `test("a", () => { let seen = 0; for (const a of found()) { expect(a).toBe(1); seen += 1; } expect(seen).toBe(4); });`,
    ],
    [
      "cases another test counts",
      `it("some", () => expect(list.length).toBeGreaterThan(2)); it.each(list)("a", (a) => expect(a).toBe(1));`,
    ],
    ["a loop that asserts nothing", `test("a", () => { for (const a of found()) sum += a; expect(sum).toBe(3); });`],
    ["a property", `test("a", () => { fc.assert(fc.property(fc.nat(), (a) => expect(a).toBeGreaterThan(-1))); });`],
    [
      "a matcher made of others",
      `test("a", () => { for (const a of found()) all.push(expect.any(String)); expect(all).toEqual([1]); });`,
    ],
  ])("%s", (_, text) => expect(over(text)).toEqual([]));
});

describe("notEmpty", () => {
  test("gives what there is", () => expect(notEmpty(new Set([1, 2]))).toEqual([1, 2]));
  test("refuses a list with nothing in it", () => expect(() => notEmpty([])).toThrow("nothing here to test"));
});

const ROOT = new URL("../..", import.meta.url).pathname;
const LEFT_OUT = new Set(["node_modules", "dist"]);

const testsUnder = (folder: string): readonly string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return LEFT_OUT.has(entry.name) ? [] : testsUnder(path);
    return entry.name.endsWith(".test.ts") ? [path] : [];
  });

test("no test of this workspace passes because a loop has nothing to go over", () => {
  const files = ["tests", "packages", "docs-site", "rules"].flatMap((folder) => testsUnder(join(ROOT, folder)));
  expect(files.length).toBeGreaterThan(100);
  const found = files.flatMap((path) => {
    const source = sourceAt(path);
    if (!source) throw new Error(`${path} cannot be read`);
    return hollowLoops(source).map((each) => `${relative(ROOT, path)}:${each.line}: ${each.over}`);
  });
  expect(found).toEqual([]);
});
