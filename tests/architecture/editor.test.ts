import { posix } from "node:path";
import { expect, test } from "vitest";
import { readSource, sourcesUnder } from "./graph.js";

test("what an editor is told is made by functions that know neither Node.js nor a protocol", () => {
  const answers = "packages/editor/src/answers";
  const sources = sourcesUnder(answers);
  expect(sources.length).toBeGreaterThan(8);
  const strange = sources.flatMap((path) => {
    const { values, types } = readSource(path);
    const isOwn = (name: string): boolean => posix.join(posix.dirname(path), name).startsWith(`${answers}/`);
    return [...values, ...types]
      .filter((name) => !(name.startsWith(".") ? isOwn(name) : /^@plumbmark\/(?:core|calc|draft)$/u.test(name)))
      .map((name) => `${path}: ${name}`);
  });
  expect(strange).toEqual([]);
});
