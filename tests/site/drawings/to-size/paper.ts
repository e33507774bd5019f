import type { Element } from "xast";
import { drawnOf } from "../one-document.js";
import { number, type Read, read, words } from "../read.js";

/** Hundredths of a millimetre are written down; two of them may add up. */
export const FINE = 0.021;

export type Place = readonly [x: number, y: number];

export interface Sheet extends Read {
  /** Millimetres of paper for one metre of the thing, by the scale the drawing says it has. */
  readonly perMetre: number;
  readonly all: Read["all"];
}

/** A drawing of a document; one that is not there is a mistake of the test or of the product. */
export function sheet(file: string, name: string): Sheet {
  const text = drawnOf(file).find(({ drawing }) => drawing.name === name)?.text;
  if (text === undefined) throw new Error(`${file} has no drawing ${name}`);
  const own = read(text);
  const ratio = Number(/Scale 1:(\d+)/u.exec(own.all("text").map(words).join(" "))?.[1]);
  return { ...own, perMetre: 1000 / ratio };
}

export const inside = (group: Element, name: string): readonly Element[] =>
  group.children.flatMap((each) =>
    each.type === "element" ? [...(each.name === name ? [each] : []), ...inside(each, name)] : [],
  );

export const classed = (drawing: Read, name: string): readonly Element[] =>
  drawing.all().filter(({ attributes }) =>
    String(attributes.class ?? "")
      .split(" ")
      .includes(name),
  );

/** The one element of its kind; more or none is a mistake. */
export function only<T>(found: readonly T[]): T {
  const [one, ...rest] = found;
  if (one === undefined || rest.length > 0) throw new Error(`there should be one, and there are ${found.length}`);
  return one;
}

export const having = (drawing: Read, attribute: string, value: string): Element =>
  only(drawing.having(attribute).filter(([own]) => own === value))[1];

export interface Line {
  readonly from: Place;
  readonly to: Place;
}

export const lineOf = (element: Element): Line => ({
  from: [number(element, "x1"), number(element, "y1")],
  to: [number(element, "x2"), number(element, "y2")],
});

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const boxOf = (element: Element): Box => ({
  x: number(element, "x"),
  y: number(element, "y"),
  width: number(element, "width"),
  height: number(element, "height"),
});

/** Corners of a polygon, or places a path is moved and drawn to by `M` and `L`. */
export const placesOf = (element: Element): readonly Place[] => {
  const { points, d } = element.attributes;
  const found = points ? points.matchAll(/(-?[\d.]+),(-?[\d.]+)/gu) : (d ?? "").matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu);
  return [...found].map(([, x, y]) => [Number(x), Number(y)]);
};

export const apart = ([x1, y1]: Place, [x2, y2]: Place): number => Math.hypot(x2 - x1, y2 - y1);

/** A dimension as it is drawn: its line, the tips of its arrow heads, and the lines that lead to the thing. */
export interface Measure {
  readonly metres: number;
  readonly broken: boolean;
  readonly words: string;
  readonly line: Line;
  readonly tips: readonly [Place, Place];
  readonly extensions: readonly Line[];
}

export const measures = (drawing: Read): readonly Measure[] =>
  classed(drawing, "dimension").map((group) => {
    const lines = inside(group, "line");
    const [one, other] = inside(group, "polygon").map((head) => placesOf(head)[0] as Place);
    return {
      metres: number(group, "data-metres"),
      broken: String(group.attributes.class).includes("broken"),
      words: inside(group, "text").map(words).join(""),
      line: lineOf(only(lines.filter(({ attributes }) => attributes.class === "dimension-line"))),
      tips: [one as Place, other as Place],
      extensions: lines.filter(({ attributes }) => attributes.class !== "dimension-line").map(lineOf),
    };
  });
