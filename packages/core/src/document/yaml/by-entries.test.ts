import fc from "fast-check";
import { expect, test } from "vitest";
import { readByEntries } from "./by-entries.js";
import { frontMatterOf } from "./front-matter.js";
import { type Placed, readYaml } from "./yaml.js";

const FRONT = `---
build: foyer-ribbon
title: "Ribbon: the foyer"
revision: 4
on-site: 2027-03-05 to 2027-03-08

faces:
  ribbon:
    panel: tile-500-p3.1   # as delivered
    columns: 6
    text: {lines: 2, cap-height: 70 %, of: [A, "B"]}

# what it is fed by
power:
  circuits:
    stage-4: {breaker: 20 A,
      note: 'two
        lines'}
  runs:
    P1:
      from: stage-4
      panels: [A1..A6]
  # the rest comes later
note: one text
  in two lines
also-bring:
  cable-cover: 4
---
`;

/** Everything that was read, in its order. */
const told = ({ data, places, keys, mistakes, copied, models }: Placed): unknown => [
  JSON.stringify(data),
  [...places],
  [...keys],
  mistakes,
  [...(copied ?? [])],
  [...(models ?? [])],
];

const PIECES = [
  ..."1|9|a| |  |\n|\n\n|\r\n|\r|{|}|[|]|, |: |:|#| # |\n# margin\n|\n  # deeper\n|- |\n- a\n|\t|'|\"".split("|"),
  ...["|", ">", "\nn: |\n  x\n\n", "\nn: >-\n  x\n  y\n", "\nn: |+\n\n\n", "\nn: 'x\n  y'\n", "\nn: x\n  y\n"],
  ...["&a ", "*a", "\nn: &b {c: 1}\nm: *b\n", "\nm: {<<: *b}\n", "Brant & Sons", "\nbuild: b\n", "\n? n\n: 1\n"],
  ...["!!str ", "!own ", "---\n", "\n...\n", "%YAML 1.2\n", "\uFEFF", "12 #8", "2,5 kg", "é", "\u2028", "\u0085"],
  ..."\nn:\n|\nn:\n  m: 1\n  l: [1,\n    2]\n|\nn: {m: 1,\n  l: 2}\n|\nn: \n\n\n|\nn-1: ~\n|\n__proto__: 1\n|\n1: 2\n".split(
    "|",
  ),
];

const edits = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    takes: fc.nat({ max: 12 }),
    puts: fc.constantFrom(...PIECES, ""),
    /** Whether the next one is made in the same text, or in the first one again. */
    stays: fc.boolean(),
  }),
  { minLength: 1, maxLength: 8 },
);

/** What the parser makes of the whole is what has to come of reading on. */
function readOn(first: string, each: readonly { at: number; takes: number; puts: string; stays: boolean }[]): void {
  let [text, before]: [string, Placed | undefined] = [first, undefined];
  for (const { at, takes, puts, stays } of each) {
    const from = Math.floor(at * text.length);
    const is = text.slice(0, from) + puts + text.slice(from + takes);
    const where = frontMatterOf(is);
    if (!where) continue;
    before = readByEntries(is, where, before);
    expect(told(before)).toEqual(told(readYaml(is, where.from, where.to)));
    if (stays) text = is;
  }
}

test("front matter is read on as it is read anew, whatever is written into it", () => {
  const text = fc.constantFrom(...["\n", "\r\n", "\r"].map((end) => FRONT.replaceAll("\n", end)));
  fc.assert(
    fc.property(text, edits, (each, made) => readOn(each, made)),
    { numRuns: 200 },
  );
}, 120_000);

test("so is any text put together from what YAML is made of", () => {
  const text = fc.array(fc.constantFrom(...PIECES, "\nn: 1\n", "\nm: a\n", "\nfaces:\n  b: {c: 1}\n"), {
    maxLength: 14,
  });
  fc.assert(
    fc.property(text, edits, (each, made) => readOn(`---\n${each.join("")}\n---\n`, made)),
    { numRuns: 2000 },
  );
}, 120_000);

test("what stands in an entry that is as it was is the same object", () => {
  const [one, other] = ["---\nbuild: a\nfaces: {b: 1}\n---\n", "---\nbuild: a\nrevision: 4\nfaces: {b: 1}\n---\n"];
  const first = readByEntries(one, frontMatterOf(one) as never, undefined);
  const second = readByEntries(other, frontMatterOf(other) as never, first);
  const facesOf = ({ data }: Placed): unknown => (data as { readonly faces?: unknown }).faces;
  expect(facesOf(second)).toBe(facesOf(first));
  expect(second.places.get("faces")).toEqual({ line: 4, column: 8, endLine: 4, endColumn: 14 });
});
