import fc from "fast-check";
import { expect, test } from "vitest";
import { localLinksOf } from "./links.js";
import { type Markdown, readMarkdown } from "./markdown.js";
import { quotesOf } from "./quotes.js";
import { sectionsOf } from "./sections.js";
import { skeletonOf } from "./skeleton.js";
import { textUnder } from "./under.js";

/** What rules look at of a body. */
const seen = (markdown: Markdown) => ({
  sections: sectionsOf(markdown).map(({ title, place, holds }) => ({ title, place, holds })),
  quotes: quotesOf(markdown.skeleton),
  links: localLinksOf(markdown.skeleton),
  cautions: textUnder(markdown, "Cautions"),
});

/** The skeleton of a body and all of it come to the same for whoever looks at headings and links. */
function agrees(body: string): void {
  // As it is loaded by tests, the parser refuses a box below an empty item; as it is bundled, it does not.
  fc.pre(!/(?:[-*+]|\d[.)])[ \t]*\n[ \t>]*\[[ xX]\]/u.test(body));
  const text = `---\nbuild: a\n---\n${body}`;
  const [short, whole] = [readMarkdown(text), readMarkdown(text, true)];
  expect(seen(short)).toEqual(seen(whole));
  expect(short.skeleton).not.toBe(short.tree);
  expect(short.tree).toEqual(whole.tree);
}

test("of prose, lists and tables little is left, and the links stay where they are", () => {
  const body = [
    "# Wall",
    "",
    "A wall of [32](calc:faces.wall.panel-count) tiles over the floor. **Not yet.**",
    "Seen from the hall.",
    "",
    "| What | Where |",
    "|---|---|",
    "| Face `left` | [9 ft](calc:faces.left.trim) |",
    "",
    "- [ ] Rigger: bar hung",
    "- [ ] Rigger: **measure** [10 ft](calc:faces.wall.trim)",
    "- [ ] Rigger: tape down",
    "",
    "1. Stop.",
    "2. Fetch the rigger.",
    "   He knows.",
  ];
  expect(skeletonOf(body.join("\n")).split("\n")).toEqual([
    "# Wall",
    "",
    "xxxxxxxxxx[32](calc:faces.wall.panel-count)",
    "x",
    "",
    "x",
    "x",
    "xxxxxxxxxxxxxxxx[9 ft](calc:faces.left.trim)",
    "",
    "",
    "- xxxxxxxxxxxxxxxxxxxxxxxx[10 ft](calc:faces.wall.trim)",
    "- x",
    "",
    "",
    "2. x",
    "   x",
  ]);
});

/** More than a hundred in a deep run, which has ten times as many headings of a body, too. */
const { numRuns = 100 } = fc.readConfigureGlobal();

// A pattern cannot go through so many: it would throw.
test("a line of nine million letters is left as it is", () => {
  const line = "a ".repeat(4_500_000);
  expect(skeletonOf(line) === line).toBe(true);
});

test.each([
  ["a heading under signs of equality", "First words\nand more\n===\n\nText\n"],
  ["one that is underlined", "Words [a](calc:b)\n---\n\nText\n"],
  ["links in code of several lines", "Some `code that\ngoes on [a](calc:b)\nand on` here\n"],
  ["a link over several lines", "A [text that\ngoes on\nand on](calc:b.c) here\n"],
  ["links in fenced code", "```\n\n[a](calc:b)\n\nwords\n\n```\n\n[a](calc:b)\n"],
  ["links in comments", "<!--\n\n[a](calc:b)\n\nwords\n\n-->\n\nwords\n"],
  ["code in a list", "- words\n\n      [a](calc:b)\n\n  [a](calc:b)\n"],
  ["a heading below an item", "1. a\n2. b\n10. c\n\n   # Heading\n\n    # Another\n"],
  ["items of two lists", "- a\n2. b\n\n  # Heading\n"],
  ["references", "# Cautions\n\n[a], [b][a] and [c]\n\n# More\n\n[a]: calc:b.c\n"],
  ["notes", "# Cautions\n\nwords[^1]\n\n# More\n\n[^1]: note\n\n    [a](calc:b)\n"],
  ["bars in code of a table", "| a | b |\n|---|---|\n| `x|y [a](calc:b)` | c |\n"],
  ["cells a table has not", "| a |\n|---|\n| b | [c](calc:d) | [e](calc:f) |\n"],
  ["a table of one column", "a [b](calc:c)\n:-\nd [e](calc:f)\n"],
  ["an address", "See https://example.org/a [b](calc:c) and www.example.org.\n"],
  ["headings above text", "# A\n## B\nwords [a](calc:b)\nmore words\n\n# C\n| a |\n|---|\n"],
  ["many headings", "# A\n".repeat(numRuns > 100 ? 15_000 : 1_500)],
  ["an image", "Words ![plan](plan.png) and ![](calc:drawings.a)!\n"],
  ["a section with a comment", "# Cautions\n\n<!-- to be written\n\nsoon -->\n\n## Lifting\n"],
  ["sections of one name", "# Cautions\n\nOne\n\n## Deeper\n\nTwo\n\n# Lift\n\nThree\n\n# cautions\n\nFour **five**\n"],
  ["line ends of another system", "# Cautions\r\n\r\nWords [a](calc:b)\r\n"],
])("looks at %s as the whole body has them", (_, body) => agrees(body));

/** Three times as many where there is time for many, and a quarter where there is little. */
const RUNS = numRuns > 100 ? 3 * numRuns : numRuns / 4;

const PIECES = [
  ..."# |# Cautions\n|## B\n|- |* |1. |2. |10) |- [ ] |- [x] |> |    |  |\t|===\n|---\n|```|```\n|~~~\n|`|``|**|*|_|~~".split(
    "|",
  ),
  ..."[a](calc:b.c)¦[10 ft](calc:d)¦![p](x.png)¦[a](b c)¦[a](<b>)¦[*a*](b)¦[`a`](b)¦[a¦](b)¦[¦]¦(¦)¦!¦]: /u¦[^1]¦[^1]: ¦[a]: calc:e\n".split(
    "¦",
  ),
  ..."<!-- ¦-->¦<b>¦\\¦&amp;¦&#64;¦www.a.b¦a@b.org¦|¦| ¦|---|---|\n¦| a | b |\n¦:-¦-".split("¦"),
  ..."a word¦A¦12 ¦x `y` z¦“said”¦é¦, ¦. ¦\u00a0¦(in it)¦\n¦\n¦\n¦\n\n¦\n\n".split("¦"),
];

test("looks at anything put together so as the whole of it has it", () => {
  const text = fc
    .subarray(PIECES, { minLength: 2 })
    .chain((some) => fc.array(fc.constantFrom(...some, "a word", "\n", "\n\n", "[a](calc:b.c)"), { maxLength: 40 }));
  fc.assert(
    fc.property(text, (pieces) => agrees(pieces.join(""))),
    { numRuns: RUNS },
  );
}, 600_000);

test("looks at lines that are nearly plain so", () => {
  const inline = fc.constantFrom(
    ..."word| |, |12|[a](calc:b.c)|`code`|**|*|!|(|) |`|: |3.|é|“|-|[ ] |_".split("|"),
    "|",
  );
  const start = fc.constantFrom(
    "",
    "",
    "- ",
    "- ",
    "- [ ] ",
    "1. ",
    "2. ",
    "* ",
    "| ",
    "| ",
    "  ",
    "    ",
    "## ",
    "|---|---|",
  );
  const line = fc.tuple(start, fc.array(inline, { maxLength: 8 })).map(([first, rest]) => first + rest.join(""));
  const chunk = fc.array(line, { minLength: 1, maxLength: 4 }).map((lines) => lines.join("\n"));
  const body = fc.array(chunk, { maxLength: 6 }).map((chunks) => chunks.join("\n\n"));
  fc.assert(fc.property(body, agrees), { numRuns: RUNS });
}, 600_000);
