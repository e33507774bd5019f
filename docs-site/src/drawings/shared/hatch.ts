import { type Box, num } from "./svg.js";

export const HATCHES = ["rising", "falling", "level", "upright", "crossed"] as const;
export type Hatch = (typeof HATCHES)[number];

const along = (from: number, to: number, gap: number): readonly number[] => {
  const first = Math.ceil((from + 1e-6) / gap);
  const last = Math.floor((to - 1e-6) / gap);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * gap);
};

const stroke = (x1: number, y1: number, x2: number, y2: number): string =>
  `M${num(x1)} ${num(y1)}L${num(x2)} ${num(y2)}`;

/** Lines x + y = c, cut off at the edges of the box. */
const rising = ({ x, y, width, height }: Box, gap: number): string[] =>
  along(x + y, x + y + width + height, gap).map((c) => {
    const [left, right] = [Math.max(x, c - y - height), Math.min(x + width, c - y)];
    return stroke(left, c - left, right, c - right);
  });

const falling = ({ x, y, width, height }: Box, gap: number): string[] =>
  along(y - x - width, y - x + height, gap).map((c) => {
    const [left, right] = [Math.max(x, y - c), Math.min(x + width, y + height - c)];
    return stroke(left, left + c, right, right + c);
  });

/** Hatching of a box as the data of one path. Lines lie on one grid of the paper, so that neighbours join. */
export function hatch(box: Box, kind: Hatch, gap = 2.2): string {
  const { x, y, width, height } = box;
  if (kind === "rising") return rising(box, gap).join("");
  if (kind === "falling") return falling(box, gap).join("");
  if (kind === "crossed") return [...rising(box, gap * 1.4), ...falling(box, gap * 1.4)].join("");
  if (kind === "level")
    return along(y, y + height, gap)
      .map((at) => stroke(x, at, x + width, at))
      .join("");
  return along(x, x + width, gap)
    .map((at) => stroke(at, y, at, y + height))
    .join("");
}
