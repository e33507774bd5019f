import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { number, type Read, words } from "../read.js";
import { type Box, boxOf, FINE, inside, lineOf, measures, type Place } from "../to-size/paper.js";
import { boxOfLabel, CAPITAL, sizeOf } from "./letters.js";
import { sheets } from "./sheets.js";

// Lettering as a draughtsman checks it: on the sheet, off the other lettering, in the middle of what it measures, and on
// paper of its own where lines pass behind it.

it("ten documents have a hundred drawings", () => expect(sheets.length).toBeGreaterThan(100));

const meet = (one: Box, other: Box): boolean =>
  one.x < other.x + other.width &&
  other.x < one.x + one.width &&
  one.y < other.y + other.height &&
  other.y < one.y + one.height;

const placed = (drawing: Read): readonly { readonly said: string; readonly box: Box }[] =>
  drawing.all("text").map((label) => ({ said: words(label), box: boxOfLabel(label) }));

it("every label is on the sheet", () => {
  const off = sheets.flatMap(({ name, width, height, drawing }) =>
    placed(drawing)
      .filter(({ box }) => box.x < 0 || box.y < 0 || box.x + box.width > width || box.y + box.height > height)
      .map(({ said }) => `${name}: ${said}`),
  );
  expect(off).toEqual([]);
});

it("no label stands on another", () => {
  const met = sheets.flatMap(({ name, drawing }) => {
    const labels = placed(drawing).toSorted((one, other) => one.box.y - other.box.y);
    return labels.flatMap((one, index) => {
      const found: string[] = [];
      for (const other of labels.slice(index + 1)) {
        if (other.box.y > one.box.y + one.box.height) break;
        if (meet(one.box, other.box)) found.push(`${name}: ${one.said} | ${other.said}`);
      }
      return found;
    });
  });
  expect(met).toEqual([]);
});

it("lettering is at least eight points high, but for the names of small cells", () => {
  // 8 pt of 1/72 in (ISO 32000-1, 8.3.2.3: a unit of 1/72 in) are 2.82 mm; a square of 9.5 mm has a name of 7 pt.
  const point = 25.4 / 72;
  const small = sheets.flatMap(({ name, drawing }) => {
    const cells = new Set(drawing.having("data-cell").flatMap(([, cell]) => inside(cell, "text")));
    const numbers = new Set(drawing.having("data-order").map(([, label]) => label));
    return drawing
      .all("text")
      .filter((label) => sizeOf(label) < (cells.has(label) ? 7 : numbers.has(label) ? 5 : 8) * point - 0.01)
      .map((label) => `${name}: ${words(label)} of ${sizeOf(label)} mm`);
  });
  expect(small).toEqual([]);
});

it("paper behind lettering covers it, and little more", () => {
  const papers = sheets.flatMap(({ name, drawing }) => {
    const elements = drawing.all();
    return elements.flatMap((each, index) => {
      const label = elements[index + 1];
      // The sheet itself is paper, too.
      if (each.attributes.x === "0" && each.attributes.y === "0") return [];
      if (each.name !== "rect" || each.attributes.class !== "paper" || label?.name !== "text") return [];
      return [
        { name: `${name}: ${words(label)}`, under: boxOf(each), over: boxOfLabel(label), base: number(label, "y") },
      ];
    });
  });
  const bare = papers.filter(
    ({ under, over }) =>
      under.x > over.x + 0.05 ||
      under.x + under.width < over.x + over.width - 0.05 ||
      under.y > over.y + 0.02 ||
      under.y + under.height < over.y + over.height,
  );
  const large = papers.filter(
    ({ under, over }) => under.height > over.height + 1.6 || under.width > over.width * 1.4 + 3,
  );
  expect(papers.length).toBeGreaterThan(40);
  expect(bare.map(({ name }) => name)).toEqual([]);
  expect(large.map(({ name }) => name)).toEqual([]);
});

describe("dimensions", () => {
  const all = sheets.flatMap(({ name, drawing }) =>
    drawing
      .all("g")
      .filter(({ attributes }) => String(attributes.class).startsWith("dimension"))
      .map((group) => {
        const lines = inside(group, "line");
        const line = lineOf(lines.find(({ attributes }) => attributes.class === "dimension-line") as Element);
        const label = inside(group, "text")[0] as Element;
        return {
          sheet: name,
          name: `${name}: ${words(label)}`,
          group,
          lines,
          line,
          label,
          heads: inside(group, "polygon"),
        };
      }),
  );
  const middle = (one: number, other: number): number => (one + other) / 2;

  it("are level or upright, and there are many of either", () => {
    const level = all.filter(({ line: { from, to } }) => Math.abs(from[1] - to[1]) < FINE);
    const upright = all.filter(({ line: { from, to } }) => Math.abs(from[0] - to[0]) < FINE);
    expect(level.length + upright.length).toBe(all.length);
    expect([level.length > 60, upright.length > 40]).toEqual([true, true]);
  });

  // ISO 129-1: lines of a dimension do not cross the figure of another.
  it("have figures that no line of another runs through", () => {
    const strikes = (
      { from, to }: { readonly from: Place; readonly to: Place },
      { x, y, width, height }: Box,
    ): boolean =>
      Math.max(from[0], to[0]) > x &&
      Math.min(from[0], to[0]) < x + width &&
      Math.max(from[1], to[1]) > y &&
      Math.min(from[1], to[1]) < y + height;
    const struck = all.flatMap(({ sheet, name, label }) => {
      const others = all.filter((each) => each.sheet === sheet && each.label !== label);
      return others
        .filter(({ lines }) => lines.map(lineOf).some((line) => strikes(line, boxOfLabel(label))))
        .map((other) => `${name} | ${other.name}`);
    });
    expect(struck).toEqual([]);
  });

  // ISO 129-1: the figure stands near the middle of its line and slightly above it, to be read from below or from the right.
  it("have the figure over the middle of the line, clear of it", () => {
    const off = all.flatMap(({ name, line: { from, to }, label }) => {
      const level = Math.abs(from[1] - to[1]) < FINE;
      const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
      const box = boxOfLabel(label);
      // A short line has its figure at one end, after the head that points inwards.
      const turned = label.attributes.transform !== undefined;
      const outside = level && label.attributes["text-anchor"] !== "middle";
      const centred = level
        ? outside
          ? (box.x > Math.max(from[0], to[0]) - FINE || box.x + box.width < Math.min(from[0], to[0]) + FINE) &&
            long < 11
          : Math.abs(box.x + box.width / 2 - middle(from[0], to[0])) < 2 * FINE
        : Math.abs(box.y + box.height / 2 - middle(from[1], to[1])) < (turned ? 2 * FINE : 0.1);
      const gap = level
        ? from[1] - box.y - box.height
        : box.x > from[0]
          ? box.x - from[0]
          : from[0] - box.x - box.width;
      const clear = gap > 0.5 && gap < (turned || level ? 1.2 : 2.4);
      return centred && clear ? [] : [`${name}: ${gap}`];
    });
    expect(off).toEqual([]);
  });

  it("have heads along the line that point at its ends, alike and slender", () => {
    const off = all.flatMap(({ name, line: { from, to }, heads }) => {
      const corners = heads.map((head) =>
        String(head.attributes.points)
          .split(" ")
          .map((each) => each.split(",").map(Number) as unknown as Place),
      );
      const long = corners.map(([tip, one, other]) => {
        const back: Place = [
          middle((one as Place)[0], (other as Place)[0]),
          middle((one as Place)[1], (other as Place)[1]),
        ];
        const along = Math.hypot((tip as Place)[0] - back[0], (tip as Place)[1] - back[1]);
        const wide = Math.hypot((one as Place)[0] - (other as Place)[0], (one as Place)[1] - (other as Place)[1]);
        // The middle of the back lies on the line, or in line with it.
        const astray = Math.abs(from[1] - to[1]) < FINE ? Math.abs(back[1] - from[1]) : Math.abs(back[0] - from[0]);
        return { along, wide, astray };
      });
      // ISO 129-1 allows heads of 15° to 90° between their sides.
      const bad = long.some(({ along, wide, astray }) => {
        const angle = (2 * Math.atan2(wide / 2, along) * 180) / Math.PI;
        return angle < 15 || angle > 45 || astray > FINE || along < 1.5 || along > 3.5;
      });
      return corners.length === 2 && !bad ? [] : [`${name}: ${JSON.stringify(long)}`];
    });
    expect(off).toEqual([]);
    expect(all.length).toBeGreaterThan(100);
  });

  it("point outwards between their ends, or inwards from beyond where there is no room", () => {
    const wrong = sheets.flatMap(({ name, drawing }) =>
      drawing
        .all("g")
        .filter(({ attributes }) => String(attributes.class).startsWith("dimension"))
        .flatMap((group) => {
          const [one, other] = inside(group, "polygon").map((head) =>
            String(head.attributes.points)
              .split(" ")
              .map((each) => each.split(",").map(Number) as unknown as Place),
          ) as [Place[], Place[]];
          const [tip, end] = [one[0] as Place, other[0] as Place];
          const long = Math.hypot(tip[0] - end[0], tip[1] - end[1]);
          const towards = (head: Place[], far: Place): number =>
            Math.hypot((head[1] as Place)[0] - far[0], (head[1] as Place)[1] - far[1]) - long;
          const inwards = [towards(one, end), towards(other, tip)].map((each) => each > 0);
          return inwards.every((each) => each === long < 5) ? [] : [`${name}: ${long}`];
        }),
    );
    expect(wrong).toEqual([]);
  });

  it("have extension lines that begin off the thing and end past the dimension line", () => {
    const wrong = sheets.flatMap(({ name, drawing }) =>
      measures(drawing).flatMap(({ words: said, line, extensions }) => {
        const level = Math.abs(line.from[1] - line.to[1]) < FINE;
        const across = level ? 1 : 0;
        const at = line.from[across];
        return extensions.flatMap(({ from, to }) => {
          const past = (to[across] - at) * Math.sign(at - from[across]);
          return past > 0.5 && past < 2.5 ? [] : [`${name}: ${said}: ${past}`];
        });
      }),
    );
    expect(wrong).toEqual([]);
  });
});

describe("tables below drawings", () => {
  const rowsOf = (drawing: Read) => drawing.having("data-row").map(([, cell]) => cell);
  const tables = sheets.filter(({ drawing }) => rowsOf(drawing).length > 1);

  it("have rows below one another by more than the height of their letters, and a rule under the heads", () => {
    expect(tables.length).toBeGreaterThanOrEqual(6);
    const wrong = tables.flatMap(({ name, drawing }) => {
      const hangs = rowsOf(drawing).filter((cell) => !/ (?:left|right)$/u.test(words(cell)));
      const [first] = hangs.map((cell) => number(cell, "y"));
      const steps = hangs.slice(1).map((cell, index) => number(cell, "y") - number(hangs[index], "y"));
      const heads = drawing
        .all("text")
        .filter((label) => words(label) === "Hang" && label.attributes["font-weight"] === "bold");
      const head = number(heads[0], "y");
      const rules = drawing
        .all("line")
        .map(lineOf)
        .filter(
          ({ from, to }) =>
            from[1] === to[1] && from[0] === 2 && from[1] > head && from[1] < (first as number) - CAPITAL * 2.83,
        );
      const high = CAPITAL * 2.83;
      return steps.every((each) => each > 1.5 * high) && rules.length === 1
        ? []
        : [`${name}: ${steps}, ${rules.length}`];
    });
    expect(wrong).toEqual([]);
  });

  it("have every cell under the head of its column", () => {
    const wrong = tables.flatMap(({ name, drawing }) => {
      const labels = drawing.all("text");
      return rowsOf(drawing).flatMap((cell) => {
        const y = number(cell, "y");
        const row = labels.filter((each) => number(each, "y") === y && each.attributes["font-weight"] !== "bold");
        const heads = labels
          .filter((each) => number(each, "y") < y && each.attributes["font-weight"] === "bold")
          .map((each) => number(each, "x"));
        return row.filter((each) => !heads.includes(number(each, "x"))).map((each) => `${name}: ${words(each)}`);
      });
    });
    expect(wrong).toEqual([]);
  });
});
