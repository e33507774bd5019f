import type { Element } from "hast";
import { aboutMiddle, lettering, measure, SMALL } from "./lettering.js";
import { group, line, num, type PaperPoint, polygon, type Shapes } from "./svg.js";

/** A filled arrow head with its tip at `tip`, pointing along `direction` (radians, 0 to the right, down positive). */
export function arrowHead([x, y]: PaperPoint, direction: number, size = 2, look = {}, turn = 0.3): Element {
  const at = (by: number): PaperPoint => [x - size * Math.cos(direction + by), y - size * Math.sin(direction + by)];
  return polygon([[x, y], at(turn), at(-turn)], look);
}

interface Dimension {
  /** What is dimensioned, metres; undefined for what has no length, such as pixels. */
  readonly metres?: number;
  readonly words: string;
  /** Not drawn to scale: the figure is underlined, as ISO 129-1 asks. */
  readonly broken?: boolean;
  /** Written level, to the left of an upright dimension. */
  readonly beside?: boolean;
  /** Where there is no room between its ends, the figure of a level dimension stands to the left of both. */
  readonly before?: boolean;
  /** Ends of the extension lines at the thing itself. */
  readonly reach?: readonly [number, number];
}

const OVER = 1;
/** A dimension shorter than this has its arrow heads outside. */
const SHORT = 5;

/** From the end of a short dimension to its figure, past the line of the head that points inwards. */
const PAST = 3.5;

/** How far the figure of a short dimension reaches beyond its end. */
export const roomBeyond = (words: string): number => PAST + measure(words, SMALL);

/** Whether a level dimension is so short that its figure stands beyond one of its ends. */
export const isShort = (drawn: number): boolean => drawn < SHORT;

const GAP = 0.8;

const heads = (from: PaperPoint, to: PaperPoint, outside: boolean): Shapes => {
  const direction = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const back = outside ? 0 : Math.PI;
  return [arrowHead(from, direction + back), arrowHead(to, direction + back + Math.PI)];
};

const dimensioned = ({ metres, broken }: Dimension, drawn: number, shapes: Shapes): Element =>
  group(
    {
      className: broken ? "dimension broken" : "dimension",
      ...(metres === undefined ? {} : { dataMetres: metres, dataDrawn: num(drawn) }),
    },
    shapes,
  );

/** A level dimension at the height y from x1 to x2, with its extension lines. */
export function levelDimension(x1: number, x2: number, y: number, dimension: Dimension): Element {
  const { words, broken = false, before = false, reach } = dimension;
  const drawn = Math.abs(x2 - x1);
  const width = measure(words, SMALL);
  const inside = width + 5 <= drawn;
  const extensions = (reach ?? []).map((from, index) => {
    const x = index === 0 ? x1 : x2;
    const down = y > from ? 1 : -1;
    return line([x, from + down * GAP], [x, y + down * OVER]);
  });
  const outside = isShort(drawn);
  const beyond = before ? Math.min(x1, x2) - PAST : Math.max(x1, x2) + PAST;
  const place: PaperPoint = [inside || !outside ? (x1 + x2) / 2 : beyond, y - 0.9];
  return dimensioned(dimension, drawn, [
    ...extensions,
    line(outside ? [x1 - 3, y] : [x1, y], outside ? [x2 + 3, y] : [x2, y], { className: "dimension-line" }),
    ...heads([x1, y], [x2, y], outside),
    lettering(words, place, {
      size: SMALL,
      anchor: !outside ? "middle" : before ? "end" : "start",
      underlined: broken,
    }),
  ]);
}

/** An upright dimension at the place x from y1 (above) to y2; its figure reads from the right. */
export function uprightDimension(x: number, y1: number, y2: number, dimension: Dimension): Element {
  const { words, broken = false, beside = false, reach } = dimension;
  const drawn = Math.abs(y2 - y1);
  const width = measure(words, SMALL);
  const extensions = (reach ?? []).map((from, index) => {
    const y = index === 0 ? y1 : y2;
    const right = x > from ? 1 : -1;
    return line([from + right * GAP, y], [x + right * OVER, y]);
  });
  const outside = isShort(drawn);
  const turned = !beside && drawn >= width + 1;
  const half = (y1 + y2) / 2;
  const middle = turned ? half : aboutMiddle(half);
  const place: PaperPoint = turned ? [x - 0.9, middle] : beside ? [x - 1.8, middle] : [x + 1.5, middle];
  return dimensioned(dimension, drawn, [
    ...extensions,
    line(outside ? [x, y1 - 3] : [x, y1], outside ? [x, y2 + 3] : [x, y2], { className: "dimension-line" }),
    ...heads([x, y1], [x, y2], outside),
    lettering(words, place, {
      size: SMALL,
      anchor: turned ? "middle" : beside ? "end" : "start",
      turned,
      underlined: broken,
    }),
  ]);
}
