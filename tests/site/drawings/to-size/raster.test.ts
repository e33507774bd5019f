import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { number } from "../read.js";
import { documents, type Face } from "./by-hand.js";
import { boxOf, FINE, having, inside, only, sheet } from "./paper.js";

// Every face on the raster: as many pixels as its panels have, at the corner the document writes. The drawing has one
// scale for both ways, told by the raster itself.

const rasters = documents.map(({ file, faces, picture }) => {
  const { raster, at } = picture as { raster: string; at: Readonly<Record<string, string>> };
  const [wide, high] = raster.split(" x ").map(Number) as [number, number];
  const places = faces.map((face: Face) => ({ face, corner: (at[face.name] ?? "").split(",").map(Number) }));
  return { file, wide, high, places };
});

it("six rasters hold eight faces", () => {
  expect(rasters.flatMap(({ places }) => places)).toHaveLength(8);
  expect(rasters).toHaveLength(6);
});

describe.each(rasters)("raster of $file", ({ file, wide, high, places }) => {
  const drawing = sheet(file, "raster");
  const whole = boxOf(having(drawing, "data-raster", `${wide}x${high}`));
  const per = whole.width / wide;

  it("is as wide and as high as its pixels", () => {
    expect(Math.abs(whole.height - high * per)).toBeLessThanOrEqual(FINE);
    expect(whole.width).toBeGreaterThan(80);
  });

  it("holds every face at its corner, with the pixels of its panels", () => {
    const off = places.flatMap(({ face, corner: [left, top] }) => {
      const group = having(drawing, "data-face", face.name);
      const box = boxOf(only(inside(group, "rect")) as Element);
      const pixels = [left, top, face.columns * face.tile.pixels[0], face.rows * face.tile.pixels[1]] as number[];
      const [x, y, w, h] = pixels as [number, number, number, number];
      const said = ["data-x", "data-y", "data-width", "data-height"].map((each) => number(group, each));
      const drawn = [box.x - whole.x - x * per, box.y - whole.y - y * per, box.width - w * per, box.height - h * per];
      return drawn.every((each) => Math.abs(each) <= 2 * FINE) && said.join() === pixels.join()
        ? []
        : [`${face.name}: ${said} for ${pixels}, off by ${drawn}`];
    });
    expect(off).toEqual([]);
    expect(drawing.having("data-face").map(([name]) => name)).toEqual(places.map(({ face }) => face.name));
  });

  it("is measured from edge to edge", () => {
    const lines = drawing.all("line").filter(({ attributes }) => attributes.class === "dimension-line");
    const lengths = lines.map((each) =>
      Math.hypot(number(each, "x2") - number(each, "x1"), number(each, "y2") - number(each, "y1")),
    );
    expect(lengths.map((each) => each.toFixed(1))).toEqual([whole.width, whole.height].map((each) => each.toFixed(1)));
  });
});
