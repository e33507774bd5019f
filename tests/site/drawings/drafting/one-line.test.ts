import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { number, words } from "../read.js";
import { documents, under } from "../to-size/by-hand.js";
import { boxOf, classed, FINE, lineOf, type Place, placesOf, type Sheet, sheet } from "../to-size/paper.js";
import { boxOfLabel } from "./letters.js";

// A one-line diagram is read along its conductor: it has to be whole from the source to the first panel, broken only at
// the contact of the breaker, which stands open (IEC 60617: a circuit breaker is a contact with a cross at its fixed end).

const circuits = documents.flatMap(({ file, power }) =>
  Object.keys(under(power, "circuits")).map((circuit) => ({ file, circuit })),
);

it("twenty-one circuits are drawn", () => expect(circuits).toHaveLength(21));

type Stretch = readonly [from: number, to: number];

/** Level stretches of a path that begins with `M x y h length`. */
const levelOf = (path: Element, y: number): readonly Stretch[] => {
  const [, x, at, length] = /^M(-?[\d.]+) (-?[\d.]+)h([\d.]+)/u.exec(path.attributes.d ?? "") ?? [];
  return x !== undefined && Math.abs(Number(at) - y) < FINE ? [[Number(x), Number(x) + Number(length)]] : [];
};

/** The blade of the breaker: from the end of its conductor, by how much across and up. */
const bladeOf = (drawing: Sheet): readonly [from: Place, to: Place] => {
  const found = drawing.all("path").flatMap(({ attributes }): (readonly [Place, Place])[] => {
    const parts = /^M([\d.]+) ([\d.]+)h([\d.]+)l([\d.]+) (-[\d.]+)$/u.exec(attributes.d ?? "");
    if (!parts) return [];
    const [x, y, along, right, up] = parts.slice(1).map(Number) as [number, number, number, number, number];
    return [
      [
        [x + along, y],
        [x + along + right, y + up],
      ],
    ];
  });
  expect(found).toHaveLength(1);
  return found[0] as readonly [Place, Place];
};

describe.each(circuits)("$file $circuit", ({ file, circuit }) => {
  const drawing = sheet(file, `one-line-${circuit}`);
  const [source] = drawing.all("circle");
  const [x, y] = [number(source, "cx"), number(source, "cy")];
  const lines = drawing.all("line").map(lineOf);
  const outlet = drawing.all("path").flatMap(({ attributes }) => {
    const parts = /^M([\d.]+) ([\d.]+)a([\d.]+) ([\d.]+) 0 0 1 0 ([\d.]+)z$/u.exec(attributes.d ?? "");
    return parts ? [parts.slice(1).map(Number) as [number, number, number, number, number]] : [];
  });
  const [[plug, plugTop, radius, , plugHeight] = [0, 0, 0, 0, 0]] = outlet;

  it("has one conductor from the source to the outlet, open at the breaker alone", () => {
    const stretches = [
      ...lines
        .filter(({ from, to }) => [from, to].every(([, at]) => Math.abs(at - y) < FINE))
        .map(({ from, to }): Stretch => [from[0], to[0]]),
      ...drawing.all("path").flatMap((path) => levelOf(path, y)),
    ]
      .filter(([, to]) => to <= plug + FINE)
      .toSorted(([one], [other]) => one - other);
    const gaps = stretches.slice(1).flatMap(([from], index): readonly Stretch[] => {
      const before = (stretches[index] as Stretch)[1];
      return Math.abs(from - before) <= FINE ? [] : [[before, from]];
    });
    expect((stretches[0] as Stretch)[0]).toBeCloseTo(x + number(source, "r"), 2);
    expect((stretches.at(-1) as Stretch)[1]).toBeCloseTo(plug, 2);
    expect(gaps).toHaveLength(1);
    const [[hinge, contact] = [0, 0]] = gaps;
    const [from, to] = bladeOf(drawing);
    expect(from[0]).toBeCloseTo(hinge, 2);
    // The open blade reaches over the contact, and stands clear of it.
    expect(to[0] - contact).toBeGreaterThan(0);
    expect(to[0] - contact).toBeLessThan(2);
    expect(y - to[1]).toBeGreaterThan(2);
    const cross = drawing.all("path").flatMap(({ attributes }) => {
      const parts = /^M([\d.]+) ([\d.]+)l([\d.]+) ([\d.]+)m0 -([\d.]+)l-([\d.]+) ([\d.]+)$/u.exec(attributes.d ?? "");
      return parts ? [parts.slice(1).map(Number) as number[]] : [];
    });
    expect(cross).toHaveLength(1);
    const [left = 0, top = 0, ...strokes] = cross[0] as number[];
    expect(new Set(strokes).size).toBe(1);
    const half = (strokes[0] as number) / 2;
    expect([left + half - contact, top + half - y].map((off) => Math.abs(off) < FINE)).toEqual([true, true]);
  });

  it("has the wave of an alternating source in its circle", () => {
    const waves = drawing.all("path").flatMap(({ attributes }) => {
      const parts = /^M([\d.]+) ([\d.]+)c[^s]* ([\d.]+) 0s[^s]* ([\d.]+) 0$/u.exec(attributes.d ?? "");
      return parts ? [parts.slice(1).map(Number) as [number, number, number, number]] : [];
    });
    expect(waves).toHaveLength(1);
    const [[from, at, one, other] = [0, 0, 0, 0]] = waves;
    expect([from + (one + other) / 2, at, one]).toEqual([x, y, other]);
    expect(one + other).toBeLessThan(2 * number(source, "r"));
  });

  it("has a half-round outlet, and every run begins at its round side and ends at its first panel", () => {
    expect(outlet).toHaveLength(1);
    expect([plugTop + plugHeight / 2, plugHeight / 2].map((each) => each.toFixed(2))).toEqual(
      [y, radius].map((each) => each.toFixed(2)),
    );
    const boxes = drawing
      .all("rect")
      .filter(({ attributes }) => attributes.class !== "paper")
      .map(boxOf);
    const runs = drawing.having("data-run").length;
    const ways = drawing
      .all("path")
      .map(placesOf)
      .filter(([first]) => first && Math.abs(first[0] - plug - radius) < FINE && Math.abs(first[1] - y) < FINE);
    expect(ways).toHaveLength(runs);
    const loose = ways.filter((way) => {
      const [tx, ty] = way.at(-1) as Place;
      const level = Math.abs((way.at(-2) as Place)[1] - ty) < FINE;
      return (
        !level ||
        (boxes.length > 0 &&
          !boxes.some((box) => Math.abs(box.x - tx) < FINE && Math.abs(box.y + box.height / 2 - ty) < FINE))
      );
    });
    expect(loose).toEqual([]);
    const heads = drawing.all("polygon").map((head) => placesOf(head)[0] as Place);
    expect(heads.map((tip) => tip.join())).toEqual(ways.map((way) => (way.at(-1) as Place).join()));
  });

  it("has the name of every panel in the middle of its box, and its voltage under it", () => {
    const boxes = drawing
      .all("rect")
      .filter(({ attributes }) => attributes.class !== "paper")
      .map(boxOf);
    const labels = drawing.all("text");
    const wrong = boxes.filter((box) => {
      const centre = box.x + box.width / 2;
      const over = labels.filter((each) => number(each, "x") === Math.round(centre * 100) / 100);
      const own = over.map(boxOfLabel).filter(({ y: top, height }) => top > box.y && top + height < box.y + box.height);
      const below = over.filter((each) => {
        const away = boxOfLabel(each).y - box.y - box.height;
        return away > 0.5 && away < 4 && /^\S+ V|^\?/u.test(words(each));
      });
      const [name] = own;
      return (
        !name ||
        own.length !== 1 ||
        below.length !== 1 ||
        Math.abs(name.y + name.height / 2 - box.y - box.height / 2) > 0.05
      );
    });
    expect(wrong).toEqual([]);
    // A run whose panels are written has two at least.
    expect(boxes.length).toBe(drawing.having("data-voltage").length);
  });

  it("has the figures of a conductor in the middle of it: the cable above, the current below", () => {
    const off = drawing.all("text").flatMap((label) => {
      if (label.attributes["text-anchor"] !== "middle") return [];
      const { x: left, width, y: top, height } = boxOfLabel(label);
      const centre = left + width / 2;
      const near = lines.filter(
        ({ from, to }) => Math.abs(from[1] - to[1]) < FINE && from[0] < centre && to[0] > centre,
      );
      const beside = near.filter(
        ({ from }) => (top > from[1] && top < from[1] + 3) || (top + height < from[1] && top + height > from[1] - 2),
      );
      return beside.length === 0 || beside.some(({ from, to }) => Math.abs((from[0] + to[0]) / 2 - centre) < FINE)
        ? []
        : [words(label)];
    });
    expect(off).toEqual([]);
    const below = drawing.having("data-into").map(([, label]) => boxOfLabel(label).y - number(label, "y"));
    expect(below.every((each) => each < 0)).toBe(true);
  });
});

it("a panel's figures say no panel where none is written", () => {
  const drawing = sheet("builds/bare.md", "one-line-c");
  expect(drawing.all("rect").filter(({ attributes }) => attributes.class !== "paper")).toEqual([]);
  expect(drawing.all("text").map(words).join(" ")).toContain("panels not written down");
  expect(classed(drawing, "paper")).toHaveLength(1);
});
