import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { number, words } from "../read.js";
import { documents, metres, under } from "../to-size/by-hand.js";
import { type Box, boxOf, classed, FINE, inside, lineOf, type Place, placesOf } from "../to-size/paper.js";
import { boxOfLabel } from "./letters.js";
import { sheets } from "./sheets.js";

// What a draughtsman checks of hatching, breaks, nodes and swatches.

interface Stroke {
  readonly from: Place;
  readonly to: Place;
}

/** The strokes of a path that is moved to and drawn from by turns; nothing where it is another path. */
function strokesOf(path: Element): readonly Stroke[] {
  const d = path.attributes.d ?? "";
  if (!/^(?:M-?[\d.]+ -?[\d.]+L-?[\d.]+ -?[\d.]+)+$/u.test(d)) return [];
  const places = placesOf(path);
  return places.flatMap((from, index) => (index % 2 === 0 ? [{ from, to: places[index + 1] as Place }] : []));
}

const slope = ({ from, to }: Stroke): number => (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;

/** Where a stroke would cross the level through the corner of the sheet, measured across the strokes. */
const across = ({ from }: Stroke, degrees: number): number => {
  const turn = (degrees * Math.PI) / 180;
  return -from[0] * Math.sin(turn) + from[1] * Math.cos(turn);
};

const hatched = sheets.flatMap(({ name, drawing }) =>
  drawing.all("path").flatMap((path) => {
    const strokes = strokesOf(path).filter(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]) > 1);
    return strokes.length < 3 ? [] : [{ name, path, strokes }];
  }),
);

describe("hatching", () => {
  // ISO 128-50: at 45° to the main outlines, and equally spaced.
  it("goes at 45°, level or upright", () => {
    const odd = hatched.flatMap(({ name, strokes }) =>
      strokes
        .filter((each) => {
          const rest = Math.abs(slope(each)) % 45;
          return Math.min(rest, 45 - rest) > 1;
        })
        .map((each) => `${name}: ${slope(each)}`),
    );
    expect(hatched.length).toBeGreaterThan(100);
    expect(odd).toEqual([]);
  });

  it("has its strokes as far apart everywhere", () => {
    const uneven = hatched.flatMap(({ name, strokes }) =>
      [-45, 0, 45, 90].flatMap((degrees) => {
        const own = strokes.filter((each) => Math.abs(((slope(each) - degrees + 270) % 180) - 90) < 1);
        const places = [...new Set(own.map((each) => across(each, degrees).toFixed(1)))]
          .map(Number)
          .toSorted((a, b) => a - b);
        const steps = places
          .slice(1)
          .map((each, index) => each - (places[index] as number))
          .filter((each) => each > 0.25);
        const least = Math.min(...steps);
        return steps.some((each) => Math.abs(each / least - Math.round(each / least)) * least > 0.25)
          ? [`${name}: ${steps.map((each) => each.toFixed(2))}`]
          : [];
      }),
    );
    expect(uneven).toEqual([]);
  });

  it("of what stands on the floor and of the floor stays in it, and reaches its edges", () => {
    // The rectangle a hatch belongs to is drawn beside it; the floor has its line above.
    const loose = sheets.flatMap(({ name, drawing }) => {
      const elements = drawing.all();
      return elements.flatMap((each, index) => {
        const next = [elements[index - 1], elements[index + 1]].find(
          (other) => other?.name === "rect" && !["paper", "face"].includes(String(other.attributes.class)),
        );
        const strokes = each.name === "path" && next?.attributes.class !== "face" ? strokesOf(each) : [];
        if (
          !next ||
          strokes.length < 2 ||
          (String(each.attributes.class).includes("hatch") && elements[index + 1] !== next)
        )
          return [];
        const box = boxOf(next);
        const points = strokes.flatMap(({ from, to }) => [from, to]);
        const out = points.some(
          ([x, y]) =>
            x < box.x - FINE || x > box.x + box.width + FINE || y < box.y - FINE || y > box.y + box.height + FINE,
        );
        const touching = points.every(([x, y]) =>
          [
            Math.abs(x - box.x),
            Math.abs(x - box.x - box.width),
            Math.abs(y - box.y),
            Math.abs(y - box.y - box.height),
          ].some((off) => off < 2 * FINE),
        );
        return out || !touching ? [`${name}: ${JSON.stringify(box)}`] : [];
      });
    });
    expect(loose).toEqual([]);
  });
});

describe("hang plots", () => {
  const plots = sheets.filter(({ kind }) => kind.startsWith("hang-plot-"));

  it("have every break across the middle of the line it breaks", () => {
    const breaks = plots.flatMap(({ name, drawing }) =>
      classed(drawing, "break").map((path) => {
        const [x, y, ...by] = [...(path.attributes.d ?? "").matchAll(/-?[\d.]+/gu)].map(Number) as [
          number,
          number,
          ...number[],
        ];
        const wide = (by[0] as number) + (by[2] as number) + (by[4] as number);
        const middle: Place = [x + wide / 2, y + (by[1] as number) / 2];
        const lines = drawing
          .all("line")
          .map(lineOf)
          .filter(({ from, to }) => Math.abs(from[0] - to[0]) < FINE);
        const on = lines.filter(
          ({ from, to }) =>
            Math.abs(from[0] - middle[0]) < 0.06 &&
            Math.min(from[1], to[1]) < middle[1] &&
            Math.max(from[1], to[1]) > middle[1],
        );
        return { name, on: on.length, ways: [by[1], by[3], by[5]].map((each) => Math.sign(each as number)) };
      }),
    );
    expect(breaks.length).toBeGreaterThan(20);
    expect(breaks.filter(({ on }) => on === 0)).toEqual([]);
    expect(breaks.filter(({ ways }) => ways.join() !== "-1,1,-1")).toEqual([]);
  });

  it("have the structure over every hang hatched on its upper side", () => {
    const wrong = plots.flatMap(({ name, drawing }) =>
      drawing.having("data-hang").flatMap(([hang, group]) => {
        const hatches = inside(group, "path").filter((each) => strokesOf(each).length > 2);
        const levels = inside(group, "line")
          .map(lineOf)
          .filter(({ from, to }) => Math.abs(from[1] - to[1]) < FINE && Math.abs(to[0] - from[0]) > 5);
        const good = hatches.every((each, index) => {
          const points = strokesOf(each).flatMap(({ from, to }) => [from, to]);
          const { from, to } = levels[index] as Stroke;
          const [top, low] = [Math.min(...points.map(([, y]) => y)), Math.max(...points.map(([, y]) => y))];
          const [left, right] = [Math.min(...points.map(([x]) => x)), Math.max(...points.map(([x]) => x))];
          return (
            Math.abs(low - from[1]) < 2 * FINE &&
            low - top > 1.5 &&
            low - top < 3 &&
            left >= from[0] - FINE &&
            right <= to[0] + FINE &&
            right - left > 6
          );
        });
        return good && hatches.length === levels.length && hatches.length > 0 ? [] : [`${name} ${hang}`];
      }),
    );
    expect(wrong).toEqual([]);
  });

  it("have the legs of a bridle from its ring to the structure, as far and as high as is written", () => {
    const { drawing } = plots.find(({ file }) => file === "builds/odd.md") as (typeof plots)[number];
    const scale = 1000 / Number(/Scale 1:(\d+)/u.exec(drawing.all("text").map(words).join(" "))?.[1]);
    const [ring] = drawing.all("circle").filter((each) => each.attributes.fill === "currentColor");
    const legs = drawing.having("data-leg").map(([, group]) => lineOf(inside(group, "line")[0] as Element));
    const feet = (length: number): number => length * 0.3048 * scale;
    // By repository.ts: the left leg 3 ft out and 4 ft up, the right one 2 ft out and 5 ft up.
    const expected = [
      [-feet(3), -feet(4)],
      [feet(2), -feet(5)],
    ];
    expect(legs.map(({ from }) => from)).toEqual(legs.map(() => [number(ring, "cx"), number(ring, "cy")]));
    const off = legs.flatMap(({ from, to }, index) => {
      const [right, down] = expected[index] as [number, number];
      return [to[0] - from[0] - right, to[1] - from[1] - down];
    });
    expect(legs).toHaveLength(2);
    expect(off.filter((each) => Math.abs(each) > 2 * FINE)).toEqual([]);
    const [bar] = drawing.having("data-bar").map(([, each]) => boxOf(each));
    // The ring is plumb over the place of the hang, 1 ft from the end of the bar.
    expect(number(ring, "cx")).toBeCloseTo((bar as Box).x + feet(1), 1);
  });

  it("have the running places over one another where they are near, and at one height else", () => {
    const wrong = plots.flatMap(({ name, drawing }) =>
      ["left", "right"].flatMap((end) => {
        const labels = drawing
          .all("g")
          .filter(({ attributes }) => attributes["data-from"] === end)
          .map((group) => inside(group, "text")[0] as Element);
        const sorted = labels.toSorted((one, other) => number(one, "x") - number(other, "x"));
        const met = sorted.slice(1).filter((label, index) => {
          const [one, other] = [boxOfLabel(sorted[index] as Element), boxOfLabel(label)];
          return one.x + one.width > other.x && Math.abs(one.y - other.y) < 2;
        });
        return met.map((label) => `${name}: ${words(label)}`);
      }),
    );
    expect(wrong).toEqual([]);
  });

  it("have their zero beside a ring at the end of the bar", () => {
    const wrong = plots.flatMap(({ name, drawing }) => {
      const [bar] = drawing.having("data-bar").map(([, each]) => boxOf(each));
      if (!bar) return [];
      const rings = drawing
        .all("circle")
        .filter((each) => each.attributes.fill === "none")
        .map((each): Place => [number(each, "cx"), number(each, "cy")]);
      const zeros = drawing
        .all("text")
        .filter((each) => words(each) === "0")
        .map(boxOfLabel);
      const ends = [bar.x + bar.width, bar.x];
      const good =
        rings.length === 2 &&
        zeros.length === 2 &&
        rings.every(([x, y], index) => {
          const zero = zeros[index] as Box;
          const outside = index === 0 ? zero.x - x : x - zero.x - zero.width;
          return (
            Math.abs(x - (ends[index] as number)) < FINE &&
            Math.abs(zero.y + zero.height / 2 - y) < 0.1 &&
            outside > 1 &&
            outside < 2
          );
        });
      return good ? [] : [name];
    });
    expect(plots.length).toBeGreaterThan(6);
    expect(wrong).toEqual([]);
  });
});

describe("faces", () => {
  const faces = sheets.filter(({ kind }) => kind.startsWith("face-"));

  it("have the number of every panel in the middle of its node, the first one square", () => {
    const nodes = faces.flatMap(({ name, drawing }) =>
      classed(drawing, "order").map((group) => {
        const [sign, label] = [inside(group, "rect")[0] as Element, inside(group, "text")[0] as Element];
        const [box, over] = [boxOf(sign), boxOfLabel(label)];
        const off = [
          over.x + over.width / 2 - box.x - box.width / 2,
          over.y + over.height / 2 - box.y - box.height / 2,
        ];
        const first = words(label) === "1";
        return {
          name: `${name}: ${words(label)}`,
          centred: off.every((each) => Math.abs(each) < 0.06),
          holds: over.width < box.width && over.height < box.height && box.height < 2.6 * over.height,
          square: first === (sign.attributes.rx === undefined),
        };
      }),
    );
    expect(nodes.length).toBeGreaterThan(200);
    expect(nodes.filter(({ centred, holds, square }) => !centred || !holds || !square)).toEqual([]);
  });

  it("have the heads of a cable on its way, and between two panels", () => {
    const wrong = faces.flatMap(({ name, drawing }) =>
      classed(drawing, "route").flatMap((group) => {
        const way = inside(group, "path").map(placesOf)[0] ?? [];
        const heads = inside(group, "polygon").map((head) =>
          String(head.attributes.points)
            .split(" ")
            .map((each) => each.split(",").map(Number) as unknown as Place),
        );
        return heads
          .filter(([tip, one, other]) => {
            const back: Place = [
              ((one as Place)[0] + (other as Place)[0]) / 2,
              ((one as Place)[1] + (other as Place)[1]) / 2,
            ];
            const middle: Place = [((tip as Place)[0] + back[0]) / 2, ((tip as Place)[1] + back[1]) / 2];
            // In the middle of a hop, and pointing along it.
            return !way.slice(1).some((to, index) => {
              const from = way[index] as Place;
              const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
              const centre: Place = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
              const along =
                ((tip as Place)[0] - back[0]) * (to[0] - from[0]) + ((tip as Place)[1] - back[1]) * (to[1] - from[1]);
              return (
                Math.hypot(middle[0] - centre[0], middle[1] - centre[1]) < 0.25 &&
                along > 0.99 * long * Math.hypot((tip as Place)[0] - back[0], (tip as Place)[1] - back[1])
              );
            });
          })
          .map(() => `${name}: ${group.attributes["data-run"] ?? group.attributes["data-chain"]}`);
      }),
    );
    expect(wrong).toEqual([]);
  });

  it("have the swatch of every line in its row of the legend, the line in the middle of it", () => {
    const listed = faces.filter(({ drawing }) => drawing.having("data-order").length > 0);
    const wrong = listed.flatMap(({ name, drawing }) => {
      const elements = drawing.all();
      const swatches = elements.flatMap((each, index) => {
        const line = elements[index + 1];
        return each.name === "rect" &&
          each.attributes["stroke-width"] === "0.18" &&
          line?.name === "line" &&
          String(line.attributes.class).startsWith("series")
          ? [{ box: boxOf(each), line: lineOf(line) }]
          : [];
      });
      const labels = drawing.all("text").map(boxOfLabel);
      const off = swatches.filter(({ box, line: { from, to } }) => {
        const middle = box.y + box.height / 2;
        const named = labels.some(
          (label) =>
            label.x > box.x + box.width &&
            label.x < box.x + box.width + 8 &&
            Math.abs(label.y + label.height / 2 - middle) < 0.6,
        );
        return (
          !named ||
          [from[0] - box.x, to[0] - box.x - box.width, from[1] - middle, to[1] - middle].some(
            (each) => Math.abs(each) > FINE,
          )
        );
      });
      return off.length === 0 && swatches.length > 0 ? [] : [name];
    });
    expect(wrong).toEqual([]);
  });

  it("have the audience's sides named at the face's ends, left and right as they are seen", () => {
    const wrong = faces.flatMap(({ name, drawing, kind }) => {
      const rear = kind.endsWith("-rear");
      const outline = boxOf(classed(drawing, "outline")[0] as Element);
      const at = (said: string): Box | undefined =>
        drawing
          .all("text")
          .filter((each) => words(each) === said)
          .map(boxOfLabel)[0];
      const left = at(`◂ audience's ${rear ? "right" : "left"}`);
      const right = at(`audience's ${rear ? "left" : "right"} ▸`);
      const up = at("▴ up");
      if (!left || !right || !up) return [name];
      const middle = outline.x + outline.width / 2;
      const even =
        Math.abs(left.x + right.x + right.width - 2 * middle) < 0.1 && Math.abs(up.x + up.width / 2 - middle) < 0.1;
      return even &&
        left.x <= outline.x + FINE &&
        left.y > outline.y + outline.height &&
        Math.abs(left.y - right.y) < FINE
        ? []
        : [name];
    });
    expect(wrong).toEqual([]);
  });
});

describe("sections", () => {
  const sights = documents.flatMap(({ file, faces, audience }) =>
    faces.map((face) => ({ file, face, audience: audience as Readonly<Record<string, string>> })),
  );

  it("tell the angles to the edges of the face from the eyes of the viewers", () => {
    const told = sights.flatMap(({ file, face, audience }) => {
      const eye = audience["eye-height"];
      if (eye === undefined) return [];
      const said = (
        sheets.find((each) => each.file === file && each.kind === `sightlines-${face.name}`) as (typeof sheets)[number]
      ).drawing
        .all("text")
        .map(words)
        .join(" ");
      return (["nearest", "farthest"] as const).map((viewer) => {
        const away = metres(audience[viewer]);
        const angles = [face.edge, face.edge + face.height].map((height) => {
          const degrees = (Math.atan((height - metres(eye)) / away) * 180) / Math.PI;
          return `${Math.abs(degrees).toFixed(1)}° ${degrees < 0 ? "down" : "up"}`;
        });
        return said.includes(
          `From the eye of the ${viewer} viewer the lower edge is ${angles[0]}, the upper ${angles[1]}.`,
        );
      });
    });
    expect(told).toEqual([true, true]);
  });
});

it("stands have the panels' distance and the ballast's named beside their dimensions, in one column", () => {
  const stands = sheets.filter(({ kind }) => kind.startsWith("stand-"));
  const wrong = stands.flatMap(({ name, drawing, file, kind }) => {
    const face = documents.find((each) => each.file === file)?.faces.find((each) => kind === `stand-${each.name}`);
    if (!face) return [];
    const base = boxOf(classed(drawing, "base")[0] as Element);
    const names = ["toe to the panels' centre", "toe to the ballast", "depth of the base"];
    const places = ["toe", "ballast-arm", "depth"].map((key) => metres(under(face, "base")[key]));
    const labels = names.map((said) => drawing.all("text").filter((each) => words(each) === said)[0] as Element);
    const dims = drawing
      .all("line")
      .filter((each) => each.attributes.class === "dimension-line")
      .map(lineOf)
      .filter(({ from, to }) => Math.abs(from[1] - to[1]) < FINE);
    const good = labels.every((label, index) => {
      const box = boxOfLabel(label);
      const { from, to } = dims[index] as Stroke;
      return (
        number(label, "x") < base.x &&
        number(label, "x") > base.x - 6 &&
        Math.abs(box.y + box.height / 2 - from[1]) < 0.4 &&
        to[0] > from[0] &&
        (places[index] as number) > 0
      );
    });
    // Lines lead down from the things to their dimensions.
    const leads = drawing
      .all("line")
      .map(lineOf)
      .filter(
        ({ from, to }) =>
          Math.abs(from[0] - to[0]) < FINE && from[1] > base.y + base.height && from[1] < base.y + base.height + 4,
      );
    const led = dims.every(({ to }) =>
      leads.some((each) => Math.abs(each.from[0] - to[0]) < 2 * FINE && each.to[1] >= to[1]),
    );
    return good && led ? [] : [name];
  });
  expect(stands.length).toBeGreaterThanOrEqual(3);
  expect(wrong).toEqual([]);
});
