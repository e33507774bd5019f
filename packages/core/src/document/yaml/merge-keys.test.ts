import { expect, test } from "vitest";
import { parse } from "yaml";
import { readYaml } from "./yaml.js";

/**
 * Source: yaml.org/type/merge.html (YAML merge key, working draft 0.9): a key of the group itself comes before one that
 * is copied, and of several groups the earlier one. The library reads it by that when it is asked to.
 */
test.each([
  ["one group", "a: &a {x: 1, y: 2}\nb:\n  <<: *a\n  z: 3\n"],
  ["a key that stands there itself, before and behind", "a: &a {x: 1, y: 2}\nb: {x: 5, <<: *a, y: 6}\n"],
  ["several groups", "a: &a {x: 1}\nb: &b {x: 2, y: 3}\nc: {<<: [*a, *b], z: 4}\n"],
  ["a group that copies another itself", "a: &a {x: 1}\nb: &b {<<: *a, y: 2}\nc: {<<: *b}\n"],
  ["groups within", "a: &a {x: {p: 1}, l: [1, 2]}\nb:\n  <<: *a\n"],
])("a merge key is told once and its keys are read: %s", (_, text) => {
  const { data, mistakes } = readYaml(text);
  expect(data).toEqual(parse(text, { merge: true }));
  expect(mistakes.length).toBe(text.split("<<").length - 1);
  for (const { says } of mistakes) expect(says).toContain("`<<: ");
});

test("what is to stand in its place reads as the same", () => {
  const text = "a: &a {x: 1, y: '2', l: [1, 2]}\nb:\n  z: 3\n  <<: *a\n";
  const [{ edit, place } = {}] = readYaml(text).mistakes;
  expect(edit?.text).toBe('x: 1\n  y: "2"\n  l: [ 1, 2 ]');
  expect(place).toMatchObject({ line: 4, column: 3 });
  const lines = text.split("\n");
  lines[3] = `  ${edit?.text}`;
  expect(readYaml(lines.join("\n"))).toMatchObject({ mistakes: [], data: parse(text, { merge: true }) });
});

test("what is copied is marked, so that it is told where it is written", () => {
  const { copied, models } = readYaml("a: &a {x: {p: 1}}\nb: {<<: *a, y: 2}\n");
  expect([...(copied ?? [])].sort()).toEqual(["b.x", "b.x.p"]);
  expect([...(models ?? [])]).toEqual(["a"]);
});

test("a group that copies itself, and groups that double twenty times, end", () => {
  expect(readYaml("a: &a {x: 1, b: {<<: *a}}\n").mistakes.length).toBe(1);
  expect(readYaml("a: {<<: *nothing}\n").mistakes.length).toBe(1);
  const doubling = Array.from({ length: 20 }, (_, at) =>
    at === 0 ? "a0: &a0 {x: 1}" : `a${at}: &a${at} {p: {<<: *a${at - 1}}, q: {<<: *a${at - 1}}}`,
  );
  // Twenty levels written out would be a million entries.
  expect(readYaml(doubling.join("\n")).places.size).toBeLessThan(10_000);
});
