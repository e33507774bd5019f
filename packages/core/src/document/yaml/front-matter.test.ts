import fc from "fast-check";
import { expect, test } from "vitest";
import { readMarkdown } from "../body/markdown.js";
import { frontMatterOf } from "./front-matter.js";

/** remark-frontmatter reads it from the Markdown; both have to find the same. */
const between = (text: string): string | undefined => {
  const place = frontMatterOf(text);
  return place && text.slice(place.from, place.to);
};
const byRemark = (text: string): string | undefined => {
  const first = readMarkdown(text).tree.children[0];
  return first?.type === "yaml" ? first.value : undefined;
};

test.each([
  "---\nbuild: a\n---\n# A\n",
  "---\r\nbuild: a\r\nb: 1\r\n---\r\n# A\r\n",
  "---\n---\n",
  "---\n\n---",
  "---  \nbuild: a\n---\t\nx",
  "---\nbuild: a\n",
  "----\nbuild: a\n---\n",
  " ---\nbuild: a\n---\n",
  "\n---\nbuild: a\n---\n",
  "---\nbuild: a\n--- b\nc: d\n---\n",
  "---\nbuild: |\n  ---\n  x\n---\n",
  "# none\n",
  "",
])("finds the front matter of %j where the Markdown parser does", (text) => {
  expect(between(text)).toEqual(byRemark(text));
});

test("finds it in anything put together from fences, line ends and text", () => {
  const piece = fc.constantFrom("---", "--", "-", " ", "\t", "\n", "\r\n", "build: a", "x: ---", "#");
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 14 }), (pieces) => {
      const text = `---${pieces.join("")}`;
      expect(between(text)).toEqual(byRemark(text));
    }),
    { numRuns: 3 * (fc.readConfigureGlobal().numRuns ?? 100) },
  );
});
