import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { number, words } from "../read.js";
import { documents, type Face, metres, under } from "./by-hand.js";
import { type Box, boxOf, classed, FINE, having, inside, lineOf, only, type Place, placesOf, sheet } from "./paper.js";

// A rigger measures from the end of the bar with a tape: whatever marks a hang has to stand where the document says.

interface Bar {
  readonly title: string;
  readonly file: string;
  readonly name: string;
  readonly length: number;
  readonly from: number;
  readonly face: Face;
  /** Metres from the left end, by name. */
  readonly hangs: readonly (readonly [name: string, at: number])[];
}

const bars = documents.flatMap((document): readonly Bar[] =>
  Object.entries(((document.rigging as { bars?: object }).bars ?? {}) as object).map(([name, own]) => ({
    title: `${document.file} ${name}`,
    file: document.file,
    name,
    length: metres(own.length),
    from: metres(under(own, "carries").from),
    face: only(document.faces.filter((face) => face.name === under(own, "carries").face)),
    hangs: Object.entries(own.hangs as Readonly<Record<string, { at: string }>>).map(
      ([hang, { at }]) => [hang, metres(at)] as const,
    ),
  })),
);

it("five bars with twenty hangs are written", () =>
  // Banner 4, strips 2 and 2, gala wall 6, harbour header 4.
  expect(bars.map(({ hangs }) => hangs.length)).toEqual([4, 2, 2, 6, 4]));

const upright = (element: Element): boolean => Math.abs(number(element, "x1") - number(element, "x2")) < FINE;

describe.each(bars)("$title", ({ file, name, length, from, face, hangs }) => {
  const drawing = sheet(file, `hang-plot-${name}`);
  const beam: Box = boxOf(having(drawing, "data-bar", name));
  const x = (at: number): number => beam.x + at * drawing.perMetre;
  const marks = hangs.map(([hang, at]) => ({ hang, at, group: having(drawing, "data-hang", hang) }));

  it("is a bar of its length", () => expect(beam.width).toBeCloseTo(length * drawing.perMetre, 1));

  it("has every hang's drop, structure and arrow head at its place", () => {
    const off = marks.flatMap(({ hang, at, group }) => {
      const lines = inside(group, "line");
      const drops = lines.filter(upright).map((line) => number(line, "x1"));
      const levels = lines
        .filter((line) => !upright(line))
        .map((line) => (number(line, "x1") + number(line, "x2")) / 2);
      const heads = inside(group, "polygon").map((head) => (placesOf(head)[0] as Place)[0]);
      return [drops, levels, heads].flatMap((found, kind) =>
        found.length === 1 && Math.abs((found[0] as number) - x(at)) <= FINE
          ? []
          : [`${hang}: ${kind} at ${found}, not ${x(at)}`],
      );
    });
    expect(off).toEqual([]);
  });

  it("has every hang's drop end on the bar", () => {
    const ends = marks.map(({ group }) => {
      const [drop] = inside(group, "line").filter(upright).map(lineOf);
      return Math.max(drop?.from[1] as number, drop?.to[1] as number).toFixed(2);
    });
    expect(ends).toEqual(hangs.map(() => beam.y.toFixed(2)));
  });

  it.each(["left", "right"])("measures every hang from the %s end, with the figure over its mark", (end) => {
    const figures = drawing
      .all("g")
      .filter(({ attributes }) => attributes["data-from"] === end)
      .map((group) => ({ metres: number(group, "data-metres"), at: number(only(inside(group, "text")), "x") }))
      .toSorted((one, other) => one.at - other.at);
    const expected = hangs.map(([, at]) => ({ metres: end === "left" ? at : length - at, at: x(at) }));
    expect(figures.map((each) => each.metres.toFixed(4))).toEqual(expected.map((each) => each.metres.toFixed(4)));
    expect(figures.map((each, index) => Math.abs(each.at - (expected[index]?.at as number)) <= FINE)).toEqual(
      hangs.map(() => true),
    );
    // The line that leads from the figure, and the head on the running dimension.
    const thin = drawing
      .all("line")
      .filter((line) => upright(line) && line.attributes["stroke-width"] === "0.18")
      .map((line) => number(line, "x1"));
    const heads = drawing.all("polygon").map((head) => (placesOf(head)[0] as Place)[0]);
    for (const [hang, at] of hangs) {
      expect(thin.filter((each) => Math.abs(each - x(at)) <= FINE).length, hang).toBeGreaterThanOrEqual(2);
      expect(heads.filter((each) => Math.abs(each - x(at)) <= FINE).length, hang).toBeGreaterThanOrEqual(3);
    }
    expect(hangs.length).toBeGreaterThan(1);
  });

  it("has the face under the bar where it hangs, as large as its panels", () => {
    const boxes = drawing.all("rect").map(boxOf);
    const like = (wide: number, high: number, at: number): readonly Box[] =>
      boxes.filter(
        (box) =>
          Math.abs(box.width - wide * drawing.perMetre) <= FINE &&
          Math.abs(box.height - high * drawing.perMetre) <= FINE &&
          Math.abs(box.x - x(at)) <= FINE,
      );
    // With one panel the outline and the cell are of one size.
    const cells = face.columns * face.rows;
    const outlines = like(face.width, face.height, from);
    expect(outlines).toHaveLength(cells === 1 ? 2 : 1);
    const top = (outlines[0] as Box).y;
    const columns = Array.from({ length: face.columns }, (_, column) =>
      like(face.tile.width, face.tile.height, from + column * face.tile.width).map((box) =>
        Math.round((box.y - top) / (face.tile.height * drawing.perMetre)),
      ),
    );
    const rows = Array.from({ length: face.rows }, (_, row) => row);
    expect(columns.map((column) => column.toSorted())).toEqual(columns.map(() => rows));
  });

  it("has the face hooked below the bar at the middle of every column, and the floor below both", () => {
    const whole = drawing
      .all("rect")
      .map(boxOf)
      .filter(
        ({ width, height }) =>
          Math.abs(width - face.width * drawing.perMetre) <= FINE && height > 0.9 * face.tile.height * drawing.perMetre,
      )
      .toSorted((one, other) => other.height - one.height)[0] as Box;
    const low = beam.y + beam.height;
    expect(whole.y).toBeGreaterThan(low + 1);
    const lines = drawing.all("line").map(lineOf);
    const middles = Array.from({ length: face.columns }, (_, column) => x(from + (column + 0.5) * face.tile.width));
    // The thickness of the bar on paper is no measure: a hook may begin at its axis or at its lower edge.
    const missing = middles.filter(
      (middle) =>
        !lines.some(
          ({ from: top, to }) =>
            Math.abs(top[0] - middle) <= FINE &&
            Math.abs(to[0] - middle) <= FINE &&
            top[1] >= beam.y &&
            top[1] <= low + FINE &&
            Math.abs(to[1] - whole.y) <= FINE,
        ),
    );
    expect(missing).toEqual([]);
    const floors = lines.filter(
      ({ from: left, to: right }) =>
        left[1] === right[1] && left[1] > whole.y + whole.height + 5 && left[0] < x(0) - 5 && right[0] > x(length) + 2,
    );
    const [floor] = floors.toSorted((one, other) => one.from[1] - other.from[1]);
    expect(floor).toBeDefined();
    expect((floor?.to[0] as number) - x(length)).toBeLessThan(20);
    expect(x(0) - (floor?.from[0] as number)).toBeLessThan(20);
    const label = drawing.all("text").find((each) => words(each) === "floor");
    expect(number(label, "y")).toBeGreaterThan(floor?.from[1] as number);
    expect(number(label, "x")).toBe(floor?.from[0]);
  });

  it("has the moment's and the shear's area hatched between the curve and its axis, upright and evenly", () => {
    const areas = drawing
      .all("path")
      .map(({ attributes }) => [...String(attributes.d).matchAll(/M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)/gu)])
      .map((found) => found.map((each) => each.slice(1).map(Number) as [number, number, number, number]))
      .filter((found) => found.length > 5 && found.every(([x1, , x2]) => x1 === x2));
    expect(areas).toHaveLength(2);
    for (const strokes of areas) {
      const axes = new Set(strokes.map(([, y]) => y));
      expect(axes.size).toBe(1);
      const places = strokes.map(([at]) => at);
      expect(places.every((at) => at >= x(0) - FINE && at <= x(length) + FINE)).toBe(true);
      const steps = places.slice(1).map((at, index) => at - (places[index] as number));
      expect(Math.min(...steps)).toBeGreaterThan(-FINE);
      expect(Math.max(...strokes.map(([, y1, , y2]) => Math.abs(y2 - y1)))).toBeLessThan(9.1);
    }
  });

  it("has the shear jump at every hang, and the diagrams as long as the bar", () => {
    const curves = drawing
      .all("path")
      // The moment at worst is drawn over that of the level bar.
      .filter(({ attributes }) => attributes.class !== "worst")
      .map(placesOf)
      .filter((places) => places.length > 4 && Math.abs((places[0] as Place)[0] - x(0)) <= FINE);
    expect(curves).toHaveLength(2);
    expect(curves.map((places) => Math.abs((places.at(-1) as Place)[0] - x(length)) <= FINE)).toEqual([true, true]);
    const jumps = (curves[0] as readonly Place[]).flatMap(([at, y], index, all) => {
      const before = all[index - 1];
      return before && Math.abs(before[0] - at) <= FINE && Math.abs(before[1] - y) > 0.5 ? [at] : [];
    });
    const missing = hangs.filter(([, at]) => !jumps.some((jump) => Math.abs(jump - x(at)) <= FINE));
    expect(missing).toEqual([]);
    expect(jumps.length).toBeGreaterThanOrEqual(hangs.length);
  });

  it("has the dimensions of bar and face begin and end at them", () => {
    const levels = classed(drawing, "dimension")
      .map((group) => inside(group, "polygon").map((head) => placesOf(head)[0] as Place))
      .filter(([one, other]) => Math.abs((one as Place)[1] - (other as Place)[1]) < FINE)
      .map((tips) => tips.map(([at]) => at));
    const expected = [
      [x(from), x(from + face.width)],
      [x(0), x(from)],
      [x(0), x(length)],
    ];
    const missing = expected.filter(
      (pair) => !levels.some((tips) => tips.every((tip, index) => Math.abs(tip - (pair[index] as number)) <= FINE)),
    );
    expect(missing).toEqual([]);
    expect(levels).toHaveLength(expected.length);
  });
});
