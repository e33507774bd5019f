import {
  columnHeading,
  plainText,
  readMarkdown,
  type ScheduleTable,
  safeText,
  tableCsv,
  tableMarkdown,
} from "@plumbmark/core";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readCsv } from "./csv-reader.js";

const table = (...texts: readonly string[]): ScheduleTable => ({
  name: "parts",
  title: "Parts",
  columns: texts.map((_, index) => ({ name: `c${index}`, numeric: false })),
  rows: [texts.map((text) => ({ text, stated: true }))],
});

describe("the reader these tests use", () => {
  // The examples of RFC 4180, section 2, 1 to 7.
  test.each([
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "b\r\nbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ['"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
  ])("%j", (text, records) => expect(readCsv(text)).toEqual(records));

  test.each(["a\nb", 'a"b', '"a', '"a"b', "a\rb"])("refuses %j", (text) => expect(() => readCsv(text)).toThrow());
});

describe("CSV", () => {
  test("words come back as they were, whatever is in them that is safe to show", () =>
    fc.assert(
      fc.property(fc.array(fc.string({ unit: "grapheme" }), { minLength: 1 }), (texts) => {
        const [head, row] = readCsv(tableCsv(table(...texts)));
        expect(head).toEqual([...texts.map((_, index) => `c${index}`), "sure"]);
        const own = row?.slice(0, -1);
        expect(own?.map((text, index) => (/^[=+\-@\t\r]/u.test(texts[index] ?? "") ? text.slice(1) : text))).toEqual(
          texts.map(safeText),
        );
      }),
    ));

  // The beginnings a spreadsheet reads as a formula, as a published note on the attack lists them (OWASP, from memory).
  test.each(["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", '=HYPERLINK("x","y")'])("%j is no formula", (text) =>
    // A carriage return, as every control but the tab and the line feed, is replaced (Unicode 16, 23.1: U+FFFD).
    expect(readCsv(tableCsv(table(text)))[1]).toEqual([`'${text.replace("\r", "\ufffd")}`, "stated"]),
  );

  // ESC [2J clears a terminal (ECMA-48, 8.3.39); U+202E turns what follows round (UAX 9).
  test.each(["\u001b[2J", "\u0007", "\u009b1m", "\u202e", "\u2066", "\u200f"])("%j reaches no file", (mark) =>
    expect(tableCsv(table(`a${mark}b`))).not.toContain(mark),
  );

  test("numbers are digits, sign and point only", () => {
    const number = (value: number) => ({ text: "−1,234.5", number: value, stated: true });
    const rows = [[1234.5, -2, 0.0000001, 0].map(number)];
    const columns = rows[0]?.map((_, index) => ({ name: `${index}`, numeric: true })) ?? [];
    const [, row] = readCsv(tableCsv({ name: "parts", title: "", columns, rows }));
    expect(row).toEqual(["1234.5", "-2", "0.0000001", "0", "stated"]);
  });
});

interface Node {
  readonly type: string;
  readonly children?: readonly Node[];
}

const cellsOf = (text: string): readonly (readonly string[])[] => {
  const found = readMarkdown(text).tree.children.find(({ type }) => type === "table") as unknown as Node;
  return (found.children ?? []).map((row) => (row.children ?? []).map((cell) => plainText(cell as never)));
};

describe("Markdown, read back by remark with its GFM tables", () => {
  test("words come back with every blank as one", () =>
    fc.assert(
      fc.property(fc.array(fc.string(), { minLength: 1, maxLength: 6 }), (texts) => {
        const [head, row] = cellsOf(tableMarkdown(table(...texts)));
        expect(head).toEqual(texts.map((_, index) => `c${index}`));
        expect(row).toEqual(texts.map((text) => text.replace(/\s+/gu, " ").trim()));
      }),
    ));

  test.each(["a | b", "`a`", "**a**", "[a](b)", "<b>a</b>", "a\\|b", "&amp;", "~~a~~", "x_1_", "a\nb"])("%j", (text) =>
    expect(cellsOf(tableMarkdown(table(text)))[1]).toEqual([text.replace(/\s+/gu, " ")]),
  );

  test("the unit stands in the head of the column", () => {
    expect(columnHeading({ name: "Length", unit: "ft", numeric: true })).toBe("Length (ft)");
    expect(columnHeading({ name: "Label", numeric: false })).toBe("Label");
  });
});
