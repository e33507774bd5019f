import fc from "fast-check";
import type { Root } from "mdast";
import { expect, test } from "vitest";
import { parseBody } from "./parse.js";
import { bodyPieces, readPieces } from "./pieces.js";

/** Read piece by piece, a body comes to the tree it has read at once, every place included. */
function agrees(body: string): void {
  // As it is loaded by tests, the parser refuses a box below an empty item; as it is bundled, it does not.
  fc.pre(!/(?:[-*+]|\d[.)])[ \t]*\n[ \t>]*\[[ xX]\]/u.test(body));
  expect(bodyPieces(body).join("")).toBe(body);
  expect(readPieces(body, parseBody).tree).toEqual(parseBody(body));
}

test.each([
  ["", 1],
  ["words\n\n# A\n\nwords\n## B\nwords", 3],
  ["# A\n# B\n# B\n", 3],
  ["- item\n# A\n1. one\n\n   two\n\n\n## B\n> quoted\n### C\n    code\n", 4],
  ["| a |\n|---|\n| b |\n# A\nunder\n---\n# B\n", 3],
  ["words\n\n# A\n\n```\n# no heading\n```\n\n# B\n", 2],
  ["<!--\n# no heading\n-->\n# A\n", 1],
  ["# A\n[a]\n# B\n[a]: calc:b\n", 1],
  ["- a\n\n  # within an item\n", 1],
  ["#A\n####### no heading\n#\n# A\r\n# B\n", 1],
])("%j is read in %i pieces", (body, count) => {
  expect(bodyPieces(body)).toHaveLength(count);
  agrees(body);
});

test("a piece that is known is not read again, wherever it stands now", () => {
  const read: string[] = [];
  const reading = (piece: string): Root => {
    read.push(piece);
    return parseBody(piece);
  };
  const { pieces } = readPieces("a\n\n# A\n\n[b](c)\n# B\n", reading);
  expect(read).toEqual(["a\n\n", "# A\n\n[b](c)\n", "# B\n"]);
  read.length = 0;
  const after = "a word\nmore\n\n# A\n\n[b](c)\n# B\n";
  expect(readPieces(after, reading, pieces).tree).toEqual(parseBody(after));
  expect(read).toEqual(["a word\nmore\n\n"]);
  // What was read first is as it was.
  expect(readPieces("a\n\n# A\n\n[b](c)\n# B\n", reading, pieces).tree).toEqual(parseBody("a\n\n# A\n\n[b](c)\n# B\n"));
});

test("anything put together is read so as at once", () => {
  const marks = [
    ..."# |\n# A\n|## B\n|\n### C|- |* |1. |2. |- [ ] |> |    |  |\t|===\n|---\n|```|~~~\n|`|**|_|~~|<b>|<!--|-->|[a](b)|[a]|]: c\n|[^1]|\\|www.a.b".split(
      "|",
    ),
    ..."a word¦| a |¦| a |\n|---|\n¦\n¦\n¦\n\n¦\n# A\n¦\n\n## B\n".split("¦"),
  ];
  const text = fc
    .subarray(marks, { minLength: 2 })
    .chain((some) => fc.array(fc.constantFrom(...some, "a word", "\n", "\n\n# A\n"), { maxLength: 40 }));
  fc.assert(
    fc.property(text, (pieces) => agrees(pieces.join(""))),
    { numRuns: 3 * (fc.readConfigureGlobal().numRuns ?? 100) },
  );
});
