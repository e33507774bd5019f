import { assumedWithin, given, guessed, type Kind, type Known, type Value } from "@plumbmark/calc";
import { NOT_STATED, openRepository, pricesOf, type ScheduleTable, tableCsv } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { byLength, wholePiece } from "../../packages/core/src/takeoff/piece.js";
import { madeOf } from "../../packages/core/src/takeoff/schedules/cables.js";
import { type HangLine, hangColumns } from "../../packages/core/src/takeoff/schedules/hangs.js";
import { panelLines } from "../../packages/core/src/takeoff/schedules/panels.js";
import { partLines } from "../../packages/core/src/takeoff/schedules/parts.js";
import { tableOf, withoutEmpty } from "../../packages/core/src/takeoff/table.js";
import { starter, TODAY } from "../documents/repository.js";
import { readCsv } from "./csv-reader.js";

// What is printed in one cell, and the number behind it: counts in full, all else to four digits, six in the CSV. The foot
// is 0.3048 m and the pound 0.45359237 kg, exactly (NIST SP 811, B.8).

const written = <const K extends Kind>(value: number, kind: K, text: string): Known<K> => ({
  ...given(value, kind),
  origin: { from: "written", path: "a", text },
});

const column = (value: Value | number | undefined, kind: Kind, system: "us" | "metric" = "metric"): ScheduleTable =>
  tableOf({ name: "parts", title: "" }, [{ name: "It", kind, of: () => value }], [0], system);

const cell = (value: Value | number | undefined, kind: Kind, system: "us" | "metric" = "metric") =>
  column(value, kind, system).rows[0]?.[0];

test.each([
  ["a count in full", given(1_234_567, "count"), "1,234,567", 1_234_567],
  ["pixels in full", given(7_654_321, "pixels"), "7,654,321", 7_654_321],
  ["a third of a count to four digits", given(1 / 3, "count"), "0.3333", 0.333333],
  ["a mass to four digits", given(2.3456789, "mass"), "2.346", 2.34568],
  ["a whole mass to four digits as well", given(1234.5, "mass"), "1,235", 1234.5],
] as const)("%s", (_, value, text, number) => expect(cell(value, value.kind)).toMatchObject({ text, number }));

test("a plain number is a count", () => expect(cell(12_345, "mass")).toMatchObject({ text: "12,345", number: 12_345 }));

test("a whole mass beyond six digits keeps six", () =>
  expect(cell(given(12_345_678, "mass"), "mass")?.number).toBe(12_345_700));

test("feet and inches stand as they are written, other lengths in the unit of the column", () => {
  expect(cell(written(46 * 0.0254, "length", "3 ft 10 in"), "length", "us")?.text).toBe("3 ft 10 in");
  // 0.9 m are 2.9528 ft.
  expect(cell(written(0.9, "length", "0.9 m"), "length", "us")).toMatchObject({ text: "2.953", number: 2.95276 });
  expect(cell(written(35 * 0.3048, "length", "35 ft"), "length", "us")?.text).toBe("35");
});

test("what is not known says so, and what does not apply is empty", () => {
  expect(cell({ known: false, kind: "mass", gaps: [] } as unknown as Value, "mass")).toEqual({
    text: NOT_STATED,
    stated: false,
  });
  expect(cell(undefined, "mass")).toEqual({ text: "", stated: true });
});

test("a guess has its sign behind it, a bound its words in front, and what is stated neither", () => {
  const sure = given(20, "current");
  const guess = guessed(written(20, "current", "20 A"));
  const sign = cell(guess, "current");
  expect(sign).toMatchObject({ text: "20 ?", sure: "guess", number: 20 });
  // One guess was read; what rests on none has no sign for that.
  expect(cell(sure, "current")).toEqual({ text: "20", number: 20, stated: true });
  const assumed = assumedWithin(sure, "a", "cord-mass", "the least there is") as Known;
  expect(cell(assumed, "current")).toMatchObject({ text: "assumed 20", sure: "assumed" });
  const bound = { ...sure, sure: "at most" } as Known;
  expect(cell(bound, "current")).toMatchObject({ text: "at most 20", sure: "bound" });
});

test("a column that says nothing in any row is left out, one that says something in one row is not", () => {
  const columns = [
    { name: "a", of: (row: number) => (row === 1 ? "here" : "") },
    { name: "b", of: () => "" },
  ];
  const both = tableOf({ name: "parts", title: "" }, columns, [0, 1], "us");
  expect(withoutEmpty(both).columns.map(({ name }) => name)).toEqual(["a"]);
  expect(withoutEmpty(both).rows.map((row) => row.length)).toEqual([1, 1]);
  const none = tableOf({ name: "parts", title: "" }, columns, [], "us");
  expect(withoutEmpty(none).columns.map(({ name }) => name)).toEqual(["a", "b"]);
});

test("the least sure of a row stands behind it", () => {
  const row = [
    { text: "1", number: 1, stated: true },
    { text: "2 ?", number: 2, stated: true, sure: "guess" },
    { text: "at most 3", number: 3, stated: true, sure: "bound" },
  ] as const;
  const of = (...cells: readonly (typeof row)[number][]) =>
    readCsv(
      tableCsv({
        name: "parts",
        title: "",
        columns: cells.map((_, index) => ({ name: `${index}`, numeric: true })),
        rows: [cells],
      }),
    )[1]?.at(-1);
  expect(of(row[0])).toBe("stated");
  expect(of(row[0], row[2])).toBe("bound");
  expect(of(...row)).toBe("guess");
});

// A hang is listed with what joins it to the structure; where it is borne by legs, they have their own.
test.each([
  ["a hang with one part", { names: ["pipe-collar"], isLeg: false }, "pipe-collar", 5],
  ["a leg with two", { names: ["beam-clamp", "wire"], isLeg: true }, "beam-clamp, wire", 5],
  ["a part without a name", { names: [""], isLeg: true }, NOT_STATED, 5],
  ["a hang with none of its own", { names: [], isLeg: false }, "", undefined],
  ["a leg with none", { names: [], isLeg: true }, NOT_STATED, undefined],
])("%s", (_, { names, isLeg }, says, least) => {
  const line = {
    assembly: { parts: names.map((name) => ({ name })), weakest: given(5, "mass") },
    angle: isLeg ? given(1, "angle") : undefined,
  } as unknown as HangLine;
  const of = (name: string) => hangColumns.find((each) => each.name === name)?.of(line);
  expect(of("Assembly, load order")).toBe(says);
  expect((of("Least WLL") as Known | undefined)?.value).toBe(least);
});

test("pieces of one part and length stand in one line, with the power of those that take any", () => {
  const piece = (use: string, count: number, spare: boolean, watts?: number) => ({
    ...{ name: "tile", kind: "panel", describes: "", length: undefined, use, spare },
    ...{ count: given(count, "count"), mass: given(count * 8, "mass") },
    ...(watts === undefined ? {} : { power: given(watts, "power") }),
  });
  const list = [piece("face a", 6, false, 900), piece("face b", 4, false, 600), piece("spares", 2, true)];
  const [line, ...others] = partLines(list as never);
  expect(others).toEqual([]);
  const figures = [line?.inUse, line?.spares, line?.total, line?.mass, line?.power].map(
    (each) => (each as Known).value,
  );
  expect(figures).toEqual([10, 2, 12, 96, 1500]);
  expect(line?.uses).toBe("face a: 6; face b: 4; spares: 2");
  const [tools] = partLines([piece("crew", 1, false)] as never);
  expect(tools?.power).toBeUndefined();
  const [lamp] = partLines([piece("face a", 1, false, 150)] as never);
  expect(lamp?.power).toMatchObject({ value: 150 });
});

test("a panel of a folded face has its first pixel where its part lies on the raster", () => {
  // Tiles of 160 by 160 pixels; columns 10 to 17 begin at 0,160, so that column 12 is the third of them.
  const text = `---
build: fold
title: Folded
status: draft
faces:
  ribbon: {panel: tile-500-p3.1, columns: 20, rows: 2, support: wall}
picture:
  raster: 1920 x 1080
  at:
    ribbon: {parts: [{columns: 1..9, at: "0,0"}, {columns: 10..17, at: "7,400"}, {columns: 18..20, at: "0,800"}]}
---
# Folded
`;
  const files = { ...starter(), documents: [{ path: "a.md", text }] };
  const { build } = openRepository(files, rules, { today: TODAY }).one("a.md");
  const at = (row: number, column: number) => {
    const line = panelLines(build).find(({ cell: each }) => each.row === row && each.column === column);
    return [line?.left, line?.top].map((each) => (each as Known).value);
  };
  expect([at(0, 0), at(1, 8), at(0, 11), at(1, 11)]).toEqual([
    [0, 0],
    [8 * 160, 160],
    [7 + 2 * 160, 400],
    [7 + 2 * 160, 560],
  ]);
});

const catalogue = openRepository({ ...starter(), documents: [] }, rules, { today: TODAY }).catalogue;

test("what is weighed by its length has no mass by the piece, and the other way round", () => {
  const ordered = (name: string) => ({
    part: catalogue.parts.get(name),
    name,
    use: "run P1",
    count: given(2, "count"),
  });
  const ten = given(10, "length") as Known<"length">;
  const masses = [
    wholePiece(ordered("tile-500-p3.1") as never),
    byLength(ordered("cord-12-3") as never, ten),
    wholePiece(ordered("cord-12-3") as never),
    byLength(ordered("tile-500-p3.1") as never, ten),
  ].map(({ mass }) => (mass.known ? mass.value : undefined));
  // By the catalogue: 7.9 kg each, 0.25 kg/m.
  expect(masses).toEqual([2 * 7.9, 2 * 10 * 0.25, undefined, undefined]);
});

test("a cable is made of what the catalogue says; one that is in none is made of nothing that is known", () => {
  expect(madeOf({ part: catalogue.parts.get("cord-12-3") } as never)).toMatch(/^12 AWG, 3 conductors/u);
  expect(madeOf({ part: undefined } as never)).toBe("");
});

test("a panel whose face has no place on the raster has no first pixel", () => {
  const text = (picture: string): string => `---
build: dark
title: Dark
status: draft
faces:
  sign: {panel: tile-500-p3.1, columns: 2, rows: 1, support: wall}
${picture}---
# Dark
`;
  const first = (picture: string) => {
    const files = { ...starter(), documents: [{ path: "a.md", text: text(picture) }] };
    const { build } = openRepository(files, rules, { today: TODAY }).one("a.md");
    return panelLines(build).map(({ left, top }) => [left, top]);
  };
  const none = [
    [undefined, undefined],
    [undefined, undefined],
  ];
  expect(first("")).toEqual(none);
  expect(first("picture:\n  raster: 640 x 480\n  at: {sign: {parts: [{columns: 1..2}]}}\n")).toEqual(none);
});

test("a sum of all that is needed is told from one of what has a price", () => {
  const text = `---
build: priced
title: Priced
status: draft
faces:
  sign: {panel: cheap, columns: 2, rows: 1, support: wall, spares: 0}
  other: {panel: PANEL, columns: 1, rows: 1, support: wall, spares: 0}
---
# Priced
`;
  const parts = `cheap: {kind: panel, size: 500 mm x 500 mm, pixels: 100 x 100, price: 412.50 USD}
free: {kind: panel, size: 500 mm x 500 mm, pixels: 100 x 100}
`;
  const prices = (panel: string) => {
    const files = {
      ...starter(),
      parts: [{ path: "parts/a.yaml", text: parts }],
      documents: [{ path: "a.md", text: text.replace("PANEL", panel) }],
    };
    const { build, system } = openRepository(files, rules, { today: TODAY }).one("a.md");
    const { table, unpriced } = pricesOf(build, system);
    return { unpriced, last: table.rows.at(-1)?.map((each) => each.text) };
  };
  const all = prices("cheap");
  expect([all.unpriced, all.last?.[0], all.last?.includes("1237.50")]).toEqual([[], "Sum", true]);
  expect(all.last?.at(-1)).toBe("USD");
  const some = prices("free");
  expect([some.unpriced, some.last?.[0], some.last?.includes("825.00")]).toEqual([
    ["free"],
    "Sum of what has a price",
    true,
  ]);
});
