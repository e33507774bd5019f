import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { number, words } from "../read.js";
import { documents, metres } from "./by-hand.js";
import { type Box, boxOf, classed, FINE, having, inside, lineOf, only, type Place, sheet } from "./paper.js";

// Sections from the side: heights over the floor and distances from the face, as the documents write them.

const text = (data: unknown, key: string): unknown => (data as Readonly<Record<string, unknown>> | undefined)?.[key];

const sights = documents.flatMap(({ file, faces, audience }) =>
  faces.map((face) => ({
    title: `${file} ${face.name}`,
    file,
    face,
    near: metres(text(audience, "nearest")),
    far: metres(text(audience, "farthest")),
    eye: text(audience, "eye-height"),
  })),
);

it("eight faces are seen from somewhere, one of them by eyes of a height that is written", () => {
  expect(sights).toHaveLength(8);
  expect(sights.filter(({ eye }) => eye !== undefined)).toHaveLength(1);
});

describe.each(sights)("sightlines $title", ({ file, face, near, far, eye }) => {
  const drawing = sheet(file, `sightlines-${face.name}`);
  const box: Box = boxOf(only(classed(drawing, "face")));
  const front = box.x + box.width;
  const floor = box.y + box.height + face.edge * drawing.perMetre;

  it("has the face as high as it is, its lower edge over the floor", () => {
    expect(box.height).toBeCloseTo(face.height * drawing.perMetre, 1);
    const levels = drawing.all("line").map(lineOf);
    const long = levels.filter(({ from, to }) => Math.abs(to[0] - from[0]) > far * drawing.perMetre + 10);
    expect(Math.abs(only(long).from[1] - floor)).toBeLessThanOrEqual(2 * FINE);
  });

  it.each([
    ["nearest", near],
    ["farthest", far],
  ])("has the %s viewer at the distance written", (name, distance) => {
    const mark = having(drawing, "data-viewer", name);
    expect(Math.abs(number(mark, "x") - (front + distance * drawing.perMetre))).toBeLessThanOrEqual(FINE);
    const feet = drawing
      .all("line")
      .map(lineOf)
      .filter(({ from, to }) => Math.abs(from[0] - to[0]) < FINE && Math.abs(from[0] - number(mark, "x")) < FINE);
    expect(feet.length).toBeGreaterThan(0);
  });

  it("has sight lines from the eye to both edges of the face, and none where no eye height is written", () => {
    const lines = classed(drawing, "sight").map(lineOf);
    const eyes = drawing.all("circle").map((each): Place => [number(each, "cx"), number(each, "cy")]);
    if (eye === undefined) return void expect([lines, eyes]).toEqual([[], []]);
    const expected = [near, far].flatMap((distance) =>
      [box.y + box.height, box.y].map((edge) => ({
        from: [front + distance * drawing.perMetre, floor - metres(eye) * drawing.perMetre],
        to: [front, edge],
      })),
    );
    const flat = (all: readonly { from: readonly number[]; to: readonly number[] }[]): readonly number[] =>
      all.flatMap(({ from, to }) => [...from, ...to]);
    const [drawn, wanted] = [flat(lines), flat(expected)];
    expect(drawn).toHaveLength(wanted.length);
    expect(drawn.filter((each, index) => Math.abs(each - (wanted[index] as number)) > 2 * FINE)).toEqual([]);
    expect(eyes).toHaveLength(2);
  });
});

const stands = documents.flatMap(({ file, faces }) =>
  faces.flatMap((face) => {
    const { base } = face;
    return base === undefined
      ? []
      : [
          {
            title: `${file} ${face.name}`,
            file,
            face,
            depth: metres(text(base, "depth")),
            toe: metres(text(base, "toe")),
            arm: metres(text(base, "ballast-arm")),
          },
        ];
  }),
);

it("three faces stand on a base", () => expect(stands).toHaveLength(3));

describe.each(stands)("stand $title", ({ file, face, depth, toe, arm }) => {
  const drawing = sheet(file, `stand-${face.name}`);
  const base: Box = boxOf(only(classed(drawing, "base")));
  const panel: Box = boxOf(only(classed(drawing, "face")));

  it("has a base of its depth, the audience at the left", () => {
    expect(base.width).toBeCloseTo(depth * drawing.perMetre, 1);
    const audience = only(
      drawing.all("text").filter((each) => words(each).includes("audience") && words(each).includes("◂")),
    );
    expect(number(audience, "x")).toBeLessThan(base.x);
  });

  it("has the face on the base, as high as it is, its middle as far from the toe as is written", () => {
    expect(panel.height).toBeCloseTo(face.height * drawing.perMetre, 1);
    expect(Math.abs(panel.y + panel.height - base.y)).toBeLessThanOrEqual(FINE);
    expect(Math.abs(panel.x + panel.width / 2 - (base.x + toe * drawing.perMetre))).toBeLessThanOrEqual(FINE);
    expect(panel.width).toBeCloseTo(Math.max(face.tile.depth * drawing.perMetre, 1), 1);
  });

  it("has the ballast on the base, as far from the toe as is written", () => {
    const blocks = drawing
      .all("rect")
      .map(boxOf)
      .filter((box) => Math.abs(box.y + box.height - base.y) <= FINE && box.height < panel.height)
      .map((box) => box.x + box.width / 2);
    expect(Math.abs(only(blocks) - (base.x + arm * drawing.perMetre))).toBeLessThanOrEqual(FINE);
  });

  it("has the places measured from the toe", () => {
    const from = classed(drawing, "dimension")
      .map((group) => inside(group, "line").filter((each) => each.attributes.class === "dimension-line"))
      .map((lines) => lineOf(only(lines) as Element))
      .filter(({ from: one, to }) => Math.abs(one[1] - to[1]) < FINE);
    expect(from.map(({ from: [x] }) => x.toFixed(1))).toEqual([toe, arm, depth].map(() => base.x.toFixed(1)));
    expect(from.map(({ to: [x] }) => Math.round((x - base.x) * 10))).toEqual(
      [toe, arm, depth].map((each) => Math.round(each * drawing.perMetre * 10)),
    );
  });
});
