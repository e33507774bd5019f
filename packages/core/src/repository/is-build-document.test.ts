import { expect, test } from "vitest";
import { documentKind } from "./is-build-document.js";

const REST = "title: A\nstatus: for-build\n";

test.each([
  ["at the margin", `---\nbuild: a\n${REST}---\n`],
  ["after other keys", `---\n${REST}build: a\n---\n`],
  ["indented", "---\n  title: A\n  build: a\n---\n"],
  ["in flow style", "---\n{title: A, build: a}\n---\n"],
  ["in flow style over lines", "---\n{\n  title: A,\n  build: a\n}\n---\n"],
  ["as JSON", '---\n{"build": "a"}\n---\n'],
  ["in quotes", "---\n'build': a\n---\n"],
  ["behind a byte order mark", "\uFEFF---\nbuild: a\n---\n"],
  ["with other ends of lines", "---\r\nbuild: a\r\n---\r\n"],
  ["with blanks behind the fence and before the colon", "---  \nbuild : a\n---\n"],
  ["as an explicit key", "---\n? build\n: a\n---\n"],
])("a build document is known by its key %s", (_, text) => expect(documentKind(text)).toBe("build"));

test.each([
  ["with a capital", "---\nBuild: a\n---\n"],
  ["in capitals", "---\nBUILD: a\n---\n"],
  ["with a letter too few", `---\nbuid: a\n${REST}---\n`],
  ["with two letters changed", `---\nbiuld: a\n${REST}---\n`],
  ["with a letter too many", `---\nbuilds: a\n${REST}---\n`],
  ["left out above faces", "---\ntitle: A\nfaces: {wall: {columns: 2}}\n---\n"],
  ["in a front matter that cannot be read", "---\n  build: a\n faces: [\n---\n"],
  ["in one that nothing closes", "---\nbuild: a\n\n# A\n"],
  ["below empty lines", "\n\n---\nbuild: a\n---\n"],
  ["without a fence", "build: a\ntitle: A\n---\n"],
])("one that was meant to be is known by its key %s", (_, text) => expect(documentKind(text)).toBe("meant"));

test.each([
  ["no front matter", "# Notes\n"],
  ["an empty file", ""],
  ["a front matter of something else", "---\ntitle: Notes\nguild: masons\n---\n\nbuild: this is text\n"],
  ["a thematic break", "---\n\nA text.\n"],
  ["the key below another", "---\npackage:\n  build: npm run build\n---\n"],
  ["the key in a text", "---\nnote: |\n  build: a\n---\n"],
  ["a list", "---\n- build: a\n---\n"],
])("%s is neither", (_, text) => expect(documentKind(text)).toBe("other"));
