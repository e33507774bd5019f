import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { inspectText } from "../../documents/repository.js";
import { run, scratch } from "../writing/command.js";

// What is far too large ends with a limit that is stated, what is nearly as large with a result; nothing waits for ever.

const HEAD = "---\nbuild: x\ntitle: t\nstatus: draft\n---\n";
const MANY = 100_000;

const lines = (line: string, count = MANY): string => HEAD + `${line}\n`.repeat(count);

describe("a body beyond reading is refused at its line, and the front matter is read all the same", () => {
  test.each([
    ["100,000 quoted figures", lines("[1](calc:a)\n"), "20000 lines"],
    ["100,000 quoted figures in a line", `${HEAD}${"[1](calc:a) ".repeat(MANY)}\n`, "20000 links"],
    ["100,000 links", lines("[a](b.md)\n"), "20000 lines"],
    ["100,000 headings", lines("# a"), "20000 lines"],
    ["100,000 tasks", lines("- [ ] a"), "20000 lines"],
    ["a table of 100,000 rows", `${HEAD}| a | b |\n|---|---|\n${"| a | b |\n".repeat(MANY)}`, "10000 rows"],
    ["a table of 100,000 rows without fences", `${HEAD}a | b\n--|--\n${"a | b\n".repeat(MANY)}`, "20000 lines"],
    ["400,000 brackets", `${HEAD}${"[ ".repeat(400_000)}\n`, "20000 links"],
    ["300,000 stars", `${HEAD}${"*a ".repeat(300_000)}\n`, "20000 links"],
    ["100,000 addresses", `${HEAD}${"a@b.example ".repeat(MANY)}\n`, "20000 links"],
  ])("%s", (_, text, limit) => {
    const { build, verdict, checks } = inspectText(text);
    const told = checks.find(({ says }) => says.includes("the body is not read"));
    expect(told?.says).toContain(limit);
    expect(told?.at.line).toBeGreaterThan(5);
    expect([build, verdict]).toEqual(["x", "not ready"]);
  });
});

describe("what is large and can be read comes to a result", () => {
  test.each([
    ["6,000 quoted figures", lines("[1](calc:a)\n", 6000), "document.quoted-values", 6000],
    ["6,000 links to one heading of 6,000 alike", lines("# a\n[a](#b)\n", 6000), "document.links", 6000],
    ["a line of 1.9 million letters", `${HEAD}${"x".repeat(1_900_000)}\n`, "document.links", 0],
    ["a title of 900,000 letters", HEAD.replace("title: t", `title: ${"x".repeat(900_000)}`), "document.links", 0],
  ])("%s", (_, text, rule, count) => {
    const { checks } = inspectText(text);
    expect(checks.filter((check) => check.rule === rule)).toHaveLength(count);
    expect(checks.filter(({ says }) => says.includes("not read"))).toEqual([]);
  });

  test("lines of the front matter are not counted among those of the body", () => {
    const text = HEAD.replace("title: t\n", `title: t\n${"# a remark\n".repeat(30_000)}`);
    expect(inspectText(text).checks.filter(({ says }) => says.includes("not read"))).toEqual([]);
  });
});

test.each([
  ["prose of 50 MB", `${HEAD}${"word ".repeat(10_000_000)}`],
  ["a front matter of 50 MB", `---\nbuild: x\ntitle: ${"x".repeat(50_000_000)}\n---\n`],
])("%s ends with the limit that is stated, by the command as it is built", { timeout: 120_000 }, (_, text) => {
  const folder = scratch();
  mkdirSync(join(folder, "builds"));
  writeFileSync(join(folder, "house-standard.yaml"), "house-standard: House\n");
  writeFileSync(join(folder, "builds/x.md"), text);
  const { status, out, err } = run(folder, ["inspect", "--as", "gnu"]);
  expect([status, err]).toEqual([1, ""]);
  expect(out).toMatch(/^builds\/x\.md:1:1: .*50\.0 MB large; at most 2\.0 MB are read/mu);
});
