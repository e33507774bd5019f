import { cellName } from "@plumbmark/core";
import { describe, expect, it } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { number, type Read, words } from "./read.js";
import { builds, drawn, found } from "./subjects.js";

const ofFace = (file: string, face: string, layer: string, side: string): Read =>
  found(file, `face-${face}-${layer}-${side}`);

const faces = [...builds].flatMap(([file, { build }]) =>
  build.faces
    .filter(({ cells }) => cells.length > 0)
    .map((face) => ({ name: `${file} ${face.name}`, file, face, build })),
);

/** Left edges of the cells on the paper, by name. */
const lefts = (drawing: Read): ReadonlyMap<string, number> =>
  new Map(
    drawing
      .having("data-cell")
      .map(([cell, group]) => [cell, number(group.children.find((each) => each.type === "element") as never, "x")]),
  );

describe.each(notEmpty(faces))("face $name", ({ file, face, build }) => {
  it("has as many cells drawn as it has panels, and the rest crossed out", () => {
    for (const layer of ["power", "data"])
      for (const side of ["audience", "rear"]) {
        const drawing = ofFace(file, face.name, layer, side);
        expect(
          drawing
            .having("data-cell")
            .map(([cell]) => cell)
            .sort(),
        ).toEqual(face.cells.map(cellName).sort());
        expect(drawing.having("data-left-out")).toHaveLength(face.rows * face.columns - face.cells.length);
      }
  });

  it("is mirrored from the rear: what is left is right, at the same distance from the middle", () => {
    const [front, rear] = [
      lefts(ofFace(file, face.name, "power", "audience")),
      lefts(ofFace(file, face.name, "power", "rear")),
    ];
    const [one] = ofFace(file, face.name, "power", "audience").having("data-cell");
    const width = number(one?.[1].children[0] as never, "width");
    const middle = (each: ReadonlyMap<string, number>): number =>
      (Math.min(...each.values()) + Math.max(...each.values()) + width) / 2;
    for (const [cell, x] of notEmpty(front)) {
      // Hundredths of a millimetre are written down; three of them add up here.
      expect(x + width / 2 - middle(front)).toBeCloseTo(-((rear.get(cell) as number) + width / 2 - middle(rear)), 1);
    }
    const column = (cell: string): number => Number(/\d+/u.exec(cell)?.[0]);
    const order = (each: ReadonlyMap<string, number>): readonly number[] =>
      [...each]
        .filter(([cell]) => /^[A-Z]+/u.exec(cell)?.[0] === /^[A-Z]+/u.exec([...each.keys()].at(-1) as string)?.[0])
        .sort((a, b) => a[1] - b[1])
        .map(([cell]) => column(cell));
    expect(order(rear)).toEqual([...order(front)].reverse());
  });

  it("shows every run and chain with its panels in cable order", () => {
    for (const [layer, mark, strands] of [
      ["power", "data-run", build.runs],
      ["data", "data-chain", build.chains],
    ] as const) {
      const own = strands.filter(({ panels }) => panels?.some((panel) => panel.face === face));
      for (const side of ["audience", "rear"]) {
        const drawing = ofFace(file, face.name, layer, side);
        expect(drawing.having(mark).map(([name, group]) => [name, number(group, "data-panels")])).toEqual(
          own.map(({ name, panels }) => [name, panels?.length]),
        );
        const numbered = drawing.having("data-order");
        // In cells of less than 4.6 mm there is no room for a number of 2.5 mm (ISO 3098: lettering and its clearance).
        const [[, cell] = []] = drawing.having("data-cell");
        const room = number(cell?.children[0] as never, "height") >= 4.6 ? own : [];
        const expected = room.flatMap(({ name, panels = [] }) =>
          panels.map((panel, index) => [name, String(index + 1), cellName(panel.cell)]),
        );
        expect(
          numbered.map(([, text]) => [text.attributes["data-strand"], words(text), text.attributes["data-on"]]),
        ).toEqual(expected);
      }
    }
  });

  it("says where every cable goes in and where every loop comes out", () => {
    const data = ofFace(file, face.name, "data", "audience");
    const chains = build.chains.filter(({ panels }) => panels?.[0]?.face === face);
    expect(
      data
        .having("data-enters")
        .map(([name]) => name)
        .sort(),
    ).toEqual(chains.map(({ name }) => name).sort());
    expect(
      data
        .having("data-leaves")
        .map(([name]) => name)
        .sort(),
    ).toEqual(
      chains
        .filter(({ backUpPort }) => backUpPort !== undefined)
        .map(({ name }) => name)
        .sort(),
    );
  });
});

describe("the sockets of a panel, seen from behind", () => {
  // As the catalogue writes them: a tile of 500 mm, sockets from its top left corner as seen from the rear.
  const AT = {
    "power-in": [200, 300],
    "power-out": [300, 300],
    "data-in": [200, 200],
    "data-out": [300, 200],
  } as const;
  const rear = ofFace("builds/over-stage-banner.md", "banner", "power", "rear");

  it.each(Object.entries(AT))("%s is drawn where the part has it", (socket, [x, y]) => {
    const [[, box] = []] = rear.having("data-panel-key");
    const mark = rear.having("data-socket").find(([name]) => name === socket)?.[1];
    const sign = mark?.children[0] as never;
    const round = socket.startsWith("data");
    const across = round ? number(sign, "cx") : number(sign, "x") + number(sign, "width") / 2;
    const down = round ? number(sign, "cy") : number(sign, "y") + number(sign, "height") / 2;
    const [left, top, wide] = ["x", "y", "width"].map((name) => number(box as never, name)) as [number, number, number];
    // Hundredths of a millimetre are written down.
    expect((across - left) / wide).toBeCloseTo(x / 500, 2);
    expect((down - top) / wide).toBeCloseTo(y / 500, 2);
  });

  it("are four on every rear drawing whose part writes them, and none are on the others", () => {
    for (const { drawing, read: own } of notEmpty(
      drawn.filter((each) => each.file.startsWith("builds/over-stage") && each.drawing.name.startsWith("face-")),
    )) {
      const back = drawing.name.endsWith("-rear");
      expect(own.having("data-socket").map(([name]) => name)).toEqual(back ? Object.keys(AT) : []);
      expect(own.having("data-up").map(([what]) => what)).toEqual(back ? ["face", "tile-500-p3.1"] : ["face"]);
    }
  });
});

describe("labels of cables", () => {
  // By the document: run P1 from stage-4, chain D1 from port 1 with a return to port 2; labels as the schedule has them.
  it.each([
    ["power", ["P1-F", "from stage-4"]],
    ["data", ["D1-F", "from port 1", "D1-R", "to port 2"]],
  ])("stand whole at the ends of the %s drawing", (layer, expected) => {
    for (const side of ["audience", "rear"]) {
      const texts = ofFace("builds/over-stage-banner.md", "banner", layer, side).all("text").map(words);
      for (const each of notEmpty(expected)) expect(texts).toContain(each);
    }
  });
});

describe("panels on no run and on none of the chains", () => {
  it("are framed and named", () => {
    const drawing = ofFace("builds/odd.md", "wide", "power", "audience");
    const texts = drawing.all("text").map(words).join("\n");
    // By the document: A3..A8 and B1..B8 are on P1, C1..C9 on P2; P3 names none; A1, A2, A9, A10 are left out.
    expect(texts).toContain("On no run, framed in dashes: B9, B10, C10.");
    expect(texts).toContain("The run P3: panels in cable order not written down.");
    expect(drawing.all().filter(({ attributes }) => attributes.class === "unfed")).toHaveLength(3);
  });
});
