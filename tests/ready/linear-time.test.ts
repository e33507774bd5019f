import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { linearPattern, linearPatterns } from "../../packages/core/src/patterns/linear.js";
import { changed } from "../documents/repository.js";
import { checksOf, refusal } from "../house-standard/inspected.js";

// Patterns that keep an engine of trial busy for longer than anybody lives, as the OWASP page "Regular expression Denial
// of Service" lists them. Each is met with a text of 50,000 letters that nearly fits.
const EXPONENTIAL: readonly (readonly [pattern: string, letter: string])[] = [
  ["^(a+)+$", "a"],
  ["^([a-zA-Z]+)*$", "a"],
  ["^(a|aa)+$", "a"],
  ["^(a|a?)+$", "a"],
  ["^(.*a){11}$", "a"],
  ["^(([a-z])+.)+[A-Z]([a-z])+$", "a"],
  ["^(\\w+\\s?)*$", "a"],
];

/** Far above what it takes on a slow machine, far below what trial takes: years. */
const SECONDS = 20;

const timed = (run: () => void): number => {
  const start = performance.now();
  run();
  return (performance.now() - start) / 1000;
};

describe("a pattern of a house standard or a document cannot hang the inspection", () => {
  test.each(EXPONENTIAL)("%s", (pattern, letter) => {
    const { test: fits } = linearPattern(pattern);
    const text = `${letter.repeat(50_000)}!`;
    let found = true;
    expect(timed(() => (found = fits(text)))).toBeLessThan(SECONDS);
    // By the engine of the language, on a text short enough for it.
    expect(found).toBe(new RegExp(pattern, "u").test(`${letter.repeat(16)}!`));
  });

  test("in a rule without code, whatever the text", () => {
    const root =
      "own-rules:\n  house.venue:\n    states: Venue.\n    each: build\n    level: shall\n    require: {properties: {venue: {pattern: '^([a-z]+)+$'}}, required: [venue]}";
    const venue = (name: string) =>
      checksOf("house.venue", {
        root,
        documents: { "builds/a.md": changed("practice: us", `practice: us\nvenue: ${name}`) },
      })[0]?.outcome;
    let outcome: string | undefined;
    expect(timed(() => (outcome = venue(`${"a".repeat(20_000)}!`)))).toBeLessThan(SECONDS);
    expect(outcome).toBe("fails");
    expect(venue("hall")).toBe("holds");
  });

  test("and what no automaton can match is refused with its place", () => {
    const rule = (pattern: string) =>
      `own-rules:\n  house.venue:\n    states: Venue.\n    each: build\n    require: {properties: {venue: {pattern: '${pattern}'}}}`;
    for (const pattern of ["(?=a)a", "(a)\\1", "(?<!a)b", "(", "a".repeat(1001)])
      expect(refusal({ root: rule(pattern) })).toMatch(/^house-standard\.yaml:\d+:\d+: The pattern .* cannot be read/u);
  });
});

test("patterns mean what they mean in the language", () => {
  const piece = fc.constantFrom(
    "a",
    "b",
    ".",
    "[a-c]",
    "[^b]",
    "\\d",
    "\\w",
    "(a|b)",
    "(?:ab)?",
    "a*",
    "b+",
    "a{1,2}",
    "^a",
    "b$",
    "é",
    "\\p{L}",
    "\\u{e9}",
  );
  fc.assert(
    fc.property(
      fc.array(piece, { maxLength: 5 }),
      fc.string({ unit: fc.constantFrom("a", "b", "c", "1", "é", " "), maxLength: 8 }),
      (pieces, text) => {
        const pattern = pieces.join("");
        expect(linearPattern(pattern).test(text)).toBe(new RegExp(pattern, "u").test(text));
      },
    ),
    { numRuns: 300 },
  );
});

test("a validator keeps two patterns apart", () => {
  const both = new Ajv2020({ strict: false, code: { regExp: linearPatterns } }).compile({
    properties: { a: { pattern: "^x" }, b: { pattern: "^y" } },
  });
  expect([both({ a: "x", b: "y" }), both({ a: "x", b: "x" }), both({ a: "y", b: "y" })]).toEqual([true, false, false]);
});

describe("patterns of paths are bounded", () => {
  test.each([
    ["+(a|aa)/x.md", /round bracket/u],
    ["!(a*)*(b*)/x.md", /round bracket/u],
    ["**/a/**/b/**/c.md", /`\*\*` more than twice/u],
    ["builds/*a*a*a*a*.md", /more than three signs/u],
    ["{a,b}{a,b}{a,b}{a,b}{a,b}{a,b}.md", /more than five choices/u],
  ])("%s is refused", (pattern, said) => {
    for (const key of ["documents", "parts", "papers"])
      expect(refusal({ root: `${key}: ["${pattern}"]` })).toMatch(said);
  });
  test.each([
    "builds/**/*.md",
    "**/builds/**/*.md",
    "{builds,shows}/*.md",
    "client-?/builds/[a-f]*.md",
    "!builds/old/**",
  ])("%s is not", (pattern) => expect(refusal({ root: `documents: ["${pattern}"]` })).toBe(""));
});
