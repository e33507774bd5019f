import type { Known } from "@plumbmark/calc";
import type { Bar, Hang } from "@plumbmark/core";
import { type DrawingSubject, SHEET_WIDTH } from "../shared/drawing.js";
import { type Scale, scaleFor } from "../shared/scale.js";

/** What a bar carries, with its place and size known. */
export interface HungFace {
  readonly name: string;
  /** Left edge on the bar, metres. */
  readonly from: number;
  readonly panel: { readonly width: number; readonly height: number };
  /** Panels of every carried column from the left: which rows hold one. */
  readonly columns: readonly (readonly number[])[];
  readonly rows: number;
}

/** The bar on the paper. */
export interface PlotLayout {
  /** How much of the usual height there is for what is drawn, 1 at most. */
  readonly share: number;
  readonly bar: Bar;
  readonly scale: Scale;
  /** Length of the bar, metres. */
  readonly length: number;
  /** Left end of the bar on the paper. */
  readonly left: number;
  /** Place on the bar, metres → place on the paper. */
  readonly x: (metres: number) => number;
  readonly faces: readonly HungFace[];
  /** Hangs whose place is known, from the left. */
  readonly hangs: readonly Hang[];
}

export const LEFT = 24;
const RIGHT = 16;
const DEEPEST = 72;
const HIGHEST = 60;

function hungFaces(bar: Bar): readonly HungFace[] {
  return bar.carries.flatMap(({ face, from, columns }) => {
    const [width, height] = [face.panelValue("size.1", "length", "size"), face.panelValue("size.2", "length", "size")];
    if (!from.known || !width.known || !height.known) return [];
    const rowsOf = (column: number) => face.cells.filter((cell) => cell.column === column).map(({ row }) => row);
    return [
      {
        name: face.name,
        from: from.value,
        panel: { width: width.value, height: height.value },
        columns: columns.map(rowsOf),
        rows: face.rows,
      },
    ];
  });
}

/** How far bridles reach beyond the ends of the bar, and how high. */
function bridleReach(
  bar: Bar,
  length: number,
): { readonly before: number; readonly after: number; readonly rise: number } {
  const legs = bar.hangs.flatMap((hang) =>
    hang.at.known ? hang.legs.map((leg) => ({ leg, at: (hang.at as Known).value })) : [],
  );
  const ends = legs.flatMap(({ leg, at }) =>
    leg.run.known ? [at + (leg.side === "left" ? -1 : 1) * leg.run.value] : [],
  );
  const rises = legs.flatMap(({ leg }) => (leg.rise.known ? [leg.rise.value] : []));
  return {
    before: Math.max(0, ...ends.map((end) => -end)),
    after: Math.max(0, ...ends.map((end) => end - length)),
    rise: Math.max(0, ...rises),
  };
}

/** Undefined when the bar's length is not known: then nothing can be drawn in its place. */
export function plotLayout(bar: Bar, { system }: DrawingSubject, share: number): PlotLayout | undefined {
  if (!bar.length.known || bar.length.value <= 0) return undefined;
  const length = bar.length.value;
  const faces = hungFaces(bar);
  const { before, after, rise } = bridleReach(bar, length);
  const deep = Math.max(0, ...faces.map(({ rows, panel }) => rows * panel.height));
  const room = SHEET_WIDTH - LEFT - RIGHT;
  const tries = [
    scaleFor(length + before + after, room, system),
    scaleFor(Math.max(deep, 1e-3), DEEPEST * share, system),
    scaleFor(Math.max(rise, 1e-3), HIGHEST * share, system),
  ];
  const scale = tries.reduce((a, b) => (b.ratio > a.ratio ? b : a));
  const left = LEFT + scale.mm(before) + (room - scale.mm(length + before + after)) / 2;
  const place = (hang: Hang): number => (hang.at as Known).value;
  const hangs = bar.hangs.filter((hang) => hang.at.known).sort((a, b) => place(a) - place(b));
  return { share, bar, scale, length, left, faces, hangs, x: (metres) => left + scale.mm(metres) };
}
