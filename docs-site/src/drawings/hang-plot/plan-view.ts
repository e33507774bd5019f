import { printer, type Value } from "@plumbmark/calc";
import type { Bar } from "@plumbmark/core";
import { type Drawing, type DrawingSubject, SHEET_WIDTH } from "../shared/drawing.js";
import { drawingHeading } from "../shared/heading.js";
import { lettering, SMALL } from "../shared/lettering.js";
import { scaleBar, scaleFor, scaleText } from "../shared/scale.js";
import { line, rect, type Shapes } from "../shared/svg.js";

const MARGIN = 12;

/** Where a bar and its hangs are along the structure above it, from the end at the audience's left. */
interface Placed {
  readonly length: number;
  readonly bar: readonly [number, number];
  readonly hangs: readonly { readonly name: string; readonly point: string; readonly at: number }[];
}

function placedOf(bar: Bar): Placed | undefined {
  const { planPlace: place } = bar;
  if (!place?.structure.known || !place.left.known || !bar.length.known) return undefined;
  const start = place.left.value;
  return {
    length: place.structure.value,
    bar: [start, start + bar.length.value],
    hangs: bar.hangs.flatMap((hang) =>
      hang.at.known ? [{ name: hang.name, point: hang.point?.point ?? "", at: start + hang.at.value }] : [],
    ),
  };
}

/** The structure a bar hangs under and the bar below it, seen from above; undefined where its place is not known. */
export function planView(bar: Bar, { system }: DrawingSubject): Drawing | undefined {
  const placed = placedOf(bar);
  const { under } = bar;
  if (!placed || under === undefined) return undefined;
  const scale = scaleFor(placed.length, SHEET_WIDTH - 2 * MARGIN, system);
  const print = printer(system);
  const words = (metres: number): string => print(metres, "length" satisfies Value["kind"]);
  const x = (metres: number): number => MARGIN + scale.mm(metres);
  const title = `Bar ${bar.name}: place under ${under}`;
  const head = drawingHeading(
    title,
    [
      `Seen from above, the audience below. Places from the end of ${under} at the audience's left. ${scaleText(scale)}.`,
    ],
    SHEET_WIDTH,
  );
  const y = head.height + 12;
  const rows = placed.hangs.map((hang, index) => ({ ...hang, row: y + 16 + index * 5 }));
  const bottom = y + 18 + rows.length * 5;
  const shapes: Shapes = [
    rect({ x: x(0), y: y - 2.5, width: scale.mm(placed.length), height: 5 }, { dataStructure: under }),
    lettering(under, [x(0), y - 4], { size: SMALL }),
    line([x(placed.bar[0]), y], [x(placed.bar[1]), y], { strokeWidth: 1, dataBar: bar.name }),
    lettering(`bar ${bar.name}, from ${words(placed.bar[0])} to ${words(placed.bar[1])}`, [x(0), y + 8], {
      size: SMALL,
    }),
    ...rows.flatMap(({ name, point, at, row }) => [
      rect({ x: x(at) - 1, y: y - 1, width: 2, height: 2 }, { fill: "#fff", dataHang: name }),
      line([x(at), y + 2.5], [x(at), row - 3.5]),
      lettering(`${name}${point === "" ? "" : ` at ${point}`}: ${words(at)}`, [x(at), row], {
        size: SMALL,
        anchor: at > placed.length / 2 ? "end" : "start",
      }),
    ]),
    scaleBar(scale, [SHEET_WIDTH - 62, bottom]),
  ];
  const told = placed.hangs.map(
    ({ name, point, at }) => `hang ${name}${point === "" ? "" : ` at point ${point}`} ${words(at)}`,
  );
  return {
    name: `hang-plan-${bar.name}`,
    title,
    description: `The structure ${under} of ${words(placed.length)} from above, with bar ${bar.name} below it from ${words(placed.bar[0])} to ${words(placed.bar[1])} from its end at the audience's left: ${told.join("; ")}.`,
    width: SHEET_WIDTH,
    height: bottom + 3,
    shapes: [...head.shapes, ...shapes],
  };
}
