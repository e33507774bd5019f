import { openRepository } from "@plumbmark/core";
import { drawingsOf } from "@plumbmark/docs-site";
import { describe, expect, it } from "vitest";
import { starter, TODAY } from "../../documents/repository.js";
import { boxOfLabel } from "./drafting/letters.js";
import { drawnOf, treeOf } from "./one-document.js";
import { number, type Read, words } from "./read.js";
import { boxOf, inside, lineOf } from "./to-size/paper.js";

// What drawings say where a document says little, much, or something unusual; by repository.ts.

const named = (build: string, name: string): Read => {
  const found = drawnOf(`builds/${build}.md`).find(({ drawing }) => drawing.name === name);
  if (!found) throw new Error(`${build} has no drawing ${name}`);
  return found.read;
};
const said = (build: string, name: string): string => named(build, name).all("text").map(words).join(" ");

it.each([
  // A run of one panel has no jumper; one of three has two.
  ["far", "face-strip-power-audience", ["P2-F: cord-12-3, 35 ft", "none", "P1-J1 to P1-J2"], ["P2-J1", "not drawn"]],
  // A chain of one panel, and a loop of two: one jumper, and a cable back.
  ["under", "face-sign-data-audience", ["none", "D2-J1: data-jumper", "D2-R: cat6-solid, 40 ft"], ["D1-J1", "D1-R"]],
  ["far", "one-line-c-1", ["2 × nema-5-20", "Also on the circuit", "other load, 300 W"], ["Legs:"]],
  ["odd", "one-line-c-1", ["three phase, between lines", "Legs: A"], ["2 ×", "Also on the circuit"]],
  ["far", "hang-plot-far", ["Leg", "H1 left", "H2 right", "see legs"], ["The bar does not hang still"]],
  ["under", "hang-plot-low", ["H3", "Weight, all that the structure bears"], ["H1 left", "see legs"]],
  ["folded", "raster", ["On the face", "copy of tower", "folded, one to one"], ["No part has"]],
  ["under", "raster", ["100, 60", "579, 219", "480 × 160"], ["On the face", "folded", "No part has"]],
  ["kinds", "face-wall-power-rear", ["strip, from behind", "strip-b, from behind"], ["strip-c, from behind"]],
  ["kinds", "face-wall-power-rear", ["Where the sockets of strip-c are: not written down"], []],
  ["bare", "face-one-power-audience", ["panels in cable order not written down"], ["dashes: A1, A2 and"]],
] as const)("%s, %s", (build, name, says, not) => {
  const all = said(build, name);
  expect(says.filter((each) => !all.includes(each))).toEqual([]);
  expect(not.filter((each) => all.includes(each))).toEqual([]);
});

describe("the second suspension of a bar", () => {
  const text = starter().documents.find(({ path }) => path === "builds/over-stage-banner.md")?.text ?? "";
  const [written = ""] = /^ {6}second: .*$/mu.exec(text) ?? [];
  const told = (is: string, file = text): string => {
    const documents = [{ path: "builds/b.md", text: file.replace(written, () => is) }];
    const { build, system } = openRepository({ ...starter(), documents }, [], { today: TODAY }).model("builds/b.md");
    const drawing = drawingsOf({ build, system }).find(({ name }) => name.startsWith("hang-plot"));
    if (!drawing) throw new Error("there is no hang plot");
    return /Second suspension: [^.]*\./u.exec(treeOf(drawing).all("text").map(words).join(" "))?.[0] ?? "";
  };

  it("is named part by part as it is written, with the hangs it is at", () => {
    expect(written).not.toBe("");
    expect(told("      second: {at: each hang, assembly: [steel-safety-1-8, shackle-3-8], slack: none}")).toBe(
      "Second suspension: steel-safety-1-8, shackle-3-8, at each hang.",
    );
    expect(told("      second: {at: [H1, H4], assembly: [steel-safety-1-4], slack: none}")).toBe(
      "Second suspension: steel-safety-1-4, at H1, H4.",
    );
  });

  it("is not written down where it is not, wholly or in part", () => {
    expect(told("")).toBe("Second suspension: not written down.");
    expect(told("      second: {slack: none}")).toBe(
      "Second suspension: parts not written down, at hangs not written down.",
    );
  });
});

describe("the picture path of eight links, three devices a row", () => {
  const drawing = named("under", "picture-path");
  const boxes = drawing.having("data-device").map(([name, box]) => ({ name, ...boxOf(box) }));
  const centre = (index: number, side: "left" | "right" | "top" | "bottom"): readonly [number, number] => {
    const { x = 0, y = 0, width = 0, height = 0 } = boxes[index] ?? {};
    if (side === "left") return [x, y + height / 2];
    if (side === "right") return [x + width, y + height / 2];
    return [x + width / 2, side === "top" ? y : y + height];
  };
  const ends = drawing
    .all("line")
    .map(lineOf)
    .map(({ from, to }) => [from, to].flat().map((each) => each.toFixed(1)));
  const has = (from: readonly number[], to: readonly number[]): boolean =>
    ends.some((each) => each.join() === [...from, ...to].map((one) => one.toFixed(1)).join());

  it("has them in order, from the left, row under row", () => {
    expect(boxes.map(({ name }) => name)).toEqual([
      ...["playback-computer", "hdmi-to-sdi", "sdi-to-hdmi", "hdmi-to-sdi", "sdi-to-hdmi", "processor-6"],
    ]);
    const rows = [0, 3].map((from) => boxes.slice(from, from + 3));
    for (const row of rows) {
      expect(new Set(row.map(({ y }) => y)).size).toBe(1);
      expect(row[1]?.x).toBeGreaterThan((row[0]?.x ?? 0) + (row[0]?.width ?? 0) + 20);
      expect((row[2]?.x ?? 0) - (row[1]?.x ?? 0)).toBeCloseTo((row[1]?.x ?? 0) - (row[0]?.x ?? 0), 2);
    }
    expect(boxes[3]?.y).toBeGreaterThan((boxes[0]?.y ?? 0) + (boxes[0]?.height ?? 0) + 8);
  });

  it("joins each to the next in a row at its middle, and leads down to the next row", () => {
    for (const index of [0, 1, 3, 4])
      expect(has(centre(index, "right"), centre(index + 1, "left")), `${index}`).toBe(true);
    const [x, low] = centre(2, "bottom");
    const [below, high] = centre(3, "top");
    const turn = (low + high) / 2;
    expect([has([x, low], [x, turn]), has([x, turn], [below, turn]), has([below, turn], [below, high])]).toEqual([
      true,
      true,
      true,
    ]);
    const tips = drawing
      .all("polygon")
      .map((head) => String(head.attributes.points).split(" ")[0]?.split(",").map(Number));
    const expected = [centre(1, "left"), centre(2, "left"), centre(3, "top"), centre(4, "left"), centre(5, "left")];
    expect(tips.map((tip) => tip?.map((each) => each.toFixed(1)))).toEqual(
      expected.map((tip) => tip.map((each) => each.toFixed(1))),
    );
  });

  it("has the cable of a link over its line and its length below, and name and place within the box of a device", () => {
    const labels = drawing.all("text").map((each) => ({ said: words(each), ...boxOfLabel(each) }));
    const [x, y] = centre(1, "right");
    const to = centre(2, "left")[0];
    const between = labels.filter((each) => each.x > x && each.x + each.width < to && Math.abs(each.y - y) < 8);
    expect(between.map((each) => each.said)).toEqual(["sdi-coax", "160 ft"]);
    expect((between[0]?.y ?? 0) + (between[0]?.height ?? 0)).toBeLessThan(y);
    expect(between[1]?.y).toBeGreaterThan(y);
    const inBox = boxes.map((box) =>
      labels
        .filter((each) => each.x > box.x && each.x + each.width < box.x + box.width)
        .filter((each) => each.y > box.y && each.y + each.height < box.y + box.height)
        .map((each) => each.said),
    );
    expect(inBox[0]).toEqual(["playback-computer", "booth"]);
    expect(inBox[3]).toEqual(["hdmi-to-sdi", "place not written down"]);
  });
});

describe("the sockets of a panel as they are seen from behind", () => {
  const drawing = named("kinds", "face-wall-power-rear");
  const keys = drawing.having("data-panel-key").map(([name, box]) => ({ name, box: boxOf(box) }));
  const marks = drawing.having("data-socket").map(([name, group]) => {
    const [shape] = [...inside(group, "rect"), ...inside(group, "circle")];
    const box = shape?.name === "rect" ? boxOf(shape) : undefined;
    const x = box ? box.x + box.width / 2 : number(shape, "cx");
    return {
      name,
      shape: shape?.name,
      fill: shape?.attributes.fill,
      x,
      y: box ? box.y + box.height / 2 : number(shape, "cy"),
    };
  });
  // Millimetres from the upper left corner of the rear, as parts/strips.yaml has them.
  const written: Readonly<Record<string, readonly (readonly [string, number, number])[]>> = {
    strip: [
      ["power-in", 100, 50],
      ["power-out", 400, 50],
      ["data-in", 100, 200],
      ["data-out", 400, 200],
    ],
    "strip-b": [
      ["power-in", 450, 60],
      ["power-out", 440, 70],
      ["data-in", 430, 190],
      ["data-out", 460, 200],
    ],
  };

  it.each(["strip", "strip-b"])("%s has each where it is written", (name) => {
    const key = keys.find((each) => each.name === name)?.box;
    if (!key) throw new Error(`no key of ${name}`);
    expect(key.width / key.height).toBeCloseTo(2, 2);
    const own = marks.filter(({ x, y }) => x > key.x && x < key.x + key.width && y > key.y && y < key.y + key.height);
    const mm = key.width / 500;
    const expected = written[name]?.map(([socket, left, down]) => [
      socket,
      (key.x + left * mm).toFixed(1),
      (key.y + down * mm).toFixed(1),
      socket.startsWith("power") ? "rect" : "circle",
      socket.endsWith("-in") ? "currentColor" : "#fff",
    ]);
    expect(own.map(({ name: socket, x, y, shape, fill }) => [socket, x.toFixed(1), y.toFixed(1), shape, fill])).toEqual(
      expected,
    );
    // Each is named at the side it lies on, with a line from it to its name.
    const sides = (written[name] ?? []).map(([socket, left]) => {
      const label = drawing
        .all("text")
        .filter((each) => words(each) === socket.replace("-", " "))
        .find(
          (each) =>
            Math.abs(number(each, "x") - key.x - key.width / 2) < 30 && Math.abs(number(each, "y") - key.y) < 25,
        );
      const mark = own.find((each) => each.name === socket);
      const isRight = left > 250;
      const x = number(label, "x");
      const line = drawing
        .all("line")
        .map(lineOf)
        .find(
          ({ from, to }) =>
            Math.abs(from[1] - (mark?.y ?? 0)) < 0.02 &&
            Math.abs(to[0] - x) < 1 &&
            Math.abs(from[0] - (mark?.x ?? 0)) < 1.5,
        );
      return [
        isRight ? x > key.x + key.width : x < key.x,
        label?.attributes["text-anchor"] === (isRight ? undefined : "end"),
        label?.attributes["font-weight"] === (socket.startsWith("power") ? "bold" : undefined),
        line !== undefined && (isRight ? line.to[0] > line.from[0] : line.to[0] < line.from[0]),
      ];
    });
    expect(sides).toEqual(Array.from({ length: 4 }, () => [true, true, true, true]));
  });

  it("stand beside one another, each under its name, up at the top", () => {
    expect(keys.map(({ name }) => name)).toEqual(["strip", "strip-b"]);
    const [one, other] = keys.map(({ box }) => box);
    expect(one?.y).toBe(other?.y);
    expect(other?.x).toBeGreaterThan((one?.x ?? 0) + (one?.width ?? 0) + 30);
    const ups = drawing.having("data-up").filter(([name]) => name.startsWith("strip"));
    expect(ups).toHaveLength(2);
    for (const [index, [, group]] of ups.entries()) {
      const key = keys[index]?.box ?? { x: 0, y: 0, width: 0, height: 0 };
      const [line] = inside(group, "line").map(lineOf);
      expect(line?.from.map((each) => each.toFixed(1))).toEqual(
        [key.x + key.width / 2, key.y].map((each) => each.toFixed(1)),
      );
      expect(line?.to[1]).toBeLessThan(key.y);
      const [tip] = String(inside(group, "polygon")[0]?.attributes.points)
        .split(" ")
        .map((each) => each.split(",").map(Number));
      expect(tip?.[0]).toBeCloseTo(key.x + key.width / 2, 1);
      expect(tip?.[1]).toBeLessThan(line?.to[1] ?? 0);
    }
  });
});

describe("a face of sixty columns and forty rows", () => {
  const drawing = named("huge", "face-huge-power-audience");
  const [outline] = drawing.all("rect").filter(({ attributes }) => attributes.class === "outline");
  const box = boxOf(outline as never);
  const labels = drawing.all("text").map((each) => ({ said: words(each), at: number(each, "x"), ...boxOfLabel(each) }));

  it("has the number of a column over the middle of it, from the first on, every so many alike", () => {
    const columns = labels.filter(
      ({ said: own, y, height }) => /^\d+$/u.test(own) && y + height <= box.y && y > box.y - 6,
    );
    const numbers = columns.map(({ said: own }) => Number(own));
    expect(numbers[0]).toBe(1);
    expect(numbers.length).toBeGreaterThan(5);
    expect(new Set(numbers.slice(1).map((each) => each % (numbers[1] as number)))).toEqual(new Set([0]));
    expect(numbers.at(-1)).toBeGreaterThan(60 - (numbers[1] as number));
    const off = columns.filter(
      ({ at }, index) => Math.abs(at - box.x - ((numbers[index] as number) - 0.5) * (box.width / 60)) > 0.02,
    );
    expect(off).toEqual([]);
    expect(columns.every(({ y, height }) => box.y - y - height > 0.5)).toBe(true);
  });

  it("has the letters of a row beside the middle of it, clear of the face", () => {
    const rows = labels.filter(
      ({ said: own, x, width }) => /^A?[A-Z]$/u.test(own) && (x + width < box.x || x > box.x + box.width),
    );
    expect(rows.length).toBeGreaterThan(7);
    // A to Z are the first 26 rows, AA the 27th.
    const place = (own: string): number => (own.length > 1 ? 26 : 0) + own.charCodeAt(own.length - 1) - 65;
    const off = rows.filter(
      ({ said: own, y, height }) => Math.abs(y + height / 2 - box.y - (place(own) + 0.5) * (box.height / 40)) > 0.1,
    );
    expect(off).toEqual([]);
    const clear = rows.map(({ x, width }) => Math.max(box.x - x - width, x - box.x - box.width));
    expect(clear.every((each) => each > 0.5 && each < 4)).toBe(true);
  });

  it("lists so many of its eighty runs and says how many more there are", () => {
    const all = labels.map(({ said: own }) => own);
    const listed = all.filter((own) => /^P\d+[ab]$/u.test(own)).length;
    const more = Number(/And (\d+) more runs: the schedules list them all/u.exec(all.join(" "))?.[1]);
    expect(listed).toBeGreaterThan(8);
    expect(listed + more).toBe(80);
    expect(said("odd", "face-wide-power-audience")).not.toContain("more runs");
  });
});
