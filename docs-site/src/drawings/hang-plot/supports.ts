import type { Known, System } from "@plumbmark/calc";
import type { Hang } from "@plumbmark/core";
import type { Element } from "hast";
import { arrowHead } from "../shared/dimension.js";
import { SHEET_WIDTH } from "../shared/drawing.js";
import { hatch } from "../shared/hatch.js";
import { aboutMiddle, LEADING, lettering, MIDDLE, measure, onPaper, SMALL } from "../shared/lettering.js";
import {
  FINEST,
  group,
  line,
  NARROW,
  type PaperPoint,
  path,
  polyline,
  type Shapes,
  svgShape,
  WIDE,
} from "../shared/svg.js";
import { lengthText, resultText, writtenInFeet, writtenText } from "../shared/value-text.js";
import type { PlotLayout } from "./layout.js";

/** Length of a plumb drop on the paper: its own is not part of the document, so it is broken. */
export const DROP = 20;
/** From the apex of a bridle down to the bar, broken likewise. */
const BELOW_APEX = 10;

/** The structure, hatched as fixed things are. */
function structure([x, y]: PaperPoint): Shapes {
  const box = { x: x - 4, y: y - 2.2, width: 8, height: 2.2 };
  return [
    line([x - 4, y], [x + 4, y], { strokeWidth: WIDE }),
    path(hatch(box, "rising", 1.4), { strokeWidth: FINEST }),
  ];
}

/** A short break across a line whose length is not drawn. */
export const breakAt = ([x, y]: PaperPoint): Element =>
  path(`M${x - 1.6} ${y + 0.9}l1.1 -1.8l1 1.8l1.1 -1.8`, { strokeWidth: NARROW, className: "break" });

function plumb(x: number, bar: number, slack: boolean): Shapes {
  const look = { strokeWidth: WIDE, ...(slack ? { strokeDasharray: "1.5 1.5" } : {}) };
  return [...structure([x, bar - DROP]), line([x, bar - DROP], [x, bar], look), breakAt([x, bar - 6.5])];
}

/** From a leg to its figure, and how high the letters of a figure are. */
const OFF = 1.5;
const HIGH = 0.75 * SMALL;

/**
 * Where the figure of a leg begins or ends, below and outside of the middle of it: however flat it lies, the leg, which
 * bears the load, is drawn whole.
 */
function beside(apex: PaperPoint, end: PaperPoint, way: number): PaperPoint {
  const [across, up] = [end[0] - apex[0], apex[1] - end[1]];
  const long = Math.hypot(across, up);
  const [x, y] = [(apex[0] + end[0]) / 2, (apex[1] + end[1]) / 2];
  return [x + (way * OFF * up) / long, y + (OFF * Math.abs(across)) / long + HIGH];
}

function legs(layout: PlotLayout, hang: Hang, x: number, bar: number, system: System): Shapes {
  const apex: PaperPoint = [x, bar - BELOW_APEX];
  return [
    line(apex, [x, bar], { strokeWidth: WIDE }),
    breakAt([x, bar - 2.6]),
    svgShape("circle", { cx: apex[0], cy: apex[1], r: 0.9, fill: "currentColor" }),
    ...hang.legs.flatMap((leg): Shapes => {
      const way = leg.side === "left" ? -1 : 1;
      if (!leg.rise.known || !leg.run.known) return [];
      const end: PaperPoint = [x + way * layout.scale.mm(leg.run.value), apex[1] - layout.scale.mm(leg.rise.value)];
      const middle = beside(apex, end, way);
      const words = resultText(leg.angle, system);
      const marks = { dataLeg: `${hang.name} ${leg.side}`, dataRise: leg.rise.value, dataRun: leg.run.value };
      return [
        ...structure(end),
        group(marks, [line(apex, end, { strokeWidth: WIDE })]),
        ...onPaper(words, middle, { size: SMALL, anchor: way < 0 ? "end" : "start" }),
      ];
    }),
  ];
}

/** Highest point of a hang above the bar, millimetres. */
export function heightOf(layout: PlotLayout): number {
  const rises = layout.hangs.flatMap((hang) =>
    hang.legs.map((leg) => (leg.rise.known ? layout.scale.mm(leg.rise.value) + BELOW_APEX : 0)),
  );
  return Math.max(DROP, ...rises);
}

export const isSlack = ({ reaction }: Hang): boolean => reaction.known && reaction.value === 0;

/** Where there is room for what a hang carries; where there is none, the table alone tells it. */
function sideFor(layout: PlotLayout, hang: Hang, width: number): "left" | "right" | "none" {
  const index = layout.hangs.indexOf(hang);
  const x = (each: Hang | undefined, otherwise: number): number =>
    each ? layout.x((each.at as Known).value) : otherwise;
  const here = x(hang, 0);
  if (x(layout.hangs[index + 1], SHEET_WIDTH) - here >= width) return "right";
  const before = here - x(layout.hangs[index - 1], width - 2);
  return before >= 2 * width ? "left" : "none";
}

/** What a hang carries, level and at worst (`≤`): the two figures the rules judge. Alike ones stand once. */
function loadLines(hang: Hang, system: System): readonly { readonly words: string; readonly data: Data }[] {
  const { reaction } = hang.worst;
  const level = isSlack(hang) ? "slack" : resultText(hang.level, system);
  const worst = resultText(reaction, system);
  const data: Data = hang.level.known ? { dataReaction: hang.level.value } : {};
  const most: Data = reaction.known ? { dataReactionWorst: reaction.value } : {};
  return level === worst
    ? [{ words: level, data: { ...data, ...most } }]
    : [
        { words: level, data },
        { words: `≤ ${worst}`, data: most },
      ];
}

type Data = Readonly<Record<string, number>>;

/** A hang with its name and what it carries. */
export function support(layout: PlotLayout, hang: Hang, bar: number, system: System): Element {
  const x = layout.x((hang.at as Known).value);
  const lines = loadLines(hang, system);
  const width = Math.max(...lines.map(({ words }) => measure(words, SMALL)));
  const side = sideFor(layout, hang, width + 3);
  const at = x + (side === "left" ? -1.6 : 1.6);
  const anchor = side === "left" ? "end" : "start";
  const below = hang.bridled ? BELOW_APEX - 2 : DROP - 5;
  return group({ dataHang: hang.name, dataAt: (hang.at as Known).value }, [
    ...(hang.bridled ? legs(layout, hang, x, bar, system) : plumb(x, bar, isSlack(hang))),
    arrowHead([x, bar - (hang.bridled ? 1 : 3)], -Math.PI / 2, 2.4),
    ...onPaper(hang.name, [at, bar - below], { size: MIDDLE, bold: true, anchor }),
    ...(side === "none"
      ? []
      : [
          ...lines.flatMap(({ words, data }, index) => {
            const base = bar - below + (index + 1) * LEADING;
            return onPaper(words, [at, base], { size: SMALL, anchor, data });
          }),
        ]),
  ]);
}

/** From which end of the bar places are read: at the audience's left, or at its right. */
export type BarEnd = "left" | "right";

/** How far a hang is from an end of the bar, in words; as its author wrote it where it is written from that end. */
export function placeFrom(layout: PlotLayout, hang: Hang, end: BarEnd, system: System): string {
  const at = (hang.at as Known).value;
  return end === "left" ? writtenText(hang.at, system) : lengthText(layout.length - at, system, isFeet(layout, hang));
}

const isFeet = ({ bar }: PlotLayout, hang: Hang): boolean => [bar.length, hang.at].some(writtenInFeet);

/** Between figures in one line. */
const APART = 2;

/** How many lines above the first a figure stands so that it runs into none before it: as few as can be. */
export function levelsOf(layout: PlotLayout, system: System, end: BarEnd): ReadonlyMap<Hang, number> {
  const taken: { readonly from: number; readonly to: number }[][] = [];
  const levelOf = (hang: Hang): number => {
    const x = layout.x((hang.at as Known).value);
    const half = (measure(placeFrom(layout, hang, end, system), SMALL) + APART) / 2;
    const own = { from: x - half, to: x + half };
    const free = taken.findIndex((line) => line.every((each) => each.to <= own.from || own.to <= each.from));
    const level = free < 0 ? taken.push([]) - 1 : free;
    taken[level]?.push(own);
    return level;
  };
  return new Map(layout.hangs.map((hang) => [hang, levelOf(hang)]));
}

/** Places of the hangs in running dimensions from one end of the bar, as ISO 129-1 has them. */
export function places(layout: PlotLayout, y: number, bar: number, system: System, end: BarEnd = "left"): Shapes {
  const { left: first, length, x: place, hangs } = layout;
  const origin = end === "left" ? first : place(length);
  const last = end === "left" ? hangs.at(-1) : hangs[0];
  if (!last) return [];
  const levels = levelsOf(layout, system, end);
  const marks = hangs.flatMap((hang): Shapes => {
    const at = hang.at as Known;
    const x = place(at.value);
    const metres = end === "left" ? at.value : length - at.value;
    return [
      line([x, y - 1], [x, end === "left" ? bar - heightOfHang(hang) - 3 : y + 2], { strokeWidth: FINEST }),
      arrowHead([x, y], end === "left" ? 0 : Math.PI, 2),
      group(
        {
          className: "running",
          dataMetres: String(metres),
          dataDrawn: Math.round(Math.abs(x - origin) * 100) / 100,
          dataFrom: end,
        },
        [
          lettering(placeFrom(layout, hang, end, system), [x, y - 1.3 - (levels.get(hang) ?? 0) * LEADING], {
            size: SMALL,
            anchor: "middle",
          }),
        ],
      ),
    ];
  });
  const outward = end === "left" ? -1 : 1;
  return [
    polyline([
      [origin, y],
      [place((last.at as Known).value), y],
    ]),
    svgShape("circle", { cx: origin, cy: y, r: 0.9, fill: "none", stroke: "currentColor", strokeWidth: NARROW }),
    line([origin, y + 0.9], [origin, bar - 1], { strokeWidth: FINEST }),
    lettering("0", [origin + outward * 1.6, aboutMiddle(y)], { size: SMALL, anchor: end === "left" ? "end" : "start" }),
    ...marks,
  ];
}

const heightOfHang = (hang: Hang): number => (hang.bridled ? BELOW_APEX : DROP);
