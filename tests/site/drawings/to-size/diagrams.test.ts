import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { number, words } from "../read.js";
import { documents, panelsOf, under } from "./by-hand.js";
import { boxOf, FINE, lineOf, only, type Place, placesOf, sheet } from "./paper.js";

// Diagrams that are not to scale: what is joined to what, in which order, and with how much on the way.

interface Run {
  readonly name: string;
  readonly panels: readonly string[];
}

const circuits = documents.flatMap(({ file, power }) => {
  const { runs, circuits: all } = power as {
    runs: Readonly<Record<string, { from: string; panels: string }>>;
    circuits: object;
  };
  return Object.keys(all).map((circuit) => ({
    title: `${file} ${circuit}`,
    file,
    circuit,
    supply: Number.parseFloat(String(under(all, circuit).supply)),
    runs: Object.entries(runs).flatMap(([name, { from, panels }]): readonly Run[] =>
      from === circuit ? [{ name, panels: panelsOf(panels) }] : [],
    ),
  }));
});

it("twenty circuits feed eleven runs", () => {
  // Banner 3 and 1, strips 4 and 2, screen 3 and 2, fascias 3 and 2, wall 4 and 4, header 4 and 2.
  expect(circuits).toHaveLength(21);
  expect(circuits.flatMap(({ runs }) => runs)).toHaveLength(13);
});

/** The first, the second and the last of a run. */
const stops = (panels: readonly string[]): readonly string[] =>
  [...new Set([panels[0], panels[1], panels.at(-1)])] as string[];

describe.each(circuits)("one-line $title", ({ file, circuit, runs }) => {
  const drawing = sheet(file, `one-line-${circuit}`);
  const boxes = drawing
    .all("rect")
    .filter(({ attributes }) => attributes.class !== "paper")
    .map(boxOf);
  const rows = [...new Set(boxes.map(({ y, height }) => (y + height / 2).toFixed(2)))];
  const text = drawing.all("text");

  it("has a row of panels for every run, in the order written", () => {
    expect(rows).toHaveLength(runs.length);
    const named = boxes.map(({ x, y, width, height }) =>
      words(
        only(
          text.filter((each) => {
            const [across, down] = [number(each, "x"), number(each, "y")];
            return across > x && across < x + width && down > y && down < y + height;
          }),
        ),
      ),
    );
    expect(named).toEqual(runs.flatMap(({ panels }) => stops(panels)));
    const titles = drawing.having("data-run").map(([, each]) => number(each, "y"));
    expect(titles).toEqual(titles.toSorted((one, other) => one - other));
  });

  it("has a cable from every panel to the next, and from the outlet to the first", () => {
    const lines = drawing.all("line").map(lineOf);
    const joined = (from: Place, to: Place): boolean =>
      lines.some((line) =>
        [...from, ...to].every((each, index) => Math.abs(each - ([...line.from, ...line.to][index] as number)) <= FINE),
      );
    const loose = rows.flatMap((row) => {
      const own = boxes.filter(({ y, height }) => (y + height / 2).toFixed(2) === row);
      return own.flatMap((box, index) => {
        const before = own[index - 1];
        const y = box.y + box.height / 2;
        return before === undefined || joined([before.x + before.width, y], [box.x, y]) ? [] : [`${row}: ${index}`];
      });
    });
    expect(loose).toEqual([]);
    const heads = drawing.all("polygon").map((each) => (placesOf(each)[0] as Place).map((at) => at.toFixed(2)).join());
    const firsts = rows.map((row) => {
      const [box] = boxes.filter(({ y, height }) => (y + height / 2).toFixed(2) === row);
      return `${box?.x.toFixed(2)},${row}`;
    });
    expect(heads).toEqual(firsts);
    const feeds = drawing
      .all("path")
      .map(placesOf)
      .filter((places) => places.length === 4);
    expect(feeds.map((places) => (places.at(-1) as Place).map((at) => at.toFixed(2)).join())).toEqual(firsts);
    // The feeds of all runs come from one outlet.
    expect(new Set(feeds.map((places) => (places[0] as Place).join())).size).toBe(Math.min(runs.length, 1));
  });

  it("says how many panels it leaves out between two", () => {
    const said = text.flatMap((each) => /^(\d+) more$/u.exec(words(each))?.[1] ?? []);
    expect(said).toEqual(runs.flatMap(({ panels }) => (panels.length > 3 ? [String(panels.length - 3)] : [])));
  });
});

const paths = documents.map(({ file, picture, data }) => {
  const hops = (picture as { path: readonly { part: string; place?: string; length?: string }[] }).path;
  const { part } = under(data, "processor");
  return {
    file,
    devices: [...hops.filter(({ length }) => length === undefined).map((each) => each.part), String(part)],
    hops,
  };
});

it("six picture paths are written", () => expect(paths).toHaveLength(6));

describe.each(paths)("picture path of $file", ({ file, devices, hops }) => {
  const drawing = sheet(file, "picture-path");
  const boxes = drawing.having("data-device").map(([name, each]) => ({ name, ...boxOf(each) }));

  it("has the devices from the source to the processor, in the order written", () => {
    expect(boxes.map(({ name }) => name)).toEqual(devices);
    const order = boxes.toSorted((one, other) => one.y - other.y || one.x - other.x).map(({ name }) => name);
    expect(order).toEqual(devices);
  });

  it("has a cable from the edge of every device to the next, with its name and length beside it", () => {
    const lines = drawing.all("line").map(lineOf);
    const leads = boxes.slice(1).map((to, index) => {
      const from = boxes[index] as (typeof boxes)[number];
      const touches = ([x, y]: Place, box: typeof from): boolean =>
        x >= box.x - FINE && x <= box.x + box.width + FINE && y >= box.y - FINE && y <= box.y + box.height + FINE;
      const out = lines.find((line) => touches(line.from, from) && !touches(line.to, from));
      const into = lines.find((line) => touches(line.to, to) && !touches(line.from, to));
      return out !== undefined && into !== undefined;
    });
    expect(leads).toEqual(boxes.slice(1).map(() => true));
    const said = drawing.all("text").map(words).join("\n");
    const cables = hops.filter(({ length }) => length !== undefined);
    expect(cables.filter(({ part, length }) => !said.includes(part) || !said.includes(String(length)))).toEqual([]);
    expect(cables.length).toBeGreaterThan(0);
    const heads = drawing.all("polygon").map((each: Element) => placesOf(each)[0] as Place);
    expect(heads).toHaveLength(boxes.length - 1);
    expect(
      heads.filter(([x, y], index) => {
        const to = boxes[index + 1] as (typeof boxes)[number];
        return x < to.x - FINE || x > to.x + to.width + FINE || y < to.y - FINE || y > to.y + to.height + FINE;
      }),
    ).toEqual([]);
  });
});
