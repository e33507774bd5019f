import type { Known, System } from "@plumbmark/calc";
import type { Hang } from "@plumbmark/core";
import type { Element } from "hast";
import { arrowHead } from "../shared/dimension.js";
import { SHEET_WIDTH } from "../shared/drawing.js";
import { hatch } from "../shared/hatch.js";
import { lettering, MIDDLE, measure, SMALL } from "../shared/lettering.js";
import {
  group,
  line,
  NARROW,
  type PaperPoint,
  paper,
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
const BELOW_APEX = 9;

/** The structure, hatched as fixed things are. */
function structure([x, y]: PaperPoint): Shapes {
  const box = { x: x - 4, y: y - 2.2, width: 8, height: 2.2 };
  return [line([x - 4, y], [x + 4, y], { strokeWidth: WIDE }), path(hatch(box, "rising", 1.4), { strokeWidth: 0.15 })];
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
      const wide = measure(words, SMALL);
      const marks = { dataLeg: `${hang.name} ${leg.side}`, dataRise: leg.rise.value, dataRun: leg.run.value };
      return [
        ...structure(end),
        group(marks, [line(apex, end, { strokeWidth: WIDE })]),
        clear(way < 0 ? middle[0] - wide : middle[0], middle[1], wide, SMALL),
        lettering(words, middle, { size: SMALL, anchor: way < 0 ? "end" : "start" }),
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

/** Paper behind lettering: lines that come down from the places above would strike it out. */
const clear = (left: number, base: number, width: number, size: number): Element =>
  paper({ x: left - 0.3, y: base - size * 0.85, width: width + 0.6, height: size * 1.1 });

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
  const named = measure(hang.name, MIDDLE, true);
  const leftOf = (wide: number): number => (side === "left" ? at - wide : at);
  return group({ dataHang: hang.name, dataAt: (hang.at as Known).value }, [
    ...(hang.bridled ? legs(layout, hang, x, bar, system) : plumb(x, bar, isSlack(hang))),
    arrowHead([x, bar - (hang.bridled ? 1 : 3)], -Math.PI / 2, 2.4),
    clear(leftOf(named), bar - below, named, MIDDLE),
    lettering(hang.name, [at, bar - below], { size: MIDDLE, bold: true, anchor }),
    ...(side === "none"
      ? []
      : [
          ...lines.flatMap(({ words, data }, index) => {
            const base = bar - below + 3.6 + index * 3.4;
            const wide = measure(words, SMALL);
            return [
              clear(leftOf(wide), base, wide, SMALL),
              lettering(words, [at, base], { size: SMALL, anchor, data }),
            ];
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

/** Places of the hangs in running dimensions from one end of the bar, as ISO 129-1 has them. */
export function places(layout: PlotLayout, y: number, bar: number, system: System, end: BarEnd = "left"): Shapes {
  const { left: first, length, x: place } = layout;
  const origin = end === "left" ? first : place(length);
  const hangs = end === "left" ? layout.hangs : layout.hangs.toReversed();
  const last = hangs.at(-1);
  if (!last) return [];
  let [reach, raised] = [Infinity, 0];
  const marks = hangs.flatMap((hang): Shapes => {
    const at = hang.at as Known;
    const x = place(at.value);
    raised = Math.abs(x - reach) < 19 && raised === 0 ? 1 : 0;
    reach = x;
    const metres = end === "left" ? at.value : length - at.value;
    return [
      line([x, y - 1], [x, end === "left" ? bar - heightOfHang(hang) - 3 : y + 2], { strokeWidth: 0.15 }),
      arrowHead([x, y], end === "left" ? 0 : Math.PI, 2),
      group(
        {
          className: "running",
          dataMetres: String(metres),
          dataDrawn: Math.round(Math.abs(x - origin) * 100) / 100,
          dataFrom: end,
        },
        [
          lettering(placeFrom(layout, hang, end, system), [x, y - 1.3 - raised * 3.4], {
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
    line([origin, y + 0.9], [origin, bar - 1], { strokeWidth: 0.15 }),
    lettering("0", [origin + outward * 1.6, y + 1], { size: SMALL, anchor: end === "left" ? "end" : "start" }),
    ...marks,
  ];
}

const heightOfHang = (hang: Hang): number => (hang.bridled ? BELOW_APEX : DROP);
