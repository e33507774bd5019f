import { expect, test } from "vitest";
import { LIKE_IN_BUILD, withLike } from "./like.js";
import { readYaml } from "./yaml/yaml.js";

const read = (yaml: string) => withLike(readYaml(yaml), LIKE_IN_BUILD);

test("what is written stands in the place of what is copied, key by key", () => {
  const { data, mistakes } = read(
    "power:\n  circuits:\n    a: {breaker: 20 A, outlet: x, wiring: {length: 3 m}}\n    b: {like: a, breaker: 15 A}\n",
  );
  expect(mistakes).toEqual([]);
  expect(data).toMatchObject({
    power: { circuits: { b: { breaker: "15 A", outlet: "x", wiring: { length: "3 m" } } } },
  });
  expect(JSON.stringify(data)).not.toContain("like");
});

test("an entry may be like one that is written below it, and that like a third", () => {
  const { data, mistakes } = read("faces:\n  a: {like: b}\n  b: {like: c, rows: 2}\n  c: {rows: 1, columns: 4}\n");
  expect(mistakes).toEqual([]);
  expect(data).toMatchObject({ faces: { a: { rows: 2, columns: 4 } } });
});

test("hangs of a bar that is itself like another", () => {
  const { data } = read(
    "rigging:\n  bars:\n    up: {hangs: {H1: {at: 1 m, x: 1}, H2: {like: H1, at: 2 m}}}\n    down: {like: up}\n",
  );
  expect(data).toMatchObject({ rigging: { bars: { down: { hangs: { H2: { at: "2 m", x: 1 } } } } } });
});

test.each([
  ["faces:\n  a: {like: b}\n  b: {like: a}\n", "like itself", 3],
  ["faces:\n  a: {like: a}\n", "like itself", 2],
  ["faces:\n  banner: {rows: 1}\n  b: {like: baner}\n", "There is no `baner`", 3],
  ["faces:\n  a: {like: 3}\n", "names no entry", 2],
])("%j is told with its place", (yaml, says, line) => {
  const { mistakes } = read(yaml);
  expect(mistakes[0]?.says).toContain(says);
  expect(mistakes[0]?.place.line).toBe(line);
});

test("what is copied is found where `like` is written", () => {
  const { places } = read("faces:\n  a:\n    rows: 1\n  b:\n    like: a\n");
  expect(places.get("faces.b.rows")?.line).toBe(5);
});

test("a text without any comes back as it is", () => {
  const placed = readYaml("faces: {a: {rows: 1}}");
  expect(withLike(placed, LIKE_IN_BUILD)).toBe(placed);
});
