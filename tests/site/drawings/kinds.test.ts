import { openRepository } from "@plumbmark/core";
import { drawingsOf, svgFile } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { expect, it } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { starterFiles, TODAY } from "../starter-files.js";
import { number, type Read, read, words } from "./read.js";

const PARTS = {
  path: "parts/strips.yaml",
  text: `strip: {kind: panel, size: 1000 mm x 250 mm, pixels: 336 x 84}
strip-b: {kind: panel, size: 1000 mm x 250 mm, pixels: 336 x 84}
strip-c: {kind: panel, size: 1000 mm x 250 mm, pixels: 336 x 84}
`,
};

const drawn = (face: string): Readonly<Record<"audience" | "rear", Read>> => {
  const text = `---\nbuild: strips\ntitle: Strips\nstatus: draft\nfaces:\n  wall: {panel: strip, support: wall, ${face}}\n---\n\n# Strips\n`;
  const files = { ...starterFiles, parts: [...starterFiles.parts, PARTS], documents: [{ path: "builds/s.md", text }] };
  const subject = openRepository(files, rules, { today: TODAY }).one("builds/s.md");
  const side = (name: string): Read =>
    read(svgFile(drawingsOf(subject).find((each) => each.name === `face-wall-power-${name}`) as never));
  return { audience: side("audience"), rear: side("rear") };
};

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const boxes = (drawing: Read): ReadonlyMap<string, Box> =>
  new Map(
    drawing.having("data-cell").map(([cell, group]) => {
      const rect = group.children.find((each) => each.type === "element") as never;
      const [x = 0, y = 0, width = 0, height = 0] = ["x", "y", "width", "height"].map((name) => number(rect, name));
      return [cell, { x, y, width, height }];
    }),
  );

/** Starts and ends of the strokes of a path that is moved to and drawn from by turns. */
const strokes = (d: string): readonly (readonly [number, number, number, number])[] =>
  [...d.matchAll(/M(-?[\d.]+) (-?[\d.]+)(?:v(-?[\d.]+)|h(-?[\d.]+)|l(-?[\d.]+) (-?[\d.]+))/gu)].map(
    ([, x, y, down = 0, across = 0, dx = across, dy = down]) => [
      +(x ?? 0),
      +(y ?? 0),
      +(x ?? 0) + +dx,
      +(y ?? 0) + +dy,
    ],
  );

/** Which side of its cell a stroke lies at. */
const sideOf = ([x1, y1, x2, y2]: readonly [number, number, number, number], { x, y, width, height }: Box): string => {
  const away = {
    top: (y1 + y2) / 2 - y,
    bottom: y + height - (y1 + y2) / 2,
    left: (x1 + x2) / 2 - x,
    right: x + width - (x1 + x2) / 2,
  };
  return Object.entries(away).sort((one, other) => one[1] - other[1])[0]?.[0] ?? "";
};

// By hand: a hand of a clock that points up points to the right after a quarter turn, and to the left from behind.
it.each([
  [0, undefined, undefined],
  [90, "right", "left"],
  [180, "bottom", "bottom"],
  [270, "left", "right"],
])("panels turned by %i° show their own top edge at the %s, from behind at the %s", (degrees, front, behind) => {
  const both = drawn(`columns: 3, rows: 2, rotated: ${degrees}`);
  for (const [view, side] of [
    [both.audience, front],
    [both.rear, behind],
  ] as const) {
    const found = view.having("data-turned");
    if (side === undefined) {
      expect(found).toEqual([]);
      continue;
    }
    const cells = boxes(view);
    const bars = strokes(String(found[0]?.[1].attributes.d));
    expect(bars).toHaveLength(6);
    for (const bar of bars) {
      const [, box] =
        [...cells].find(
          ([, { x, y, width, height }]) => bar[0] >= x && bar[0] <= x + width && bar[1] >= y && bar[1] <= y + height,
        ) ?? [];
      expect(sideOf(bar, box as Box)).toBe(side);
    }
    // 1000 mm by 250 mm, upright after a quarter turn: the drawing is to scale.
    const { width, height } = cells.get("A1") as Box;
    expect(height / width).toBeCloseTo(degrees % 180 === 0 ? 0.25 : 4, 1);
    const said = words(view.root);
    expect(said).toContain(`turned by ${degrees}°`);
    if (degrees !== 180) expect(said).toContain(view === both.rear ? "anticlockwise" : "clockwise as the audience");
  }
});

it("cells that hold other panels are marked at a corner, once for the first kind and twice for the second", () => {
  const both = drawn('columns: 4, rows: 2, other-panels: {strip-b: "A2..A3", strip-c: "B4"}');
  for (const view of notEmpty(Object.values(both))) {
    const cells = boxes(view);
    const marks = view.having("data-kind").map(([kind, path]) => [kind, strokes(String(path.attributes.d))] as const);
    expect(marks.map(([kind, own]) => [kind, own.length])).toEqual([
      ["strip-b", 2],
      ["strip-c", 2],
    ]);
    const within = (x: number, y: number): readonly string[] =>
      [...cells]
        .filter(([, box]) => x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height)
        .map(([cell]) => cell);
    const middles = (index: number) =>
      marks[index]?.[1].flatMap(([x1, y1, x2, y2]) => within((x1 + x2) / 2, (y1 + y2) / 2));
    expect(middles(0)?.toSorted()).toEqual(["A2", "A3"]);
    expect(middles(1)).toEqual(["B4", "B4"]);
    expect(words(view.root)).toContain("strip-b instead of strip, in A2, A3");
  }
});
