import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, it } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { TODAY } from "../starter-files.js";
import { number, type Read, words } from "./read.js";
import { builds, files, found } from "./subjects.js";

const named = (file: string, name: string): Read => found(file, name);
const repository = openRepository(files, rules, { today: TODAY, every: true });
const checksOf = (file: string, rule: string) => repository.one(file).entry.checks.filter((each) => each.rule === rule);

describe("the hang plot", () => {
  const bars = [...builds].flatMap(([file, { build }]) =>
    build.bars.map((bar) => ({ name: `${file} ${bar.name}`, file, bar })),
  );

  it.each(notEmpty(bars))("$name shows the reaction of every hang that can be told", ({ file, bar }) => {
    const drawing = named(file, `hang-plot-${bar.name}`);
    const told = bar.hangs.filter(({ reaction }) => reaction.known);
    const paths = new Set(bar.hangs.map(({ path }) => path));
    const rows = drawing.having("data-row").filter(([path]) => paths.has(path));
    // A row's cells stand on one base line; below those of the hangs stand the legs of bridles.
    const lines = new Set(rows.map(([, cell]) => cell.attributes.y));
    const levels = drawing
      .having("data-level")
      .filter(([, cell]) => lines.has(cell.attributes.y))
      .map(([value]) => Number(value));
    expect(levels).toEqual(told.map(({ reaction }) => reaction.known && reaction.value));
    const sum = levels.reduce((all, value) => all + value, 0);
    // Equilibrium: the hangs together hold what hangs on the bar, whatever the stiffness.
    if (told.length > 0 && bar.load.known) expect(sum).toBeCloseTo(bar.load.value, 6);
  });

  it.each(notEmpty(bars))("$name shows every hang whose place is known", ({ file, bar }) => {
    const known = bar.hangs.filter(({ at }) => at.known && bar.length.known).map(({ name }) => name);
    const drawing = named(file, `hang-plot-${bar.name}`);
    expect(drawing.having("data-hang").map(([name]) => name)).toEqual(known);
  });

  it("the worst case is the one the record judges", () => {
    const file = "builds/over-stage-banner.md";
    const judged = new Set(
      checksOf(file, "rigging.slack-hang").flatMap(({ measured }) => (measured ? [measured.value.toPrecision(6)] : [])),
    );
    const shown = named(file, "hang-plot-header")
      .having("data-worst")
      .map(([value]) => Number(value).toPrecision(6));
    expect(shown).toHaveLength(4);
    for (const each of shown) expect([...judged]).toContain(each);
  });

  it("draws the legs of a bridle to their rise and run", () => {
    const drawing = named("builds/odd.md", "hang-plot-long");
    const ratio = Number(/Scale 1:(\d+)/u.exec(drawing.all("text").map(words).join(" "))?.[1]);
    // As the document writes them: 4 ft over 3 ft at the left, 5 ft over 2 ft at the right.
    const written = new Map([
      ["H1 left", [4, 3]],
      ["H1 right", [5, 2]],
    ]);
    expect(drawing.having("data-leg")).toHaveLength(2);
    for (const [name, group] of drawing.having("data-leg")) {
      const line = group.children[0] as never;
      const [rise, run] = written.get(name) as [number, number];
      expect((Math.abs(number(line, "y2") - number(line, "y1")) * ratio) / 304.8).toBeCloseTo(rise, 2);
      expect((Math.abs(number(line, "x2") - number(line, "x1")) * ratio) / 304.8).toBeCloseTo(run, 2);
    }
  });
});

describe("the one-line diagram", () => {
  const circuits = [...builds].flatMap(([file, { build }]) =>
    build.circuits.map((circuit) => ({ name: `${file} ${circuit.name}`, file, circuit })),
  );

  it.each(notEmpty(circuits))("$name ends at the voltage of the last panel of every run", ({ file, circuit }) => {
    const drawing = named(file, `one-line-${circuit.name}`);
    expect(drawing.having("data-run").map(([name]) => name)).toEqual(circuit.runs.map(({ name }) => name));
    for (const [run, text] of drawing.having("data-last")) {
      const end = circuit.runs.find(({ name }) => name === run)?.voltageAtEnd;
      if (end?.known) expect(number(text, "data-voltage")).toBeCloseTo(end.value, 9);
      else expect(text.attributes["data-voltage"]).toBeUndefined();
    }
  });

  it.each(notEmpty(circuits))("$name: current and voltage never rise along a run", ({ file, circuit }) => {
    const drawing = named(file, `one-line-${circuit.name}`);
    const along = (attribute: string): number[][] => {
      const runs: number[][] = [];
      for (const element of drawing.all("text")) {
        if (element.attributes["data-run"] !== undefined) runs.push([]);
        if (element.attributes[attribute] !== undefined) runs.at(-1)?.push(number(element, attribute));
      }
      return runs;
    };
    const falls = (list: readonly number[]): readonly number[] => list.toSorted((a, b) => b - a);
    const [voltages, currents] = [along("data-voltage"), along("data-into")];
    expect(voltages).toEqual(voltages.map(falls));
    expect(currents).toEqual(currents.map(falls));
    // Of a run the first, the second and the last panel are drawn, and between them two cables.
    const drawnOf = circuit.runs.map(({ panels = [] }) => Math.min(panels.length, 3));
    const told = circuit.runs.map(({ voltageAtEnd }, index) => (voltageAtEnd.known ? (drawnOf[index] as number) : 0));
    expect(voltages.map((each) => each.length)).toEqual(told);
    expect(currents.map((each) => each.length)).toEqual(drawnOf.map((count) => Math.max(count - 1, 0)));
  });

  it("agrees with a sum by hand: banner, stage-4", () => {
    const drawing = named("builds/over-stage-banner.md", "one-line-stage-4");
    // 6 tiles of 133 W at 0.95 on 120 V: 7 A; behind the first 5 of them, 5.833 A; into the last one, 1.167 A.
    expect(Number(drawing.having("data-run-current")[0]?.[0])).toBeCloseTo((6 * 133) / 0.95 / 120, 9);
    expect(drawing.having("data-into").map(([value]) => Number(value).toFixed(3))).toEqual(["5.833", "1.167"]);
    // NEC chapter 9, table 8: 12 AWG stranded, coated or not, uncoated 1.98 Ω/kft at 75 °C. There and back: 50 ft of
    // wiring, 35 ft of feed, five jumpers of 0.9 m; before the breaker 1 % of 120 V.
    const I = 133 / 0.95 / 120;
    const r = (feet: number): number => (2 * 1.98 * feet) / 1000;
    const jumper = 0.9 / 0.3048;
    const drop = 0.01 * 120 + 6 * I * r(50) + 6 * I * r(35) + (5 + 4 + 3 + 2 + 1) * I * r(jumper);
    const shown = Number(drawing.having("data-last")[0]?.[1].attributes["data-voltage"]);
    // The wiring may be counted as solid wire, 1.93 Ω/kft, a difference of 0.04 V.
    expect(Math.abs(shown - (120 - drop))).toBeLessThan(0.05);
  });
});

describe("the raster", () => {
  const placed = [...builds].filter(([, { build }]) => build.drawings.includes("raster"));

  it.each(placed.map(([file, { build }]) => ({ file, build })))(
    "$file: every face where the document puts it",
    ({ file, build }) => {
      const drawing = named(file, "raster");
      const known = build.picture.placements.flatMap(({ face, parts }) =>
        parts.flatMap(({ rectangle }) => (rectangle ? [{ name: face.name, ...rectangle }] : [])),
      );
      const { width, height } = build.picture;
      if (!width.known || !height.known) return expect(drawing.having("data-face")).toHaveLength(0);
      const drawnFaces = drawing.having("data-face").map(([name, group]) => ({
        name,
        x: number(group, "data-x"),
        y: number(group, "data-y"),
        width: number(group, "data-width"),
        height: number(group, "data-height"),
      }));
      expect(drawnFaces).toEqual(
        known.map(({ name, x, y, width: w, height: h }) => ({ name, x, y, width: w, height: h })),
      );
      const raster = drawing.having("data-raster")[0]?.[1] as never;
      const per = number(raster, "width") / width.value;
      for (const [, group] of notEmpty(drawing.having("data-face"))) {
        const box = group.children.find((each) => each.type === "element" && each.name === "rect") as never;
        expect((number(box, "x") - number(raster, "x")) / per).toBeCloseTo(number(group, "data-x"), -1);
        expect(number(box, "width") / per / number(group, "data-width")).toBeCloseTo(1, 1);
        expect((number(box, "y") - number(raster, "y")) / per).toBeCloseTo(number(group, "data-y"), -1);
      }
    },
  );
});

describe("sightlines", () => {
  it("give the angle a pocket calculator gives", () => {
    const texts = named("builds/odd.md", "sightlines-wide").all("text").map(words).join("\n");
    // Lower edge at 9 ft, eye at 45 in, 12 ft away: arctan((108 − 45) ÷ 144) = 23.6°; 90 ft away: arctan(63 ÷ 1080) = 3.3°.
    expect(texts).toContain("nearest viewer the lower edge is 23.6° up");
    expect(texts).toContain("farthest viewer the lower edge is 3.3° up");
  });

  it("draw no sight line where no height of the eyes is written down", () => {
    const drawing = named("builds/small-screen.md", "sightlines-screen");
    expect(drawing.all("line").filter(({ attributes }) => attributes.class === "sight")).toHaveLength(0);
    expect(drawing.all("text").map(words).join("\n")).toContain("not written down");
  });
});

describe("what is not written down", () => {
  it("is said to be so, and nothing is drawn in its place", () => {
    const plot = named("builds/bare.md", "hang-plot-b");
    expect(plot.having("data-hang")).toHaveLength(0);
    expect(plot.all("text").map(words).join("\n")).toContain("Not drawn: the length of the bar is not written down.");
    expect(named("builds/bare.md", "raster").having("data-raster")).toHaveLength(0);
    expect(named("builds/bare.md", "one-line-c").having("data-voltage")).toHaveLength(0);
  });
});
