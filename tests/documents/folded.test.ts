import { openRepository, type ScheduleName, schedule, tableCsv } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readCsv } from "../takeoff/csv-reader.js";

// A face folded over the raster. Figures are pixels of a panel times panels, by hand.

const PARTS = {
  path: "parts.yaml",
  text: "blade: {kind: panel, size: 1000 mm x 500 mm, pixels: 256 x 128, turns: [90]}\n",
};

const opened = (face: string, at: string) =>
  openRepository(
    {
      parts: [PARTS],
      documents: [
        {
          path: "a.md",
          text: `---\nbuild: a\ntitle: A\nstatus: draft\nfaces:\n  f: {panel: blade, support: wall, ${face}}\npicture: {raster: 3840 x 2160, at: {f: ${at}}}\n---\n`,
        },
      ],
    },
    rules,
    { today: "2027-01-01", every: true, keep: "models" },
  ).one("a.md");

const told = (at: string): readonly string[] =>
  opened("columns: 24, rows: 2", at)
    .entry.checks.filter(({ rule }) => rule === "document.front-matter" || rule === "document.parts")
    .filter(({ at: { path }, outcome }) => path.startsWith("picture.at") && outcome === "fails")
    .map(({ at: { path }, says, mend }) => `${path}: ${says} → ${mend}`);

describe("a slip in the parts of a face is told once, where it is", () => {
  const FORMS =
    "Write two whole numbers with a comma between, `0,0`, or a group with `at:`, `copy-of:`, `scaled:`, or a group with `parts:`, `copy-of:`.";
  test.each([
    [
      "both a place and parts",
      "{at: '0,0', parts: [{columns: 1..24, at: '0,0'}]}",
      `picture.at.f: \`picture.at.f\` (place of the face on the raster) has both \`at:\` and \`parts:\`. → ${FORMS}`,
    ],
    [
      "another size for a folded face",
      "{scaled: 8 x 8, parts: [{columns: 1..24, at: '0,0'}]}",
      `picture.at.f: \`picture.at.f\` (place of the face on the raster) has both \`scaled:\` and \`parts:\`. → ${FORMS}`,
    ],
    [
      "columns that are no range",
      "{parts: [{columns: 1-24, at: '0,0'}]}",
      "picture.at.f.parts.1.columns: `picture.at.f.parts.1.columns` (columns of the face in this part) is `1-24`. → Write `1..12`, or `13` for one; all of them where it is left out.",
    ],
    [
      "a place less than nothing",
      "{parts: [{columns: 1..24, at: '-1,0'}]}",
      "picture.at.f.parts.1.at: `picture.at.f.parts.1.at` is `-1,0`. → Write two whole numbers with a comma between, `0,0`.",
    ],
    [
      "a part of nothing",
      "{parts: [{at: '0,0'}]}",
      "picture.at.f.parts.1: `picture.at.f.parts.1` has `at:` alone. → Write `columns:` or `rows:` beside `at:`.",
    ],
    [
      "a part without a place",
      "{parts: [{columns: 1..24}]}",
      "picture.at.f.parts.1: `picture.at.f.parts.1` has no key `at`. → Write `at:` (top-left pixel of the part) under `picture.at.f.parts.1`.",
    ],
    [
      "a misspelt key",
      "{parts: [{collumns: 1..24, at: '0,0'}]}",
      "picture.at.f.parts.1.collumns: The key `collumns` is not known here. → Write `columns`. It may be `columns`, `rows` or `at`.",
    ],
    [
      "columns that run backwards",
      "{parts: [{columns: 24..1, at: '0,0'}]}",
      "picture.at.f.parts.1.columns: The columns `24..1` run backwards, and a part of a picture is not turned round. → Write `1..24`.",
    ],
    [
      "a place that is a number",
      "{at: 5}",
      'picture.at.f.at: `picture.at.f.at` is `5`. → Write a text; a number or `true` as text stands in quotes: `"5"`.',
    ],
  ])("%s", (_, at, line) => expect(told(at)).toEqual([line]));

  test("a part that cannot be read has no panel: what it has is open, and nothing holds", () => {
    const { entry } = opened("columns: 24, rows: 2", "{parts: [{columns: 1..24, rows: 1..2, at: '0,0'}]}");
    const about = entry.checks.filter(
      ({ rule, at: { path } }) => rule === "picture.placed" && path.startsWith("picture.at.f"),
    );
    expect(new Set(about.map(({ outcome }) => outcome))).toEqual(new Set(["open"]));
    expect(about[0]?.says).toBe("Whether the parts of face f together are the whole face cannot be told.");
  });
});

test.each([
  [
    "columns apart and together",
    "columns: 24, rows: 2",
    "{columns: 2..3, at: '0,0'}, {columns: 7..20, at: '0,256'}",
    "No part has columns 1, 4 to 6 and 21 to 24 of face f.",
  ],
  [
    "one column",
    "columns: 24, rows: 2",
    "{columns: 1..12, at: '0,0'}, {columns: 14..24, at: '0,256'}",
    "No part has column 13 of face f.",
  ],
  [
    "cells that make no column and no row",
    "columns: 2, rows: 2",
    "{columns: 1, rows: A, at: '0,0'}",
    "No part has A2, B1, B2 of face f.",
  ],
  ["rows", "columns: 2, rows: 2", "{rows: A, at: '0,0'}", "No part has row B of face f."],
])("what is left out is named: %s", (_, face, parts, says) => {
  const { entry } = opened(face, `{parts: [${parts}]}`);
  const fails = entry.checks.filter(({ rule, outcome }) => rule === "picture.placed" && outcome === "fails");
  expect(fails.map((each) => each.says)).toEqual([says]);
});

function records(face: string, at: string, name: ScheduleName): readonly Readonly<Record<string, string>>[] {
  const { build, system } = opened(face, at);
  const [head = [], ...rows] = readCsv(tableCsv(schedule(build, name, system)));
  return rows.map((row) => Object.fromEntries(head.map((each, index) => [each, row[index] ?? ""])));
}

const firstPixels = (face: string, at: string, ...cells: readonly string[]): readonly string[] => {
  const rows = records(face, at, "panels");
  return cells.map((cell) => {
    const row = rows.find(({ Cell }) => Cell === cell);
    return `${cell} ${row?.["First pixel across (px)"]},${row?.["First pixel down (px)"]}`;
  });
};

describe("where a panel begins on the raster", () => {
  test("counts from the part it is in", () =>
    // 256 × 128: the fourth column is the second of its part, the second row 128 lower.
    expect(
      firstPixels(
        "columns: 5, rows: 2",
        "{parts: [{columns: 1..2, at: '10,0'}, {columns: 3..5, at: '20,300'}]}",
        "A1",
        "B2",
        "A3",
        "B4",
      ),
    ).toEqual(["A1 10,0", "B2 266,128", "A3 20,300", "B4 276,428"]));

  test("counts rows of a part from its first", () =>
    expect(
      firstPixels(
        "columns: 1, rows: 4",
        "{parts: [{rows: A..B, at: '0,0'}, {rows: C..D, at: '256,5'}]}",
        "B1",
        "C1",
        "D1",
      ),
    ).toEqual(["B1 0,128", "C1 256,5", "D1 256,133"]));

  test("of panels on their side takes the pixels as they stand", () =>
    // On its side a panel of 256 × 128 is 128 wide and 256 high.
    expect([
      ...firstPixels("columns: 3, rows: 2, rotated: 90", "'7,9'", "A1", "B3"),
      ...firstPixels(
        "columns: 3, rows: 2, rotated: 90",
        "{parts: [{columns: 1, at: '0,0'}, {columns: 2..3, at: '128,0'}]}",
        "B3",
      ),
    ]).toEqual(["A1 7,9", "B3 263,265", "B3 256,256"]));

  test("is not told of a panel in no part", () =>
    expect(firstPixels("columns: 2, rows: 1", "{parts: [{columns: 1, at: '0,0'}]}", "A2")).toEqual(["A2 ,"]));
});

describe("the cut of the picture", () => {
  test("has a row for each part: what of the face, where there, and where on the raster", () =>
    expect(
      records(
        "columns: 5, rows: 2",
        "{parts: [{columns: 1..2, at: '10,0'}, {columns: 3..5, rows: B, at: '20,300'}]}",
        "cut",
      ).map((row) => Object.values(row).join(" | ")),
    ).toEqual([
      "f | columns 1 to 2 | 0 | 0 | 512 | 256 | 10 | 0 | stated",
      "f | columns 3 to 5, row B | 512 | 128 | 768 | 128 | 20 | 300 | stated",
    ]));

  test("is empty where no face is folded", () => expect(records("columns: 5, rows: 2", "'0,0'", "cut")).toEqual([]));
});

test("a folded face reaches as far as the farthest of its parts", () => {
  const { build } = opened(
    "columns: 5, rows: 2",
    "{parts: [{columns: 1..2, at: '10,900'}, {columns: 3..5, at: '20,300'}]}",
  );
  const value = (path: string): number | undefined => {
    const found = build.values.get(path);
    return found?.known ? found.value : undefined;
  };
  const all = ["right", "bottom", "parts.1.right", "parts.1.bottom", "parts.2.right", "parts.2.bottom"];
  expect(all.map((key) => value(`picture.at.f.${key}`))).toEqual([788, 1156, 522, 1156, 788, 556]);
});

// Counted one by one, without sums: a panel is in a part whose columns and rows both have it.
test("which panels are in no part, and which in two, is what counting them one by one gives", () => {
  const span = (most: number) =>
    fc.option(
      fc
        .tuple(fc.integer({ min: 1, max: most + 2 }), fc.integer({ min: 1, max: most + 2 }))
        .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const),
      { nil: undefined },
    );
  const arbitrary = fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 5 })).chain(([columns, rows]) =>
    fc.record({
      columns: fc.constant(columns),
      rows: fc.constant(rows),
      parts: fc.array(
        fc.tuple(span(columns), span(rows)).filter(([a, b]) => a !== undefined || b !== undefined),
        { minLength: 1, maxLength: 5 },
      ),
    }),
  );
  const letter = (row: number): string => "ABCDEFGHIJ"[row - 1] as string;
  fc.assert(
    fc.property(arbitrary, ({ columns, rows, parts }) => {
      const written = parts.map(([c, r], index) =>
        [
          ...(c ? [`columns: ${c[0]}..${c[1]}`] : []),
          ...(r ? [`rows: ${letter(r[0])}..${letter(r[1])}`] : []),
          `at: '${index},0'`,
        ].join(", "),
      );
      const { build } = opened(
        `columns: ${columns}, rows: ${rows}`,
        `{parts: [${written.map((each) => `{${each}}`).join(", ")}]}`,
      );
      const coverage = build.picture.placements[0]?.coverage;
      const times: number[] = [];
      for (let row = 1; row <= rows; row += 1)
        for (let column = 1; column <= columns; column += 1)
          times.push(
            parts.filter(([c, r]) => (!c || (column >= c[0] && column <= c[1])) && (!r || (row >= r[0] && row <= r[1])))
              .length,
          );
      expect([coverage?.leftOut.count, coverage?.twice.count]).toEqual([
        times.filter((each) => each === 0).length,
        times.filter((each) => each > 1).length,
      ]);
      expect((coverage?.beyond.length ?? 0) > 0).toBe(
        parts.some(([c, r]) => (c?.[1] ?? 0) > columns || (r?.[1] ?? 0) > rows),
      );
    }),
    { numRuns: 60 },
  );
});
