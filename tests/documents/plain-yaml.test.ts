import { readdirSync, readFileSync } from "node:fs";
import { starterRepository } from "@plumbmark/starter";
import fc from "fast-check";
import { expect, test } from "vitest";
import { frontMatterOf } from "../../packages/core/src/document/front-matter.js";
import { readPlainYaml } from "../../packages/core/src/document/plain-yaml/read.js";
import { readAnyYaml } from "../../packages/core/src/document/yaml.js";

/** The library's reading is the measure: the same data, the same places in the same order, and nothing to complain of. */
function agrees(text: string, from = 0, to = text.length): boolean {
  const plain = readPlainYaml(text, from, to);
  if (!plain) return false;
  const any = readAnyYaml(text, from, to);
  expect(any.mistakes).toEqual([]);
  expect(plain.data).toEqual(any.data);
  expect([...plain.places]).toEqual([...any.places]);
  expect([...plain.keys]).toEqual([...any.keys]);
  return true;
}

const written = readdirSync(starterRepository, { recursive: true, encoding: "utf8" }).filter((name) =>
  /\.(?:md|yaml)$/u.test(name),
);

test.each(written.filter((name) => /^(?:builds|stock)/u.test(name)))("%s is plain", (name) => {
  const text = readFileSync(`${starterRepository}/${name}`, "utf8");
  const front = name.endsWith(".md") ? frontMatterOf(text) : { from: 0, to: text.length };
  expect(front && agrees(text, front.from, front.to)).toBe(true);
  const windows = text.replaceAll("\n", "\r\n");
  const returned = name.endsWith(".md") ? frontMatterOf(windows) : { from: 0, to: windows.length };
  expect(returned && agrees(windows, returned.from, returned.to)).toBe(true);
});

test.each([
  "a: 1",
  "a: 1\n",
  "a: 1  \n\n\n",
  "# above\na:   # beside\n  # within\n  b: [x, y z, {c: d}]  # behind\n# below\ne: 'f'\n",
  "a:\n  - b: 1\n    c: 2\n  - d\n  - {e: f}\n  - [g]\n",
  'a: "x: y # z"\nb: it\'s\nc: a:b\nd: 5 "\n',
  "a: 007\nb: -1.50\nc: 1e3\nd: +1\ne: 2030-06-08 to 2030-06-14\nf: true\ng: Null\nh: 1.\ni: -\u00b0C\n",
  "__proto__: {constructor: 1}\nnull: 1\ntrue: 2\n1: 3\n",
  "a:\n  b:\n    c: 1\n\nd: 2",
  "tile-500-p2.9: {a.b: 1}\na: {b: 2}\n",
])("reads %j as the library does", (text) => {
  agrees(text);
  agrees(`---\n${text}\n---\n`, 4, 4 + text.length);
});

test.each([
  "a: 1\na: 2",
  "a: {b: 1, b: 2}",
  "a: 12 #8 screws",
  "a: b: c",
  "a: 1\n  b",
  "a:\n\tb: 1",
  "a: &x 1\nb: *x",
  "a: !!str 1",
  "a: |\n  b",
  "a: 'it''s'",
  'a: "\\n"',
  "a: [1,\n 2]",
  "a:\n- b",
  "a:\nb: 1",
  "a: {b}",
  "a: 0x1F",
  "a: .nan",
  "  a: 1",
  "a: 1\n---\nb: 2",
  "a: 1\n   # further in",
  "- a",
  "a",
  "",
  "\uFEFFa: 1",
  "a: 1\rb: 2",
  "a: @b",
])("leaves %j to the library", (text) => {
  expect(readPlainYaml(text, 0, text.length)).toBeUndefined();
});

test("reads anything put together from pieces of YAML so, or leaves it to the library", () => {
  const piece = fc.constantFrom(
    ..."a: |b: |key.x: |- |- - |[|]|{|}|, |,|: |:|#|# c|  # c|'|\"|x|1|-1|1.50|true|~|null|é|word word|x:y|0,0|---|...|&a|*a|!|>|?|%|@".split(
      "|",
    ),
    ..." \t\r".split(""),
    "|",
    "\n",
    "\n  ",
    "\n    ",
    "\n      ",
    "\n\n",
    "\r\n",
    "\n  a: ",
    "\nb: ",
    "\n  - ",
    "\n    - ",
    "\n# c",
    "\n  # c\n",
  );
  let plain = 0;
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 14 }), fc.constantFrom("", "a: "), (pieces, before) => {
      if (agrees(`${before}${pieces.join("")}`)) plain += 1;
    }),
    { numRuns: 10_000 },
  );
  expect(plain).toBeGreaterThan(300);
});

test("reads any nesting of mappings, lists, comments and blank lines so", () => {
  const key = fc.constantFrom("a", "b c", "d.e", "f-1", "12", "null");
  const scalar = fc.constantFrom(
    "1",
    "x y",
    "-5 °C",
    '"q: r"',
    "'s # t'",
    "0,0",
    "1.50",
    "true",
    "a:b",
    "wall A1..A8, B1",
  );
  const { inline } = fc.letrec<{ inline: string }>((tie) => ({
    inline: fc.oneof(
      { maxDepth: 3, depthSize: "small" },
      fc.constantFrom("1", "x y", "'s # t'", "true"),
      fc.array(tie("inline"), { minLength: 1, maxLength: 3 }).map((all) => `[${all.join(", ")}]`),
      fc
        .uniqueArray(fc.tuple(key, tie("inline")), { minLength: 1, maxLength: 3, selector: ([name]) => name })
        .map((all) => `{ ${all.map(([name, value]) => `${name}: ${value}`).join(" , ")} }`),
    ),
  }));
  const behind = fc.constantFrom("", "", "", "  ", " # c", "   ## c");
  const between = fc.constantFrom("", "", "", "", "\n", "# c\n", "  # c\n", "    # c\n", "\n\n# c\n\n");
  const line = ([value, end, then]: readonly [string, string, string]): string => ` ${value}${end}\n${then}`;
  const leaf = fc.tuple(fc.oneof(scalar, inline), behind, between).map(line);
  const inner = (text: string, by: string): string =>
    text
      .split("\n")
      .map((each) => (each === "" || each.trimStart().startsWith("#") ? each : `${by}${each}`))
      .join("\n");
  const { block } = fc.letrec<{ block: string; value: string }>((tie) => ({
    value: fc.oneof(
      { maxDepth: 4, depthSize: "small" },
      leaf,
      fc
        .tuple(behind, between, tie("block"), fc.constantFrom("  ", "    ", " "))
        .map(([end, then, text, by]) => `${end}\n${then}${inner(text, by)}`),
      fc
        .tuple(
          behind,
          fc.array(
            fc.oneof(
              leaf,
              tie("block").map((text) => ` ${inner(text, "  ").trimStart()}`),
            ),
            { minLength: 1, maxLength: 3 },
          ),
        )
        .map(([end, all]) => `${end}\n${inner(all.map((each) => `-${each}`).join(""), "  ")}`),
    ),
    block: fc
      .uniqueArray(fc.tuple(key, tie("value")), { minLength: 1, maxLength: 4, selector: ([name]) => name })
      .map((all) => all.map(([name, value]) => `${name}:${value}`).join("")),
  }));
  let plain = 0;
  fc.assert(
    fc.property(block, (text) => {
      if (agrees(text)) plain += 1;
    }),
    { numRuns: 3000 },
  );
  expect(plain).toBeGreaterThan(1000);
});
