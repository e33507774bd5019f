import { GRAVITY, momentAt, printQuantity, type SolvedBeam, type System, shearAt } from "@plumbmark/calc";
import { hatch } from "../shared/hatch.js";
import { lettering, measure, SMALL } from "../shared/lettering.js";
import { line, type PaperPoint, paper, path, polyline, type Shapes, WIDE } from "../shared/svg.js";
import type { PlotLayout } from "./layout.js";

const HALF = 9;
const PARTS = 12;

interface Curve {
  readonly name: string;
  /** Place, metres, and value; in order. */
  readonly points: readonly (readonly [number, number])[];
  readonly print: (value: number) => string;
  /** Sagging moments are drawn below the line, where the bar is stretched. */
  readonly down: boolean;
}

const curves = (solved: SolvedBeam, system: System): readonly Curve[] => {
  const mass = (value: number): string => printQuantity(Math.abs(value), "mass", system, undefined, 3);
  return [
    {
      name: "Shear",
      down: false,
      print: mass,
      points: solved.stretches.flatMap((each) => [
        [each.from, shearAt(each, each.from)] as const,
        [each.to, shearAt(each, each.to)] as const,
      ]),
    },
    {
      name: "Moment",
      down: true,
      print: (value) => printQuantity(Math.abs(value) * GRAVITY, "moment", system, undefined, 3),
      points: solved.stretches.flatMap((each) =>
        Array.from({ length: PARTS + 1 }, (_, index) => {
          const at = each.from + ((each.to - each.from) * index) / PARTS;
          return [at, momentAt(each, at)] as const;
        }),
      ),
    },
  ];
};

const greatest = (points: Curve["points"], sign: 1 | -1): readonly [number, number] | undefined => {
  const best = points.reduce((a, b) => (b[1] * sign > a[1] * sign ? b : a), [0, 0] as readonly [number, number]);
  return best[1] * sign > 1e-9 ? best : undefined;
};

function drawn(layout: PlotLayout, { name, points, print, down }: Curve, middle: number): Shapes {
  const most = Math.max(1e-9, ...points.map(([, value]) => Math.abs(value)));
  const y = (value: number): number => middle + (down ? 1 : -1) * (value / most) * HALF;
  const way: PaperPoint[] = points.map(([at, value]) => [layout.x(at), y(value)]);
  const [first, last] = [layout.x(0), layout.x(layout.length)];
  const labels = ([1, -1] as const).flatMap((sign): Shapes => {
    const at = greatest(points, sign);
    if (!at) return [];
    const words = print(at[1]);
    const width = measure(words, SMALL);
    const below = y(at[1]) > middle;
    const x = Math.min(Math.max(layout.x(at[0]), first + width / 2), last - width / 2);
    const base = y(at[1]) + (below ? 3.2 : -0.9);
    return [
      paper({ x: x - width / 2 - 0.3, y: base - SMALL * 0.85, width: width + 0.6, height: SMALL * 1.05 }),
      lettering(words, [x, base], {
        size: SMALL,
        anchor: "middle",
        data: { dataGreatest: name.toLowerCase(), dataValue: at[1] },
      }),
    ];
  });
  const area = way.slice(1).flatMap(([x, here], index) => {
    const [before, there] = way[index] as PaperPoint;
    const [top, low] = [Math.min(here, there, middle), Math.max(here, there, middle)];
    // Upright lines of the hatch, each as long as the diagram is high there.
    return x - before > 0.05 && low - top > 0.05 ? [hatchUnder(before, there, x, here, middle)] : [];
  });
  return [
    line([first, middle], [last, middle], { strokeWidth: WIDE }),
    path(area.join(""), { strokeWidth: 0.15 }),
    polyline([[first, middle], ...way, [last, middle]]),
    lettering(name, [2, middle + 1], { size: SMALL, bold: true }),
    ...labels,
  ];
}

function hatchUnder(x1: number, y1: number, x2: number, y2: number, middle: number): string {
  const strokes = hatch({ x: x1, y: 0, width: x2 - x1, height: 1 }, "upright", 1.6);
  return [...strokes.matchAll(/M([\d.-]+)/gu)]
    .map(([, at]) => {
      const x = Number(at);
      const y = y1 + ((y2 - y1) * (x - x1)) / (x2 - x1);
      return `M${x} ${middle}L${x} ${Math.round(y * 100) / 100}`;
    })
    .join("");
}

/** Shear and bending moment of the bar, level on all its hangs, under the drawing and in line with it. */
export function diagrams(
  layout: PlotLayout,
  y: number,
  system: System,
): { readonly shapes: Shapes; readonly height: number } {
  const { hung } = layout.bar;
  if (!hung.known) return { shapes: [], height: 0 };
  const all = curves(hung.solved, system);
  const each = 2 * HALF + 9;
  return {
    shapes: all.flatMap((curve, index) => drawn(layout, curve, y + index * each + HALF + 4)),
    height: all.length * each + 2,
  };
}
