import { expect, test } from "vitest";
import { inspectText } from "../documents/repository.js";

const HEAD = "---\nbuild: x\ntitle: t\nstatus: draft\n---\n";
const DEEP = 10_000;

test.each([
  ["block quotes", `${HEAD}${"> ".repeat(DEEP)}a\n`],
  ["block quotes without blanks", `${HEAD}${">".repeat(DEEP)} a\n`],
  ["lists in one line", `${HEAD}${"- ".repeat(DEEP)}a\n`],
  ["lists by indentation", HEAD + Array.from({ length: 1000 }, (_, depth) => `${" ".repeat(depth * 2)}- a`).join("\n")],
  ["emphasis", `${HEAD}${"*".repeat(DEEP)}a${"*".repeat(DEEP)}\n`],
  ["links in links", `${HEAD}${"[".repeat(DEEP)}a${"](x)".repeat(DEEP)}\n`],
  ["images in images", `${HEAD}${"![".repeat(DEEP)}a\n`],
  ["a table of 100,000 rows", `${HEAD}| a | b |\n|---|---|\n${"| a | b |\n".repeat(100_000)}`],
])("a body of %s is refused at its line, and the front matter is read all the same", (_, text) => {
  const { build, verdict, checks } = inspectText(text);
  const told = checks.find(({ says }) => says.includes("the body is not read"));
  expect(told?.outcome).toBe("fails");
  expect(told?.at.line).toBeGreaterThan(5);
  expect([build, verdict]).toEqual(["x", "not ready"]);
});
