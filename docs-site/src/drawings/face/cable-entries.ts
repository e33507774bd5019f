import type { Cell } from "@plumbmark/core";
import { arrowHead } from "../shared/dimension.js";
import { aboutMiddle, fitted, LEADING, MIDDLE, onPaper, SMALL } from "../shared/lettering.js";
import { lineLook, series } from "../shared/series.js";
import { group, lineUpTo, type PaperPoint, polyline, type Shapes } from "../shared/svg.js";
import type { Strand } from "./strand.js";
import { lineWeight, type View } from "./view.js";

export type Side = "left" | "right" | "above" | "below";

/** A cable that reaches the face from outside, or leaves it. */
export interface CableEntry {
  readonly strand: Strand;
  readonly cell: Cell;
  readonly side: Side;
  readonly words: readonly string[];
  readonly outward: boolean;
}

/** Width of the lettering beside the face, millimetres. */
export const TAG = 30;
const HIGH = 8;
const SIDES: readonly Side[] = ["left", "above", "right", "below"];
/** On a drawing for a narrow screen nothing is written beside the face. */
const STACKED: readonly Side[] = ["above", "below"];

type Seen = Pick<View, "face" | "rear"> & { readonly compact?: boolean };

/** How many panels lie between a cell and each side, as the view shows it. */
function depths({ face, rear }: Pick<View, "face" | "rear">, { row, column }: Cell): Readonly<Record<Side, number>> {
  const fromLeft = rear ? face.columns - 1 - column : column;
  return { left: fromLeft, right: face.columns - 1 - fromLeft, above: row, below: face.rows - 1 - row };
}

/** The side in line with the next panel, seen from this one. */
function away(rear: boolean, cell: Cell, next: Cell | undefined): Side {
  if (!next) return "left";
  const across = (next.column - cell.column) * (rear ? -1 : 1);
  if (across !== 0) return across > 0 ? "left" : "right";
  return next.row > cell.row ? "above" : "below";
}

/** Over as few other panels as can be; of equal ways the one in line with the run. */
function sideOf(view: Seen, cell: Cell, next: Cell | undefined, not?: Side): Side {
  const depth = depths(view, cell);
  const wanted = away(view.rear, cell, next);
  const rank = (side: Side): number => depth[side] * 10 + (side === wanted ? 0 : 1) + (side === not ? 5 : 0);
  return (view.compact ? STACKED : SIDES).toSorted((a, b) => rank(a) - rank(b))[0] as Side;
}

/** Where every run or chain goes in, and where a loop comes out again. */
export function cableEntries(view: Seen, strands: readonly Strand[]): readonly CableEntry[] {
  return strands.flatMap((strand): readonly CableEntry[] => {
    const { cells, enters, returns } = strand;
    const [first, last] = [cells?.[0], cells?.at(-1)];
    if (!cells || !first || !last) return [];
    const side = sideOf(view, first, cells[1]);
    const own: CableEntry = { strand, cell: first, side, words: enters, outward: false };
    if (!returns) return [own];
    const out = sideOf(view, last, cells.at(-2), cells.length === 1 ? side : undefined);
    return [own, { strand, cell: last, side: out, words: returns, outward: true }];
  });
}

/** Places moved apart until they are `gap` from one another, in order, none before `least`, and none past `most` that can be helped. */
export function spread(places: readonly number[], gap: number, least: number, most = Infinity): readonly number[] {
  const order = places.map((place, index) => ({ place, index })).sort((a, b) => a.place - b.place || a.index - b.index);
  const moved = new Array<number>(places.length);
  let last = least - gap;
  for (const { place, index } of order) {
    last = Math.max(place, last + gap);
    moved[index] = last;
  }
  let next = most + gap;
  for (const { index } of order.toReversed()) {
    next = Math.max(least, Math.min(moved[index] as number, next - gap));
    moved[index] = next;
  }
  return moved;
}

/** Above and below, tags stand side by side; at the sides one under another. */
const upright = (side: Side): boolean => side === "left" || side === "right";

function edge({ outline }: View, side: Side, [x, y]: PaperPoint, beyond: number): PaperPoint {
  if (side === "left") return [outline.x - beyond, y];
  if (side === "right") return [outline.x + outline.width + beyond, y];
  return side === "above" ? [x, outline.y - beyond] : [x, outline.y + outline.height + beyond];
}

/** One line of a tag. */
function tagLine(words: string, index: number, [x, y]: PaperPoint, anchor: "start" | "middle" | "end"): Shapes {
  const size = index === 0 ? MIDDLE : SMALL;
  return onPaper(fitted(words, TAG - 5, size), [x, y + index * LEADING], { size, bold: index === 0, anchor });
}

function drawn(view: View, entry: CableEntry, along: number, lines: number): Shapes {
  const { strand, cell, side, words, outward } = entry;
  const centre = view.centre(cell);
  const look = {
    ...lineLook(series(strand.number)),
    strokeWidth: lineUpTo(0.7 * lineWeight(view)),
    ...(outward ? { strokeDasharray: "0.8 1.6" } : {}),
  };
  // As much of it is straight as its head is long: a head over a bend points nowhere.
  const near = edge(view, side, centre, 3.4);
  const far = edge(view, side, upright(side) ? [0, along] : [along, 0], 6);
  const way = outward ? [centre, near, far] : [far, near, centre];
  const tip = outward ? far : edge(view, side, centre, 0);
  const before = outward ? near : far;
  const [x, y] = far;
  const anchor = side === "left" ? "end" : side === "right" ? "start" : "middle";
  const at: PaperPoint =
    side === "left"
      ? [x - 1, aboutMiddle(y)]
      : side === "right"
        ? [x + 1, aboutMiddle(y)]
        : side === "above"
          ? [x, y - 1 - (lines - 1) * LEADING]
          : [x, y + 3.4];
  const marks = { [outward ? "dataLeaves" : "dataEnters"]: strand.name };
  return [
    group({ className: `entry ${look.className}`, ...marks }, [
      polyline(way, { ...look, className: `way ${look.className}` }),
      arrowHead(
        tip,
        Math.atan2(tip[1] - before[1], tip[0] - before[0]),
        3.2 * lineWeight(view),
        { fill: look.stroke, className: look.className },
        0.42,
      ),
    ]),
    ...words.slice(0, lines).flatMap((each, index) => tagLine(each, index, at, anchor)),
  ];
}

/** How many cables of one side can be named there. */
const MOST: Readonly<Record<Side, number>> = { left: 34, right: 34, above: 4, below: 4 };

/** Whether a side has more cables than can be named there. */
export const tooMany = (entries: readonly CableEntry[], side: Side): boolean =>
  entries.filter((each) => each.side === side).length > MOST[side];

/** The entries of one side with their tags; `unnamed` when there are too many to name. */
export function entrySide(
  view: View,
  entries: readonly CableEntry[],
  side: Side,
  paper = Number.POSITIVE_INFINITY,
): { readonly shapes: Shapes; readonly reach: number; readonly unnamed: boolean } {
  const own = entries.filter((each) => each.side === side);
  const unnamed = tooMany(entries, side);
  const ways = own.map(({ cell }) => view.centre(cell)[upright(side) ? 1 : 0]);
  const high = upright(side) ? (own.length * HIGH <= Math.max(view.outline.height, 60) ? HIGH : 4) : TAG;
  const lines = unnamed ? 0 : high === 4 ? 1 : 2;
  const half = Number.isFinite(paper) ? TAG / 2 - 1 : 0;
  const least = upright(side) ? view.outline.y : Math.max(view.outline.x, half);
  const places = unnamed ? ways : spread(ways, high, half > 0 ? half : least, upright(side) ? Infinity : paper - half);
  const shapes = own.flatMap((entry, index) => drawn(view, entry, places[index] as number, lines));
  return { shapes, unnamed, reach: Math.max(0, ...places.map((each) => each + (unnamed ? 0 : 4))) };
}
