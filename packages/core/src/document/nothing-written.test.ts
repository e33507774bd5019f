import fc from "fast-check";
import { expect, test } from "vitest";
import { asRead, isNothingWritten, isPlaceholder, written } from "./nothing-written.js";

test.each([
  "",
  " ",
  "?",
  "??",
  "-",
  "—",
  "…",
  "...",
  "xxx",
  "TBD",
  "tbd.",
  "T.B.D.",
  "TBC by engineer",
  "n/a",
  "N.A.",
  "na",
  "to be confirmed",
  "To be confirmed by the engineer",
  "still to be measured",
  "awaiting reply",
  "not yet known",
  "unknown",
  "<name>",
  "[engineer]",
  "{{ who }}",
  "lorem ipsum",
  "T\u200BB\u00ADD",
  "ＴＢＤ",
  "\u200B\u2060",
  "\u3164",
  "TBD?",
])("`%s` holds a place and says nothing", (text) => {
  expect(isPlaceholder(text)).toBe(true);
  expect(isNothingWritten(text)).toBe(true);
  expect(written(text)).toBeUndefined();
});

test.each([
  "none",
  "R. Tallow",
  "12 A",
  "12 A ?",
  "0",
  "no",
  "open hall",
  "later-hall",
  "a 2-legged sling",
  "Na Li",
  "tbda.pdf",
])("`%s` says something", (text) => {
  expect(isPlaceholder(text)).toBe(false);
});

test("lists and groups of nothing are nothing, at any depth", () => {
  for (const nothing of [null, undefined, [], {}, [""], ["TBD", null], { by: "?", on: "" }, { H1: { structure: [] } }])
    expect(isNothingWritten(nothing)).toBe(true);
  for (const something of [0, false, true, ["", "rope-6"], { by: "?", on: "2027-02-10" }])
    expect(isNothingWritten(something)).toBe(false);
});

test("however a text is put, it reads the same a second time", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => {
      expect(asRead(asRead(text))).toBe(asRead(text));
    }),
  );
});

test("plain words read as they do beside an invisible letter, which no short way is taken with", () => {
  const letter = fc.constantFrom(..."aZ0.-? \t\n~!");
  fc.assert(
    fc.property(fc.string({ unit: letter, maxLength: 12 }), (text) => {
      expect(asRead(text)).toBe(asRead(`${text}\u200b`));
    }),
    { numRuns: 500 },
  );
});
