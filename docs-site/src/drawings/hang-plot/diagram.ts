import { GRAVITY, momentAt, printQuantity, type SolvedBeam, type System, shearAt } from "@plumbmark/calc";
import type { Bar } from "@plumbmark/core";
import { SHEET_WIDTH } from "../shared/drawing.js";
import { hatch } from "../shared/hatch.js";
import { aboutMiddle, LEADING, lettering, measure, onPaper, SMALL, wrapped } from "../shared/lettering.js";
import { FINEST, line, type PaperPoint, path, polyline, type Shapes, WIDE } from "../shared/svg.js";
import { resultText } from "../shared/value-text.js";
import type { PlotLayout } from "./layout.js";
import { caseWords } from "./rows.js";

const HALF = 9;
const LEAST_HALF = 5;

/** Half the height of a diagram. */
const halfOf = ({ share }: PlotLayout): number => Math.max(LEAST_HALF, HALF * share);

const PARTS = 12;

interface Curve {
  readonly name: string;
  /** Place, metres, and value; in order. */
  readonly points: readonly (readonly [number, number])[];
  /** The same at worst, where that is told; it is drawn dashed. */
  readonly worst?: { readonly points: readonly (readonly [number, number])[]; readonly when: string } | undefined;
  readonly print: (value: number) => string;
  /** Sagging moments are drawn below the line, where the bar is stretched. */
  readonly down: boolean;
}

type Stretches = Pick<SolvedBeam, "stretches">;

const momentsOf = ({ stretches }: Stretches): Curve["points"] =>
  stretches.flatMap((each) =>
    Array.from({ length: PARTS + 1 }, (_, index) => {
      const at = each.from + ((each.to - each.from) * index) / PARTS;
      return [at, momentAt(each, at)] as const;
    }),
  );

/** How the bar is bent in the case that governs; nothing where that is the level bar, which is drawn already. */
function worstOf({ cases }: Bar): Curve["worst"] {
  if (!cases.known || cases.bending.when === "") return undefined;
  const { bent, when } = cases.bending;
  return { points: momentsOf(bent), when: caseWords(when) };
}

const curves = (solved: SolvedBeam, bar: Bar, system: System): readonly Curve[] => {
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
      points: momentsOf(solved),
      worst: worstOf(bar),
    },
  ];
};

const greatest = (points: Curve["points"], sign: 1 | -1): readonly [number, number] | undefined => {
  const best = points.reduce((a, b) => (b[1] * sign > a[1] * sign ? b : a), [0, 0] as readonly [number, number]);
  return best[1] * sign > 1e-9 ? best : undefined;
};

function drawn(layout: PlotLayout, { name, points, worst, print, down }: Curve, middle: number): Shapes {
  const most = Math.max(1e-9, ...[...points, ...(worst?.points ?? [])].map(([, value]) => Math.abs(value)));
  const y = (value: number): number => middle + (down ? 1 : -1) * (value / most) * halfOf(layout);
  const way: PaperPoint[] = points.map(([at, value]) => [layout.x(at), y(value)]);
  const [first, last] = [layout.x(0), layout.x(layout.length)];
  // Beside the case that governs the level bar is nearly flat: its figure stands in words below, where it strikes nothing out.
  const [named, data] = worst ? [worst.points, `${name.toLowerCase()}-worst`] : [points, name.toLowerCase()];
  const label = (sign: 1 | -1): Shapes => {
    const at = greatest(named, sign);
    if (!at) return [];
    const words = print(at[1]);
    const width = measure(words, SMALL);
    const below = y(at[1]) > middle;
    const x = Math.min(Math.max(layout.x(at[0]), first + width / 2), last - width / 2);
    const base = y(at[1]) + (below ? 3.2 : -0.9);
    return onPaper(words, [x, base], {
      size: SMALL,
      anchor: "middle",
      data: { dataGreatest: data, dataValue: at[1] },
    });
  };
  const labels = ([1, -1] as const).flatMap(label);
  const area = way.slice(1).flatMap(([x, here], index) => {
    const [before, there] = way[index] as PaperPoint;
    const [top, low] = [Math.min(here, there, middle), Math.max(here, there, middle)];
    // Upright lines of the hatch, each as long as the diagram is high there.
    return x - before > 0.05 && low - top > 0.05 ? [hatchUnder(before, there, x, here, middle)] : [];
  });
  return [
    line([first, middle], [last, middle], { strokeWidth: WIDE }),
    path(area.join(""), { strokeWidth: FINEST }),
    polyline([[first, middle], ...way, [last, middle]]),
    lettering(name, [first - 2, aboutMiddle(middle)], { size: SMALL, bold: true, anchor: "end" }),
    ...(worst
      ? [
          polyline(
            worst.points.map(([at, value]) => [layout.x(at), y(value)]),
            { strokeDasharray: "1.5 1", className: "worst" },
          ),
        ]
      : []),
    ...labels,
  ];
}

/** The moments that are judged, in words under their diagram. */
function momentWords({ bar }: PlotLayout, y: number, system: System): Shapes {
  const { moment, when } = bar.worstMoment;
  const as = when === "" ? "as level" : `${caseWords(when)}, dashed`;
  const words = `Moment level, at most: ${resultText(bar.moment, system)}. At worst (${as}): ${resultText(moment, system)}.`;
  const lines = wrapped(words, SHEET_WIDTH - 4, SMALL);
  const data = {
    ...(bar.moment.known ? { dataMomentLevel: bar.moment.value } : {}),
    ...(moment.known ? { dataMomentWorst: moment.value } : {}),
  };
  return lines.map((each, index) =>
    lettering(each, [2, y + index * LEADING], { size: SMALL, data: index === 0 ? data : {} }),
  );
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

/** Shear and bending moment of the bar, level on all its hangs and the moment at worst too, under the drawing and in line with it. */
export function diagrams(
  layout: PlotLayout,
  y: number,
  system: System,
): { readonly shapes: Shapes; readonly height: number } {
  const { hung } = layout.bar;
  if (!hung.known) return { shapes: [], height: 0 };
  const all = curves(hung.solved, layout.bar, system);
  const half = halfOf(layout);
  const each = 2 * half + 9;
  const words = momentWords(layout, y + all.length * each + 4, system);
  return {
    shapes: [...all.flatMap((curve, index) => drawn(layout, curve, y + index * each + half + 4)), ...words],
    height: all.length * each + 2 + words.length * LEADING,
  };
}
