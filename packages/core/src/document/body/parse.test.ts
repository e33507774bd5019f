import fc from "fast-check";
import { expect, test } from "vitest";
import { frontMatterOf } from "../yaml/front-matter.js";
import { parse, parseWhole } from "./parse.js";

/** The short way and the straightforward one come to the same tree, every place included. */
function agrees(text: string): void {
  expect(parse(text, frontMatterOf(text))).toEqual(parseWhole(text));
}

test.each([
  "---\nbuild: a\n---\n# A\n\nSee https://example.org, www.example.org and a@example.org.\n",
  "---\nbuild: a\n---\n# A\n\nSee www&#46;example.org, a&#64;example.org, www\\.example.org and a&commat;b.org.\n",
  "---\r\nbuild: a\r\n---\r\n| a | b |\r\n|---|:-:|\r\n| [x](y) | ~~z~~ |\r\n",
  "---\rbuild: a\r---\r- [ ] one\r- [x] two[^1]\r\r[^1]: note\r",
  "---\n---\n",
  "---\nbuild: a\n---",
  "---\nbuild: a\n---  \t\n\ttext",
  "---\t\nbuild: a\n\n---\n---\nb\n---\n",
  "---\nbuild: a\n---\n\uFEFFtext",
  "\uFEFF---\nbuild: a\n---\ntext",
  "---\nbuild: a\0\n---\ntext\0",
  "# none\n",
  "",
])("reads %j as the Markdown parser does when it is given everything", agrees);

test("reads anything put together from marks, addresses and line ends so", () => {
  const pieces = [
    ..."---|--|-|:-|- [ ] |1. |> |# |* |_|~~|`|```|<a>|![|[|](b)|[^1]|[^1]: |\\|&amp;|&#64;|@|www.|http://|a.b|x".split(
      "|",
    ),
    ..."| \t\n\r\n\r\uFEFF&.".split(""),
    "|",
    "\r\n",
    "\n\n",
    "a word",
    "    ",
  ];
  // Of a few of them, so that texts come up that hold a part of what GFM knows and not the others.
  const text = fc
    .subarray(pieces, { minLength: 1 })
    .chain((some) => fc.array(fc.constantFrom(...some), { maxLength: 40 }));
  fc.assert(
    fc.property(text, fc.boolean(), (pieces, front) =>
      agrees(`${front ? "---\nbuild: a\n---" : ""}${pieces.join("")}`),
    ),
    { numRuns: 3 * (fc.readConfigureGlobal().numRuns ?? 100) },
  );
});
