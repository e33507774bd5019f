import { describe, expect, it } from "vitest";
import { notEmpty } from "../../../run/not-empty.js";
import { number, words } from "../read.js";
import { type Box, boxOf, inside, type Place } from "../to-size/paper.js";
import { gapOf, inkOf, strokesOf } from "./ink.js";
import { boxOfLabel } from "./letters.js";
import { everySheet, sheets } from "./sheets.js";

// How things lie on a sheet, whatever they are: on the paper, one under another without holes, lettering beside what it
// belongs to, set flush, and not struck through. Common practice of drafting; how many millimetres are usual has no source.

const all = everySheet.map((sheet) => ({ ...sheet, ink: inkOf(sheet.drawing.root) }));
const isOf = (...kinds: readonly string[]) => {
  const begins = new RegExp(`^(?:${kinds.join("|")})`, "u");
  return ({ kind }: { readonly kind: string }): boolean => begins.test(kind);
};
const bottom = ({ y, height }: Box): number => y + height;

it("there are sheets of every kind", () => {
  const kinds = ["hang-plot", "hang-plan", "stand", "face", "one-line", "picture-path", "raster", "sightlines"];
  const other = ["elevation", "venue-plan"];
  expect([...kinds, ...other].filter((kind) => !all.some(isOf(kind)))).toEqual([]);
});

it("everything is on the sheet, as far from its edges as usual", () => {
  const off = all.flatMap(({ name, width, height, ink }) =>
    ink
      .filter(({ box }) => box.x < 0.99 || box.y < 0.5 || box.x + box.width > width + 0.01 || bottom(box) > height - 2)
      .map(({ shape, box }) => `${name}: ${shape.name} ${words(shape)} ${JSON.stringify(box)}`),
  );
  expect(off).toEqual([]);
});

it("the sheet ends below the last of it", () => {
  const long = all.flatMap(({ name, height, ink }) => {
    const under = height - Math.max(...ink.map(({ box }) => bottom(box)));
    return under > 2.5 && under < 9.1 ? [] : [`${name}: ${under}`];
  });
  expect(long).toEqual([]);
});

it("what stands one under another leaves no hole", () => {
  const dense = all.filter((each) => !isOf("elevation", "venue-plan")(each));
  const holes = dense.flatMap(({ name, kind, ink }) => {
    const sorted = ink.map(({ box }) => box).toSorted((one, other) => one.y - other.y);
    const gaps = sorted.map(({ y }, index) => y - Math.max(0, ...sorted.slice(0, index).map(bottom)));
    const widest = Math.max(...gaps);
    return widest < (/^hang-plot|^face-.*-rear/u.test(kind) ? 14 : 10) ? [] : [`${name}: ${widest}`];
  });
  expect(holes).toEqual([]);
});

it("no label stands alone", () => {
  const lone = all.flatMap(({ name, kind, ink }) => {
    const most = isOf("hang-plot")({ kind }) ? 20 : isOf("venue-plan")({ kind }) ? 16 : 12;
    return ink
      .filter(({ shape }) => shape.name === "text")
      .filter((label) => ink.every((each) => each === label || gapOf(each.box, label.box) > most))
      .map(({ shape }) => `${name}: ${words(shape)}`);
  });
  expect(lone).toEqual([]);
});

it("what is set at the left edge is set flush", () => {
  const labels = all.flatMap(({ name, drawing }) =>
    drawing
      .all("text")
      .filter((label) => number(label, "x") < 3.4 && label.attributes["text-anchor"] !== "end")
      // Which way is the audience's left is said at the face's own end.
      .filter((label) => !words(label).startsWith("◂"))
      .map((label) => ({ said: `${name}: ${words(label)}`, x: number(label, "x") })),
  );
  const ragged = labels.filter(({ said, x }) => x !== (said.includes(" elevation-") ? 3 : 2));
  expect(labels.length).toBeGreaterThan(300);
  expect(ragged).toEqual([]);
});

/** Whether a stroke comes through a box; what touches its edge does not. */
function crosses({ x, y, width, height }: Box, [from, to]: readonly [Place, Place]): boolean {
  // Liang and Barsky, A new concept and method for line clipping, ACM Trans. Graph. 3 (1984).
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  let [enters, leaves] = [0, 1];
  for (const [by, room] of [
    [-dx, from[0] - x - 0.1],
    [dx, x + width - 0.1 - from[0]],
    [-dy, from[1] - y - 0.1],
    [dy, y + height - 0.1 - from[1]],
  ] as const) {
    if (by === 0 && room < 0) return false;
    if (by < 0) enters = Math.max(enters, room / by);
    if (by > 0) leaves = Math.min(leaves, room / by);
  }
  return enters < leaves;
}

it("no line strikes lettering through, unless it stands on paper of its own or names a panel", () => {
  const struck = all.flatMap(({ name, kind, drawing }) => {
    const order = drawing.all();
    const strokes = order.flatMap((shape, place) => strokesOf(shape).map((ends) => ({ ends, place })));
    return order.flatMap((label, place) => {
      if (label.name !== "text" || kind.startsWith("elevation")) return [];
      const under = order[place - 1];
      const hasPaper = under?.name === "rect" && under.attributes.fill === "#fff";
      const box = boxOfLabel(label);
      const by = strokes.filter((each) => !(hasPaper && each.place < place) && crosses(box, each.ends));
      const ends = by.slice(0, 1).map((each) => each.ends.flat().join());
      return by.length > 0 ? [{ kind, said: words(label), name: `${name}: ${words(label)} by ${ends}` }] : [];
    });
  });
  // The name of a face in its lowest row of panels, and that of a panel with its cable.
  const others = struck.filter(({ kind, said }) => !(/^face-/u.test(kind) && /^[A-Z]\d+$|^\d+$/u.test(said)));
  expect(others.filter(({ kind, said }) => !kind.startsWith("hang-plot") || said !== "header")).toEqual([]);
});

describe("hang plots", () => {
  const plots = sheets.filter(isOf("hang-plot"));

  it("have every leg drawn whole: no paper of a figure covers what bears the load", () => {
    const legs = plots.flatMap(({ name, drawing }) => {
      const papers = drawing
        .all("rect")
        .filter(({ attributes }) => attributes.class === "paper" && attributes.x !== "0");
      return drawing.having("data-leg").map(([leg, group]) => {
        const ends = inside(group, "line").flatMap(strokesOf);
        return {
          leg: `${name}: ${leg}`,
          ends,
          covered: papers.some((each) => ends.some((end) => crosses(boxOf(each), end))),
        };
      });
    });
    expect(legs.length).toBeGreaterThan(4);
    expect(legs.every(({ ends }) => ends.length === 1)).toBe(true);
    expect(legs.filter(({ covered }) => covered).map(({ leg }) => leg)).toEqual([]);
  });

  it("have the name of every hang beside its drop, between the bar and the structure, and its load under it", () => {
    const hangs = plots.flatMap(({ name, drawing }) => {
      const bar = drawing.having("data-bar").map(([, each]) => boxOf(each))[0];
      return drawing.having("data-hang").map(([hang, group]) => {
        const labels = inside(group, "text");
        const label = labels.find((each) => words(each) === hang);
        const levels = inside(group, "line").flatMap((each) => [number(each, "y1"), number(each, "y2")]);
        const [x] = inside(group, "line")
          .filter((each) => number(each, "x1") === number(each, "x2"))
          .map((each) => number(each, "x1"));
        const loads = labels.filter((each) => /lb|kg|slack|told/u.test(words(each)));
        const boxes = [label, ...loads].flatMap((each) => (each ? [boxOfLabel(each)] : []));
        const isBeside = boxes.every(
          (box) => Math.abs(box.x - (x ?? 0)) < 3 || Math.abs(box.x + box.width - (x ?? 0)) < 3,
        );
        const steps = boxes.slice(1).map(({ y }, index) => y - bottom(boxes[index] as Box));
        return {
          name: `${name}: ${hang}`,
          good:
            label !== undefined &&
            isBeside &&
            boxes.every((box) => box.y > Math.min(...levels) && bottom(box) < (bar?.y ?? 0)) &&
            steps.every((step) => step > 0.5 && step < 2.5),
        };
      });
    });
    expect(hangs.length).toBeGreaterThan(15);
    expect(hangs.filter(({ good }) => !good)).toEqual([]);
  });

  it("have a bridle's legs, however far they reach, between the margins", () => {
    const far = notEmpty(plots.filter(({ file }) => file === "builds/far.md"));
    const legs = far.flatMap(({ drawing, width }) =>
      drawing.having("data-leg").flatMap(([, group]) =>
        inside(group, "line").flatMap((line) => {
          const [x, y] = [number(line, "x2"), number(line, "y2")];
          return [x > 10 && x < width - 10, y > 35 && y < 244];
        }),
      ),
    );
    expect(legs).toEqual(Array.from({ length: 8 }, () => true));
  });
});
