import { readQuantity } from "@plumbmark/calc";
import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { number, type Read, words } from "../read.js";
import { drawn } from "../subjects.js";
import { documents, metres, under } from "./by-hand.js";
import { classed, sheet } from "./paper.js";

// What a drawing says beside its lines, in `data-` attributes: the document's own figures, and what stands in words.

/** Every attribute a drawing may have: one that is new, or has another name, is judged by a test first. */
const NAMES =
  "across at bar breaker cell chain corner current device distance down drawn edge enters face from greatest group hang height into kind last leaves left-out leg length level metres mm moment-level moment-worst on order panel-key panels raster reaction reaction-worst rise row run run-current scale socket strand structure structure-level structure-worst supply up value viewer voltage width worst x y";

it("drawings have these marks, and no others", () => {
  const found = drawn.flatMap(({ read }) => read.all().flatMap(({ attributes }) => Object.keys(attributes)));
  const marks = new Set(found.filter((name) => name.startsWith("data-")).map((name) => name.slice(5)));
  expect([...marks].toSorted()).toEqual(NAMES.split(" ").toSorted());
});

const field = (data: unknown, key: string): unknown => (data as Readonly<Record<string, unknown>>)[key];

describe.each(documents)("$file", ({ file, faces, rigging, power, picture, audience }) => {
  const bars = Object.entries((field(rigging, "bars") ?? {}) as object);
  const circuits = Object.entries(field(power, "circuits") as object);

  it("has every hang at the place written", () => {
    const marks = bars.flatMap(([bar]) =>
      sheet(file, `hang-plot-${bar}`)
        .having("data-at")
        .map(([at, group]) => [group.attributes["data-hang"], Number(at).toFixed(4)]),
    );
    const expected = bars.flatMap(([, bar]) =>
      Object.entries(under(bar, "hangs")).map(([hang, own]) => [hang, metres(field(own, "at")).toFixed(4)]),
    );
    expect(marks).toEqual(expected);
  });

  it("has supply and breaker of every circuit as written", () => {
    const marks = circuits.flatMap(([circuit]) => {
      const drawing = sheet(file, `one-line-${circuit}`);
      return ["data-supply", "data-breaker"].map((name) => drawing.having(name).map(([value]) => Number(value)));
    });
    const written = (value: unknown): readonly number[] => [Number.parseFloat(String(value))];
    const expected = circuits.flatMap(([, own]) => [written(field(own, "supply")), written(field(own, "breaker"))]);
    expect(marks).toEqual(expected);
    expect(marks.length).toBeGreaterThan(2);
  });

  it("has the edge of every face and the distance of every viewer as written", () => {
    const marks = faces.map(({ name }) => {
      const drawing = sheet(file, `sightlines-${name}`);
      return ["data-edge", "data-distance"].map((mark) =>
        drawing.having(mark).map(([value]) => Number(value).toFixed(4)),
      );
    });
    const away = ["nearest", "farthest"].map((key) => metres(field(audience, key)).toFixed(4));
    expect(marks).toEqual(faces.map(({ edge }) => [[edge.toFixed(4)], away]));
  });

  it("has the corner of every face as written", () => {
    const marks = sheet(file, "raster")
      .having("data-corner")
      .map(([value]) => value);
    expect(marks).toEqual(Object.values(under(picture, "at")));
    expect(marks.length).toBeGreaterThan(0);
  });

  it("hatches the cells of every circuit and of every chain as a group of its own", () => {
    const runs = Object.values(under(power, "runs")) as readonly { from: string; panels: string }[];
    const groups = faces.map(
      ({ name }) => new Set(runs.filter(({ panels }) => panels.startsWith(`${name} `)).map(({ from }) => from)).size,
    );
    const found = faces.map(({ name }) => sheet(file, `face-${name}-power-audience`).having("data-group").length);
    expect(found).toEqual(groups);
  });
});

/** The figure that stands in words; `18.2 kg` of `≤ 18.2 kg`. */
const figure = (element: Element, kind: "mass" | "current" | "moment" | "voltage"): number => {
  const told = readQuantity(words(element).replace(/^(?:breaker|≤) /u, ""), [kind]);
  return told.ok ? told.quantity.value : Number.NaN;
};

const near = (one: number, other: number): boolean => Math.abs(one / other - 1) < 0.006;

it.each([
  // Both figures stand at a hang or none does; the table has them all.
  ["data-reaction", "mass", 15],
  ["data-reaction-worst", "mass", 15],
  ["data-current", "current", 21],
  ["data-run-current", "current", 13],
  ["data-voltage", "voltage", 39],
] as const)("%s is what stands there in words", (name, kind, least) => {
  const found = drawn.flatMap(({ read }) => read.having(name));
  // A hang that carries nothing is said to be slack, and a figure that finds no room beside its hang is in the table.
  const told = found.filter(([value]) => Number(value) !== 0);
  expect(
    told.filter(([value, element]) => !near(figure(element, kind), Number(value))).map(([value]) => value),
  ).toEqual([]);
  expect(told.length).toBeGreaterThanOrEqual(least);
});

it("the sockets of a panel are where the catalogue has them", () => {
  // parts/panels.yaml has 200 mm and 300 mm from the top left corner as seen from behind; told from the middle, 250 mm.
  const drawing = sheet("builds/over-stage-banner.md", "face-banner-power-rear");
  const sockets = drawing.having("data-socket").map(([name, group]) => {
    const places = ["data-across", "data-down"].map((mark) => (number(group, mark) * 1000).toFixed(1));
    return [name, ...places];
  });
  expect(sockets).toEqual([
    ["power-in", "-50.0", "50.0"],
    ["power-out", "50.0", "50.0"],
    ["data-in", "-50.0", "-50.0"],
    ["data-out", "50.0", "-50.0"],
  ]);
  // A tile of half a metre on the key: so many millimetres of paper for a metre.
  const [[, key] = []] = drawing.having("data-panel-key");
  expect(number(key, "width") / 0.5).toBeCloseTo(number(key, "data-mm"), 1);
});

it("the hangs of a bar carry together what is on it", () => {
  // Strips: six tiles of 7.9 kg and a hanging bar of 2.4 kg by the catalogue, on a pipe of 1-1/2 in, 2.72 lb/ft
  // (ASME B36.10M, schedule 40) and 5 ft long, with what cables hang on it: less than 5 kg.
  const bare = 6 * 7.9 + 2.4 + 2.72 * 5 * 0.45359237;
  const sums = ["bar-left", "bar-right"].map((bar) =>
    sheet("builds/side-strips.md", `hang-plot-${bar}`)
      .having("data-reaction")
      .reduce((sum, [value]) => sum + Number(value), 0),
  );
  expect(sums.map((sum) => sum > bare && sum < bare + 5)).toEqual([true, true]);
});

it("the greatest shear and moment stand at the diagrams, with their figures", () => {
  const plots = drawn.filter(({ read }) => read.having("data-greatest").length > 0);
  const kinds = plots.map(({ read }) => new Set(read.having("data-greatest").map(([kind]) => kind)));
  // Where another balance than the level bar governs, the moment of that stands at the diagram.
  const named = (drawing: Read): string => (classed(drawing, "worst").length > 0 ? "moment-worst" : "moment");
  expect(kinds.map((each) => [...each].toSorted())).toEqual(plots.map(({ read }) => [named(read), "shear"]));
  expect(plots.length).toBeGreaterThanOrEqual(5);
  const G = 9.80665;
  const wrong = plots.flatMap(({ read }) =>
    read.having("data-greatest").filter(([kind, element]) => {
      const value = Math.abs(number(element, "data-value"));
      return kind === "shear" ? !near(figure(element, "mass"), value) : !near(figure(element, "moment"), value * G);
    }),
  );
  expect(wrong).toEqual([]);
});

it("the legs of a bridle have the rise and the run written", () => {
  // By tests/site/drawings/subjects.ts: 4 ft over 3 ft at the left, 5 ft over 2 ft at the right.
  const legs = sheet("builds/odd.md", "hang-plot-long").having("data-leg");
  const feet = (element: Element, name: string): string => (number(element, name) / 0.3048).toFixed(4);
  expect(legs.map(([leg, group]) => [leg, feet(group, "data-rise"), feet(group, "data-run")])).toEqual([
    ["H1 left", "4.0000", "3.0000"],
    ["H1 right", "5.0000", "2.0000"],
  ]);
});
