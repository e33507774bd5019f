import { describe, expect, it } from "vitest";
import { COMPARED, elevations } from "../drafting/sheets.js";
import { number, words } from "../read.js";
import { type Face, written } from "./by-hand.js";
import { type Box, boxOf, FINE, inside, lineOf, measures, only, placesOf } from "./paper.js";

// Faces beside one another from the audience: as large as their panels, over one floor, all to one scale, with a figure of
// 1.75 m for comparison, as their words say.

const PERSON = 1.75;

const cases = elevations.map((sheet, index) => {
  const { faces } = written((COMPARED[index] as string).replace(/^builds\/|\.md$/gu, ""));
  return { ...sheet, face: faces[0] as Face };
});

/** Millimetres of paper for a metre. */
const scales = cases.map(({ drawing }) => {
  const [wide, outline] = only(drawing.having("data-width"));
  return boxOf(outline).width / Number(wide);
});

it("three faces are seen, all to one usual scale and over one floor", () => {
  expect(cases).toHaveLength(3);
  expect(scales.map((each) => each.toFixed(2))).toEqual(scales.map(() => (scales[0] as number).toFixed(2)));
  // ISO 5455 for a repository whose first build is in metres.
  expect([1, 2, 5, 10, 20, 50, 100, 200, 500]).toContain(Math.round(1000 / (scales[0] as number)));
  expect(new Set(cases.map(({ height }) => height)).size).toBe(1);
});

describe.each(cases)("$name", ({ drawing, face, width, height }) => {
  const perMetre = scales[0] as number;
  const box: Box = boxOf(only(drawing.having("data-width"))[1]);
  const levels = drawing.all("line").map(lineOf);
  const floor = only(levels.filter(({ from, to }) => from[1] === to[1] && to[0] - from[0] > 60 && from[1] > box.y + 5));
  const y = floor.from[1];
  const shapes = drawing.all("rect").filter(({ attributes }) => attributes["fill-opacity"] === "0.35");

  it("has the face as large as its panels, its lower edge over the floor", () => {
    expect(box.width).toBeCloseTo(face.width * perMetre, 1);
    expect(box.height).toBeCloseTo(face.height * perMetre, 1);
    expect(y - box.y - box.height).toBeCloseTo(face.edge * perMetre, 1);
  });

  it("has every panel in its place, where they are not too fine", () => {
    const [wide, high] = [face.tile.width * perMetre, face.tile.height * perMetre];
    const cells = drawing
      .all("rect")
      .filter(({ attributes }) => attributes["stroke-width"] === "0.18")
      .map(boxOf);
    expect(cells).toHaveLength(face.columns * face.rows);
    const wrong = cells.filter((cell, index) => {
      const [column, row] = [index % face.columns, Math.floor(index / face.columns)];
      return (
        Math.abs(cell.x - box.x - column * wide) > 2 * FINE ||
        Math.abs(cell.y - box.y - row * high) > 2 * FINE ||
        Math.abs(cell.width - wide) > FINE ||
        Math.abs(cell.height - high) > FINE
      );
    });
    expect(wrong).toEqual([]);
  });

  it("has the figure on the floor, as tall as is said, on one upright, clear of the face", () => {
    const head = only(drawing.all("circle"));
    const [x, radius] = [number(head, "cx"), number(head, "r")];
    expect((y - number(head, "cy") + radius) / perMetre).toBeCloseTo(PERSON, 1);
    const [trunk, left, right] = shapes.map(boxOf) as [Box, Box, Box];
    expect(shapes).toHaveLength(3);
    for (const leg of [left, right]) {
      expect(leg.y + leg.height).toBeCloseTo(y, 1);
      // The legs begin within the trunk, and the trunk under the head.
      expect(leg.y).toBeLessThan(trunk.y + trunk.height);
      expect(leg.y).toBeGreaterThan(trunk.y);
    }
    const chin = number(head, "cy") + radius;
    expect(trunk.y - chin).toBeGreaterThan(0);
    expect(trunk.y - chin).toBeLessThan(0.06 * PERSON * perMetre);
    expect(trunk.x + trunk.width / 2).toBeCloseTo(x, 1);
    expect((left.x + right.x + right.width) / 2).toBeCloseTo(x, 1);
    expect(left.x + left.width).toBeLessThan(right.x);
    expect(left.x).toBeGreaterThan(trunk.x);
    expect(trunk.x + trunk.width).toBeLessThan(box.x);
    expect(x - trunk.width).toBeGreaterThan(floor.from[0]);
    // Shoulders of a person are a good quarter of the height across (common practice of figure drawing: two heads).
    expect(trunk.width / (PERSON * perMetre)).toBeGreaterThan(0.18);
    expect(trunk.width / (PERSON * perMetre)).toBeLessThan(0.3);
  });

  it("has its lines of text within the face, alike, evenly spaced and in its middle", () => {
    const bands = drawing.having("data-capital").map(([, band]) => boxOf(band));
    const { lines = 0, "cap-height": cap = "0 %" } = (face.text ?? {}) as { lines?: number; "cap-height"?: string };
    expect(bands).toHaveLength(lines);
    // Capitals are a share of the height a line has, in whole pixels.
    const pixel = (face.tile.height / face.tile.pixels[1]) * perMetre;
    const high = (box.height / Math.max(lines, 1)) * (Number.parseFloat(cap) / 100);
    const off = bands.filter(
      (band, index) =>
        Math.abs(band.height - high) > pixel + FINE ||
        Math.abs(band.x - box.x - (box.x + box.width - band.x - band.width)) > 2 * FINE ||
        band.x - box.x < 0.2 ||
        band.width < 0.8 * box.width ||
        Math.abs(band.y + band.height / 2 - box.y - ((index + 0.5) * box.height) / lines) > 2 * FINE,
    );
    expect(off).toEqual([]);
  });

  it("has its dimensions at the face: over it its width, beside it its height, below that its edge", () => {
    const found = measures(drawing);
    const tips = found.map(({ metres: length, tips: [one, other] }) => ({ length, one, other }));
    const [top, bottom, right] = [box.y, box.y + box.height, box.x + box.width];
    const wide = tips.find(({ one, other }) => Math.abs(one[1] - other[1]) < FINE);
    expect([wide?.one[0], wide?.other[0]].map((each) => Number(each).toFixed(1))).toEqual(
      [box.x, right].map((each) => each.toFixed(1)),
    );
    expect(wide?.one[1]).toBeLessThan(top);
    const upright = tips.filter(({ one, other }) => Math.abs(one[0] - other[0]) < FINE);
    const ends = upright.map(({ one, other }) => [one[1], other[1]].map((each) => each.toFixed(1)));
    const expected = [[top, bottom], ...(face.edge > 0 ? [[bottom, y]] : [])];
    expect(ends).toEqual(expected.map((pair) => pair.map((each) => each.toFixed(1))));
    expect(upright.every(({ one }) => one[0] > right && one[0] < width)).toBe(true);
    expect(found.map(({ metres: length }) => length.toFixed(4))).toEqual(
      [face.width, face.height, ...(face.edge > 0 ? [face.edge] : [])].map((each) => each.toFixed(4)),
    );
  });

  it("has the floor hatched below, and says what is drawn under it", () => {
    const hatching = drawing.all("path").flatMap(placesOf);
    expect(hatching.length).toBeGreaterThan(20);
    expect(hatching.every(([, at]) => at >= y - FINE && at < y + 3)).toBe(true);
    expect(hatching.every(([at]) => at >= floor.from[0] - FINE && at <= floor.to[0] + FINE)).toBe(true);
    const labels = drawing.all("text").filter((each) => number(each, "y") > y + 9);
    expect(labels.map(words).join(" ")).toContain("for scale");
    expect(labels.every((each) => number(each, "y") < height)).toBe(true);
  });
});

it("the bar of the scale is as long as its figure", () => {
  const bars = cases.map(({ drawing }) => {
    const [group] = drawing.all("g").filter(({ attributes }) => attributes.class === "scale-bar");
    const [whole, half] = inside(group as never, "rect").map(boxOf) as [Box, Box];
    return [whole.width / (scales[0] as number), half.width / whole.width, number(group, "data-length")];
  });
  expect(bars.map(([long, half, said]) => [long?.toFixed(2), half?.toFixed(2)].concat(said?.toFixed(2)))).toEqual(
    bars.map(([, , said]) => [said?.toFixed(2), "0.50", said?.toFixed(2)]),
  );
  expect(bars).toHaveLength(3);
});
