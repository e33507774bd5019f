import type { Element } from "hast";
import { describe, expect, it } from "vitest";
import { spread } from "../../../docs-site/src/drawings/face/cable-entries.js";
import { cellRanges } from "../../../docs-site/src/drawings/shared/cell-ranges.js";
import { levelDimension, uprightDimension } from "../../../docs-site/src/drawings/shared/dimension.js";
import { type Drawing, fitsPage, stamped, svgFile } from "../../../docs-site/src/drawings/shared/drawing.js";
import { hatch } from "../../../docs-site/src/drawings/shared/hatch.js";
import { fitted, measure, SMALL, wrapped } from "../../../docs-site/src/drawings/shared/lettering.js";
import { scaleBar, scaleFor } from "../../../docs-site/src/drawings/shared/scale.js";
import { series } from "../../../docs-site/src/drawings/shared/series.js";
import { drawnTable } from "../../../docs-site/src/drawings/shared/table.js";
import { lengthText, massRoundedUp } from "../../../docs-site/src/drawings/shared/value-text.js";
import { setWidth } from "./drafting/letters.js";
import { number, type Read, read, words } from "./read.js";
import { type Box, boxOf, inside, lineOf, measures } from "./to-size/paper.js";

// The pieces drawings are put together from, each by itself.

const onSheet = (shapes: readonly Element[]): Drawing => ({
  ...{ name: "a", title: "A", description: "a", width: 178, height: 50 },
  shapes,
});
const drawn = (...shapes: readonly Element[]): Read => read(svgFile(onSheet(shapes)));

describe("cells in cable order", () => {
  const cells = (text: string) =>
    text.split(" ").map((name) => ({ row: name.charCodeAt(0) - 65, column: Number(name.slice(1)) - 1 }));
  it.each([
    ["A1", "A1"],
    ["A1 A2 A3", "A1..A3"],
    ["A1 A2 A3 B3 B2 B1", "A1..A3, B3..B1"],
    ["A1 B1 C1 C2", "A1..C1, C2"],
    // One after another, but not beside one another: two apart, aslant, a knight's move.
    ["A1 A3", "A1, A3"],
    ["A1 B2", "A1, B2"],
    ["A1 C2", "A1, C2"],
    ["B3 B2 A2 A1", "B3..B2, A2..A1"],
  ])("%s", (given, said) => expect(cellRanges(cells(given))).toBe(said));
});

it.each([
  ["those far enough stay", [10, 30], 5, 0, Infinity, [10, 30]],
  ["those too near move on, in their order", [5, 5, 5], 4, 0, Infinity, [5, 9, 13]],
  ["whatever order they come in", [10, 9, 30], 4, 0, Infinity, [13, 9, 30]],
  ["none before the least", [0, 1], 4, 3, Infinity, [3, 7]],
  ["none past the most", [5, 11, 12], 4, 0, 12, [4, 8, 12]],
  ["none before the least for want of room", [5, 5], 10, 3, 9, [3, 9]],
])("places moved apart: %s", (_, places, gap, least, most, moved) =>
  expect(spread(places, gap, least, most)).toEqual(moved),
);

// A foot has 12 inches of 25.4 mm.
it.each([
  [46, "3 ft 10 in"],
  [12, "1 ft"],
  [24, "2 ft"],
  [6, "6 in"],
  [0.5, "1/2 in"],
  [1.5, "1-1/2 in"],
  [22.125, "1 ft 10-1/8 in"],
  [12.75, "1 ft 3/4 in"],
])("%f inches are read off a tape as %s", (inches, said) => expect(lengthText(inches * 0.0254, "us", true)).toBe(said));

it("a length that is no whole number of eighths, or asked for in decimals, has decimals", () => {
  // 46.03 in are 3.8358 ft.
  expect(lengthText(46.03 * 0.0254, "us", true)).toBe("3.836 ft");
  expect(lengthText(46 * 0.0254, "us", false)).toBe("3.833 ft");
  expect(lengthText(46 * 0.0254, "metric", false)).toBe("1.168 m");
});

it.each([
  [100, "metric", "100 kg"],
  [100.01, "metric", "100.1 kg"],
  [1234.4, "metric", "1,235 kg"],
  [0, "metric", "0 kg"],
])("%f kg are never printed as less: %s %s", (kilograms, system, said) =>
  expect(massRoundedUp(kilograms, system as "metric")).toBe(said),
);

describe("scales", () => {
  // ISO 5455, 4: 1:1, 1:2, 1:5 and their tenfolds; architects' scales go by parts of an inch to the foot.
  it.each([
    [10, 100, "metric", 100],
    [10.001, 100, "metric", 200],
    [0.05, 100, "metric", 1],
    [0.1001, 100, "metric", 2],
    [9.7, 100, "us", 128],
    [9.6, 100, "us", 96],
    [30_000, 100, "metric", 300_000],
    [2000, 100, "us", 20_000],
  ])("%f m in %f mm, %s, are drawn 1:%i", (metres, room, system, ratio) => {
    const scale = scaleFor(metres, room, system as "us");
    expect(scale.ratio).toBe(ratio);
    expect(scale.mm(metres)).toBeCloseTo((1000 * metres) / ratio, 9);
  });

  it.each([
    [20, "metric", 0.5],
    [100, "metric", 2],
    [96, "us", 10 * 0.3048],
    [5000, "metric", 200],
  ] as const)("the bar at 1:%i, %s, is the longest round length below 40 mm", (ratio, system, length) => {
    const drawing = drawn(scaleBar({ ratio, system, mm: (metres) => (metres * 1000) / ratio }, [10, 20]));
    const [, group] = drawing.having("data-length")[0] as readonly [string, never];
    expect(number(group, "data-length")).toBeCloseTo(length, 9);
    const [whole, half] = inside(group, "rect").map(boxOf) as [Box, Box];
    expect(whole.width).toBeCloseTo((length * 1000) / ratio, 1);
    expect([half.x, half.y, half.height]).toEqual([whole.x, whole.y, whole.height]);
    expect(half.width).toBeCloseTo(whole.width / 2, 1);
    const ends = inside(group, "line").map(lineOf);
    expect(ends.map(({ from }) => from[0].toFixed(1))).toEqual(
      [whole.x, whole.x + whole.width].map((x) => x.toFixed(1)),
    );
    expect(ends.every(({ from, to }) => from[1] < whole.y && to[1] === whole.y + whole.height)).toBe(true);
    const [label] = inside(group, "text");
    const beside = number(label, "x") - whole.x - whole.width;
    expect(beside > 0.5 && beside < 3).toBe(true);
  });
});

describe("dimensions", () => {
  const figure = "10 ft 6 in";
  const wide = setWidth(figure, SMALL, false);

  it("turn the figure of an upright line that has room for it, and set it beside a shorter one", () => {
    const lengths = Array.from({ length: 30 }, (_, index) => 2 + index);
    const turned = lengths.filter((length) => {
      const [label] = drawn(uprightDimension(50, 10, 10 + length, { words: figure })).all("text");
      return label?.attributes.transform !== undefined;
    });
    expect(Math.min(...turned)).toBeGreaterThan(wide);
    expect(Math.min(...turned)).toBeLessThan(1.6 * wide);
    expect(turned).toEqual(lengths.filter((length) => length >= Math.min(...turned)));
    const beside = drawn(uprightDimension(50, 10, 45, { words: figure, beside: true })).all("text")[0];
    expect(beside?.attributes.transform).toBeUndefined();
    expect(beside?.attributes["text-anchor"]).toBe("end");
    expect(number(beside, "x")).toBeLessThan(50);
    const short = drawn(uprightDimension(50, 10, 13, { words: figure })).all("text")[0];
    expect(number(short, "x")).toBeGreaterThan(50);
  });

  it.each([
    ["right of the thing", 50, [40, 30]],
    ["left of the thing", 20, [40, 30]],
  ])("upright, %s: each line begins off its own edge and ends past the line, alike on both sides", (_, x, reach) => {
    const [one] = measures(drawn(uprightDimension(x, 10, 40, { words: "1 m", metres: 1, reach: reach as never })));
    const way = Math.sign(x - 35);
    const [from, to] = [one?.extensions.map((each) => each.from) ?? [], one?.extensions.map((each) => each.to) ?? []];
    expect(from.map(([, y]) => y)).toEqual([10, 40]);
    expect(to.map(([, y]) => y)).toEqual([10, 40]);
    const off = from.map(([at], index) => (at - (reach[index] as number)) * way);
    expect(off[0]).toBeCloseTo(off[1] as number, 2);
    expect(off.every((each) => each > 0.3 && each < 1.5)).toBe(true);
    const past = to.map(([at]) => (at - x) * way);
    expect(past.every((each) => each > 0.5 && each < 1.5)).toBe(true);
  });

  it.each([
    ["below the thing", 40, [20, 30]],
    ["above the thing", 10, [30, 20]],
  ])("level, %s: each line begins off its own edge and ends past the line, alike on both sides", (_, y, reach) => {
    const [one] = measures(drawn(levelDimension(10, 60, y, { words: "1 m", metres: 1, reach: reach as never })));
    const way = Math.sign(y - 25);
    const [from, to] = [one?.extensions.map((each) => each.from) ?? [], one?.extensions.map((each) => each.to) ?? []];
    expect(from.map(([x]) => x)).toEqual([10, 60]);
    const off = from.map(([, at], index) => (at - (reach[index] as number)) * way);
    expect(off[0]).toBeCloseTo(off[1] as number, 2);
    expect(off.every((each) => each > 0.3 && each < 1.5)).toBe(true);
    const past = to.map(([, at]) => (at - y) * way);
    expect(past.every((each) => each > 0.5 && each < 1.5)).toBe(true);
  });

  it("too short for their heads have them outside, the line and the figure beyond", () => {
    const short = drawn(levelDimension(50, 53, 20, { words: "3 cm" }));
    const [line] = short.all("line").map(lineOf);
    expect(line?.from[0]).toBeLessThan(49);
    expect(line?.to[0]).toBeGreaterThan(54);
    const label = short.all("text")[0];
    expect(number(label, "x")).toBeGreaterThan(53);
    expect(label?.attributes["text-anchor"] ?? "start").toBe("start");
    const long = drawn(levelDimension(50, 56, 20, { words: "3 cm" }));
    expect(lineOf(long.all("line")[0] as never)).toEqual({ from: [50, 20], to: [56, 20] });
    expect(number(long.all("text")[0], "x")).toBe(53);
  });
});

describe("lettering", () => {
  it("is cut off with a mark where it does not fit, and never to nothing", () => {
    const cut = fitted("a long name of a thing", 20, SMALL);
    expect(cut.endsWith("…")).toBe(true);
    expect(measure(cut, SMALL)).toBeLessThanOrEqual(20);
    // As much as fits: one sign more would not.
    expect(measure(`a long name of a thing`.slice(0, cut.length), SMALL)).toBeGreaterThan(20 - 2 * SMALL);
    expect(fitted("abc", 0.1, SMALL)).toBe("a…");
    expect(fitted("abc", 40, SMALL)).toBe("abc");
  });

  it("is never measured shorter than Helvetica sets it", () => {
    const said = ["H1 at 10 ft 6 in", "Weight, all that the structure bears: 1,234 lb", "WALL-1 MMM"];
    const short = said.flatMap((text) =>
      [false, true].filter((bold) => measure(text, SMALL, bold) < setWidth(text, SMALL, bold)),
    );
    expect(short).toEqual([]);
  });

  it("is broken between words, and not between a number and its unit", () => {
    const lines = wrapped("The bar is 10 ft long and carries 36 lb on two hangs", 40, SMALL);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join(" ")).toBe("The bar is 10 ft long and carries 36 lb on two hangs");
    expect(lines.filter((line) => /\d$/u.test(line))).toEqual([]);
    expect(lines.every((line) => measure(line, SMALL) <= 40)).toBe(true);
    // As few lines as there can be: the first word of the next one would not fit.
    const next = lines.slice(1).map((line, index) => `${lines[index]} ${line.split(" ")[0]}`);
    expect(next.filter((line) => measure(line, SMALL) <= 36)).toEqual([]);
  });
});

describe("tables below a drawing", () => {
  const rowOf = (...texts: readonly string[]) => texts.map((text) => ({ words: text }));
  const at = (drawing: Read, said: string) => {
    const label = drawing.all("text").find((each) => words(each) === said);
    return [number(label, "x"), number(label, "y")] as const;
  };

  it("have columns beside one another, rows below one another, and a rule under the heads", () => {
    const table = drawnTable(["One", "Two"], [rowOf("first", "second"), rowOf("third", "fourth")], [2, 10], 100);
    const drawing = drawn(...table.shapes);
    const [x1, y1] = at(drawing, "first");
    const [x2, y2] = at(drawing, "second");
    expect([x1, at(drawing, "One")[0], at(drawing, "third")[0]]).toEqual([2, 2, 2]);
    expect([y2, at(drawing, "Two")[0]]).toEqual([y1, x2]);
    expect(x2).toBeGreaterThan(2 + setWidth("first", SMALL, false));
    const [head, , row] = [at(drawing, "One")[1], y1, at(drawing, "third")[1]];
    expect(row - y1).toBeCloseTo(y1 - head, 2);
    const [rule] = drawing.all("line").map(lineOf);
    expect([rule?.from[0], rule?.from[1]]).toEqual([2, rule?.to[1]]);
    // Between the heads and the first row, clear of both.
    expect((rule?.from[1] as number) - head).toBeGreaterThan(0.3);
    expect(y1 - 0.718 * SMALL - (rule?.from[1] as number)).toBeGreaterThan(0.3);
    expect(table.width).toBeCloseTo((rule?.to[0] as number) - 2, 1);
    expect(10 + table.height).toBeGreaterThan(row);
    expect(10 + table.height).toBeLessThan(row + 5);
  });

  it("give way at their widest column until they fit, and say so", () => {
    const long = "a description that goes on and on and on and on";
    const table = drawnTable(["A", "B"], [rowOf("short", long)], [2, 10], 60);
    expect(table.width).toBeLessThanOrEqual(60.01);
    expect(table.width).toBeGreaterThan(59);
    const said = drawn(...table.shapes)
      .all("text")
      .map(words);
    expect(said).toContain("short");
    expect(said.some((each) => each.startsWith("a description") && each.endsWith("…"))).toBe(true);
  });

  it("have what does not hold on lines of its own below its row", () => {
    const below = { words: "rigging.point-load fails", data: { dataFailure: "p" }, below: true };
    const table = drawnTable(["A"], [[{ words: "one" }, below], rowOf("two")], [2, 10], 100);
    const drawing = drawn(...table.shapes);
    const mark = at(drawing, "Does not hold: rigging.point-load fails");
    expect(mark[1]).toBeGreaterThan(at(drawing, "one")[1] + 3);
    expect(at(drawing, "two")[1]).toBeGreaterThan(mark[1] + 3);
    expect(mark[0]).toBeGreaterThan(2);
    expect(drawing.having("data-failure")).toHaveLength(1);
  });
});

it("a stamp stands under the drawing, a warning in heavy type above it, and the sheet reaches below both", () => {
  const plain = onSheet([]);
  const said = "Plumbmark 1 of a build ".repeat(8).trim();
  const warning = "NOT READY. Do not lift. Do not energise. ".repeat(4).trim();
  const sheet = stamped(plain, said, warning);
  const drawing = read(svgFile(sheet));
  const labels = drawing.all("text").map((each) => ({
    y: number(each, "y"),
    said: words(each),
    heavy: each.attributes["font-weight"] === "bold",
  }));
  expect(
    labels
      .filter(({ heavy }) => heavy)
      .map((each) => each.said)
      .join(" "),
  ).toBe(warning);
  expect(
    labels
      .filter(({ heavy }) => !heavy)
      .map((each) => each.said)
      .join(" "),
  ).toBe(said);
  expect(labels.filter(({ heavy }) => heavy).length).toBeGreaterThan(1);
  expect(labels.filter(({ heavy }) => !heavy).length).toBeGreaterThan(1);
  const steps = labels.slice(1).map(({ y }, index) => y - (labels[index]?.y as number));
  expect(new Set(steps.map((each) => each.toFixed(2))).size).toBe(1);
  expect(steps[0]).toBeGreaterThan(3.5);
  const [rule] = drawing.all("line").map(lineOf);
  expect((rule?.from[1] as number) > 50 && (rule?.from[1] as number) < (labels[0]?.y as number) - 2.3).toBe(true);
  const under = sheet.height - (labels.at(-1)?.y as number);
  expect(under > 2 && under < 6).toBe(true);
  expect(drawing.having("data-notice").map(([own]) => own)).toEqual([warning]);
  expect(drawing.having("data-stamp").map(([own]) => own)).toEqual([said]);
  expect(sheet.description.startsWith(warning)).toBe(true);
});

it("what fits a page of Letter at full size leaves room for its stamp", () => {
  // Letter is 279.4 mm high (ANSI/ASME Y14.1); two margins and what stands around a drawing are left off.
  const fits = Array.from({ length: 300 }, (_, height) => height).filter((height) =>
    fitsPage({ ...onSheet([]), height }),
  );
  const most = Math.max(...fits);
  expect(fits).toHaveLength(most + 1);
  expect(most).toBeGreaterThan(200);
  const warning = "NOT READY: do not lift, do not energise. ";
  const long = stamped({ ...onSheet([]), height: most }, "Plumbmark", warning.repeat(2));
  expect(long.height).toBeLessThan(279.4 - 2 * 12.7);
});

it("things of one kind are told apart by colour, hatch and line, sixty of them before three come together again", () => {
  const looks = Array.from({ length: 60 }, (_, index) => series(index)).map(
    ({ colour, hatch: kind, dash }) => `${colour} ${kind} ${dash}`,
  );
  expect(new Set(looks).size).toBe(60);
  expect(series(7).className).toBe("series-1");
});

describe("hatching", () => {
  const strokes = (d: string) =>
    [...d.matchAll(/M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)/gu)].map((each) => each.slice(1).map(Number)) as [
      number,
      number,
      number,
      number,
    ][];

  it.each(["rising", "falling", "level", "upright", "crossed"] as const)(
    "%s lies within its box, and fills it",
    (kind) => {
      const box = { x: 10, y: 20, width: 30, height: 12 };
      const own = strokes(hatch(box, kind, 2));
      const isOut = (x: number, y: number): boolean => x < 9.99 || x > 40.01 || y < 19.99 || y > 32.01;
      expect(own.filter(([x1, y1, x2, y2]) => isOut(x1, y1) || isOut(x2, y2))).toEqual([]);
      const xs = own.flatMap(([x1, , x2]) => [x1, x2]);
      const ys = own.flatMap(([, y1, , y2]) => [y1, y2]);
      expect(Math.min(...xs) - 10 < 2.1 && 40 - Math.max(...xs) < 2.1).toBe(true);
      expect(Math.min(...ys) - 20 < 2.1 && 32 - Math.max(...ys) < 2.1).toBe(true);
      // Along the diagonal of a box of 30 by 12, every 2 mm across it.
      const least = { rising: 20, falling: 20, level: 5, upright: 14, crossed: 28 }[kind];
      const most = { rising: 21, falling: 21, level: 6, upright: 15, crossed: 31 }[kind];
      expect(own.length >= least && own.length <= most, String(own.length)).toBe(true);
    },
  );

  it("lies on one grid of the paper, so that neighbours join", () => {
    const [left, right] = [0, 30].map((x) => strokes(hatch({ x, y: 0, width: 30, height: 10 }, "level", 2.2)));
    expect(left?.map(([, y]) => y)).toEqual(right?.map(([, y]) => y));
  });
});
