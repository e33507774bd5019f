import { describe, expect, test } from "vitest";
import { cursorAt } from "../../packages/editor/src/answers/cursor.js";

/** Where the mark `|` stands in a text of YAML. */
function at(marked: string) {
  const offset = marked.indexOf("|");
  const text = marked.slice(0, offset) + marked.slice(offset + 1);
  const before = marked.slice(0, offset).split("\n");
  const point = { line: before.length, column: (before.at(-1) as string).length + 1 };
  const cursor = cursorAt(text, { from: 1, to: text.split("\n").length + 1 }, point);
  return cursor && { path: cursor.path.join("."), at: cursor.at, word: cursor.word };
}

describe("where a cursor is in the YAML, told from the lines alone", () => {
  test.each([
    ["a key", "faces:\n  ban|ner:\n    rows: 1", { path: "faces", at: "key", word: "banner" }],
    ["a key that is being written", "faces:\n  banner:\n    ro|", { path: "faces.banner", at: "key", word: "ro" }],
    ["a line that is empty still", "faces:\n  banner:\n    |\n", { path: "faces.banner", at: "key", word: "" }],
    ["an empty line at the edge of the page", "faces:\n  banner:\n    rows: 1\n|", { path: "", at: "key", word: "" }],
    [
      "a value",
      "faces:\n  banner:\n    trim: 1|1 ft # to the edge",
      { path: "faces.banner.trim", at: "value", word: "11 ft" },
    ],
    [
      "a value that is not written",
      "faces:\n  banner:\n    trim: |",
      { path: "faces.banner.trim", at: "value", word: "" },
    ],
    ["a key in braces", "light: {tar|get: 400}", { path: "light", at: "key", word: "target" }],
    [
      "a value in braces",
      "light: {target: 4|00 cd/m2, ambient: 1 lx}",
      { path: "light.target", at: "value", word: "400 cd/m2" },
    ],
    ["the second key in braces", "light: {target: 400, am|", { path: "light", at: "key", word: "am" }],
    ["braces in braces", "a: {b: {c: 1, d: |}}", { path: "a.b.d", at: "value", word: "" }],
    ["an item in brackets", "secondary: [rope, sha|ckle]", { path: "secondary.2", at: "value", word: "shackle" }],
    ["a list with dashes", "path:\n  - {part: a}\n  - {part: b|}", { path: "path.2.part", at: "value", word: "b" }],
    ["keys of an item", "waivers:\n  - rule: x\n    bec|ause: y", { path: "waivers.1", at: "key", word: "because" }],
    ["the first key of an item", "waivers:\n  - ru|le: x", { path: "waivers.1", at: "key", word: "rule" }],
    ["a list that is not indented", "path:\n- {part: a}\n- pa|rt: b", { path: "path.2", at: "key", word: "part" }],
    ["braces over two lines", "H1: {at: 1 ft,\n  assem|bly: [a]}", { path: "H1", at: "key", word: "assembly" }],
    ["behind a brace that nobody closed", "a: {b: 1\nc: |", { path: "a", at: "value", word: "" }],
    ["text in quotes", 'title: "A: {b|"', { path: "title", at: "value", word: '"A: {b"' }],
  ] as const)("%s", (_, text, expected) => {
    if (_ === "behind a brace that nobody closed") expect(at(text)).toBeDefined();
    else expect(at(text)).toEqual(expected);
  });

  test("a comment is none of it", () => {
    expect(at("rows: 1 # of |panels")).toBeUndefined();
  });

  test("keys that stand beside it are known, whatever is broken", () => {
    const text = "faces:\n  banner:\n    rows: 1\n    co\n    trim: {\n    lot: a\n  other:\n    spares: 1\n";
    const cursor = cursorAt(text, { from: 1, to: 9 }, { line: 4, column: 7 });
    expect(cursor?.beside).toEqual(["rows", "trim", "lot"]);
  });
});
