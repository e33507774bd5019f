import type { Element } from "xast";
import { number } from "../read.js";
import { type Box, inside, type Place } from "../to-size/paper.js";
import { boxOfLabel } from "./letters.js";

// Where things stand on the paper, whatever they are: read from the file by what SVG says of its shapes (SVG 2, 9 and 10).

const around = (places: readonly Place[]): Box => {
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
};

/** How many numbers a command of a path takes. */
const TAKES: Readonly<Record<string, number>> = { m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, a: 7, z: 0 };

/** The ends of the pieces of a path; of a curve only its ends, since ours hardly bulge. */
export function endsOf(d: string): readonly Place[] {
  const ends: Place[] = [];
  let at: Place = [0, 0];
  for (const [, sign = "", rest = ""] of d.matchAll(/([a-z])([^a-z]*)/giu)) {
    const numbers = [...rest.matchAll(/-?(?:\d+\.?\d*|\.\d+)/gu)].map(Number);
    const [kind, isRelative] = [sign.toLowerCase(), sign !== sign.toUpperCase()];
    const takes = TAKES[kind];
    if (takes === undefined) throw new Error(`there is no ${sign} in ${d}`);
    for (let from = 0; from + takes <= numbers.length && takes > 0; from += takes) {
      const own = numbers.slice(from, from + takes);
      const [x, y] = isRelative ? at : [0, 0];
      if (kind === "h") at = [x + (own[0] as number), at[1]];
      else if (kind === "v") at = [at[0], y + (own[0] as number)];
      else at = [x + (own.at(-2) as number), y + (own.at(-1) as number)];
      ends.push(at);
    }
  }
  return ends;
}

const corners = (points: string): readonly Place[] =>
  points.split(" ").map((each) => each.split(",").map(Number) as unknown as Place);

/** The box of one shape; undefined for what is none. */
export function boxOfShape(shape: Element): Box | undefined {
  const { attributes, name } = shape;
  const at = (...keys: readonly string[]): number[] => keys.map((key) => number(shape, key));
  if (name === "text") return boxOfLabel(shape);
  if (name === "rect") {
    const [x = 0, y = 0, width = 0, height = 0] = at("x", "y", "width", "height");
    return { x, y, width, height };
  }
  if (name === "line") {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = at("x1", "y1", "x2", "y2");
    return around([
      [x1, y1],
      [x2, y2],
    ]);
  }
  if (name === "circle") {
    const [x = 0, y = 0, r = 0] = at("cx", "cy", "r");
    return { x: x - r, y: y - r, width: 2 * r, height: 2 * r };
  }
  if (name === "polygon") return around(corners(attributes.points ?? ""));
  const ends = name === "path" ? endsOf(attributes.d ?? "") : [];
  return ends.length > 0 ? around(ends) : undefined;
}

export interface Ink {
  readonly shape: Element;
  readonly box: Box;
}

/** Everything that is drawn, but for the sheet itself and paper laid under lettering. */
export const inkOf = (root: Element): readonly Ink[] =>
  ["text", "rect", "line", "circle", "polygon", "path"]
    .flatMap((name) => inside(root, name))
    .filter(({ attributes }) => attributes.class !== "paper")
    .flatMap((shape) => {
      const box = boxOfShape(shape);
      return box ? [{ shape, box }] : [];
    });

/** How far apart two boxes are, across or down, whichever is more; nothing where they meet. */
export const gapOf = (one: Box, other: Box): number =>
  Math.max(
    0,
    one.x - other.x - other.width,
    other.x - one.x - one.width,
    one.y - other.y - other.height,
    other.y - one.y - one.height,
  );

/** The straight strokes of a shape that may strike something out; hatching is lighter than lettering and does not. */
export function strokesOf(shape: Element): readonly (readonly [Place, Place])[] {
  const { attributes, name } = shape;
  const box = boxOfShape(shape);
  if (!box || attributes.class === "paper") return [];
  const joined = (places: readonly Place[]) =>
    places.slice(1).map((to, index) => [places[index] as Place, to] as const);
  if (name === "line")
    return [
      [
        [number(shape, "x1"), number(shape, "y1")],
        [number(shape, "x2"), number(shape, "y2")],
      ],
    ];
  if (name === "rect" && attributes.fill === "none") {
    const [right, low] = [box.x + box.width, box.y + box.height];
    return joined([
      [box.x, box.y],
      [right, box.y],
      [right, low],
      [box.x, low],
      [box.x, box.y],
    ]);
  }
  const d = attributes.d ?? "";
  return name === "path" && [...d.matchAll(/M/gu)].length === 1 ? joined(endsOf(d)) : [];
}
