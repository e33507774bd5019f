import { expect, test } from "vitest";
import { readSource, sourcesUnder } from "./graph.js";

test("what an editor is told is made by functions that know neither Node.js nor a protocol", () => {
  const sources = sourcesUnder("packages/editor/src/answers");
  expect(sources.length).toBeGreaterThan(8);
  const strange = sources.flatMap((path) => {
    const { values, types } = readSource(path);
    return [...values, ...types]
      .filter((name) => !/^\.\/|^@plumbmark\/(?:core|calc|draft)$/u.test(name))
      .map((name) => `${path}: ${name}`);
  });
  expect(strange).toEqual([]);
});
