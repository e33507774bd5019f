import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { documents, type Face, panelsOf } from "./by-hand.js";
import { type Box, boxOf, classed, FINE, having, inside, only, type Place, placesOf, sheet } from "./paper.js";

// A face on the paper: every cell in its row and column, one panel wide, and every cable through the cells it is
// written through. From the audience column 1 is at the left, from behind at the right.

interface Strand {
  readonly name: string;
  readonly panels: readonly string[];
}

/** Runs or chains that begin on a face, with their panels in cable order. */
const strands = (all: unknown, face: string): readonly Strand[] =>
  Object.entries((all ?? {}) as Readonly<Record<string, { panels: string }>>).flatMap(([name, { panels }]) =>
    panels.startsWith(`${face} `) ? [{ name, panels: panelsOf(panels) }] : [],
  );

interface View {
  readonly title: string;
  readonly file: string;
  readonly face: Face;
  readonly layer: string;
  readonly rear: boolean;
  readonly mark: string;
  readonly strands: readonly Strand[];
}

const views = documents.flatMap((document): readonly View[] =>
  document.faces.flatMap((face) =>
    [
      { layer: "power", mark: "data-run", strands: strands((document.power as { runs: unknown }).runs, face.name) },
      { layer: "data", mark: "data-chain", strands: strands((document.data as { chains: unknown }).chains, face.name) },
    ].flatMap((layer) =>
      [false, true].map((rear) => ({
        ...layer,
        title: `${document.file} face-${face.name}-${layer.layer}-${rear ? "rear" : "audience"}`,
        file: document.file,
        face,
        rear,
      })),
    ),
  ),
);

it("thirty-two views of eight faces, each with a run and a chain", () => {
  // Banner, left, right, screen, low, high, wall, header.
  expect(views).toHaveLength(32);
  expect(views.filter((view) => view.strands.length === 0)).toEqual([]);
});

describe.each(views)("$title", ({ file, face, layer, rear, mark, strands: own }) => {
  const drawing = sheet(file, `face-${face.name}-${layer}-${rear ? "rear" : "audience"}`);
  const outline: Box = boxOf(only(classed(drawing, "outline")));
  const [wide, high] = [face.tile.width * drawing.perMetre, face.tile.height * drawing.perMetre];
  /** Where a cell belongs: row A is the first one down, column 1 the first from the audience's left. */
  const place = (cell: string): Box => {
    const [, row = "", column = ""] = /^([A-Z])(\d+)$/u.exec(cell) ?? [];
    const across = rear ? face.columns - Number(column) : Number(column) - 1;
    return { x: outline.x + across * wide, y: outline.y + (row.charCodeAt(0) - 65) * high, width: wide, height: high };
  };
  const off = (one: Box, other: Box): boolean =>
    (["x", "y", "width", "height"] as const).some((key) => Math.abs(one[key] - other[key]) > FINE);

  it("has an outline as large as the face", () => {
    expect(outline.width).toBeCloseTo(face.width * drawing.perMetre, 1);
    expect(outline.height).toBeCloseTo(face.height * drawing.perMetre, 1);
  });

  it("has every cell in its row and column, as large as a panel", () => {
    const cells = drawing
      .having("data-cell")
      .map(([cell, group]) => [cell, boxOf(inside(group, "rect")[0] as Element)]);
    expect(cells).toHaveLength(face.columns * face.rows);
    expect(cells.filter(([cell, box]) => off(box as Box, place(cell as string)))).toEqual([]);
  });

  it("has every cable go from panel to panel in the order written", () => {
    const ways = own.map(({ name }) => placesOf(inside(having(drawing, mark, name), "path")[0] as Element));
    expect(ways.map((places) => places.length)).toEqual(own.map(({ panels }) => panels.length));
    const astray = own.flatMap(({ name, panels }, strand) =>
      panels
        .filter((cell, index) => {
          const [x, y] = (ways[strand] as readonly Place[])[index] as Place;
          const box = place(cell);
          // In line with the middle across; somewhat lower where the name of the panel stands above the line.
          return Math.abs(x - (box.x + box.width / 2)) > FINE || y < box.y + 0.49 * high || y > box.y + 0.63 * high;
        })
        .map((cell) => `${name} at ${cell}`),
    );
    expect(astray).toEqual([]);
  });

  it("has every cable come in at the edge of the face, in line with its first panel", () => {
    const entries = own.map(({ name, panels }) => {
      const way = placesOf(inside(having(drawing, "data-enters", name), "path")[0] as Element);
      const box = place(panels[0] as string);
      const [x, y] = way.at(-1) as Place;
      return Math.abs(x - (box.x + box.width / 2)) <= FINE && y > box.y && y < box.y + box.height;
    });
    expect(entries).toEqual(own.map(() => true));
  });

  it("has its dimensions begin and end at the outline", () => {
    const ends = classed(drawing, "dimension").map((group) =>
      inside(group, "polygon").map((head) => (placesOf(head)[0] as Place).map((each) => Math.round(each * 20) / 20)),
    );
    const round = (value: number): number => Math.round(value * 20) / 20;
    const [left, right] = [round(outline.x), round(outline.x + outline.width)];
    const [top, bottom] = [round(outline.y), round(outline.y + outline.height)];
    const near = (one: number | undefined, other: number): boolean => Math.abs((one as number) - other) <= 0.051;
    expect(ends).toHaveLength(2);
    expect([near(ends[0]?.[0]?.[0], left), near(ends[0]?.[1]?.[0], right)]).toEqual([true, true]);
    expect([near(ends[1]?.[0]?.[1], top), near(ends[1]?.[1]?.[1], bottom)]).toEqual([true, true]);
  });
});
