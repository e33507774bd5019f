import type { Value } from "@plumbmark/calc";
import { levelDimension, uprightDimension } from "../shared/dimension.js";
import type { DrawingSubject } from "../shared/drawing.js";
import { hatch } from "../shared/hatch.js";
import { lettering, SMALL } from "../shared/lettering.js";
import { type Box, group, line, path, rect, type Shapes, WIDE } from "../shared/svg.js";
import { UNWRITTEN, writtenText } from "../shared/value-text.js";
import type { HungFace, PlotLayout } from "./layout.js";
import { breakAt } from "./supports.js";

/** From the bar down to the face: the length of a hook is not part of the document. */
const HOOK = 3.5;

/** A cell that is left out. */
const crossed = ({ x, y, width, height }: Box): Shapes => [
  line([x, y], [x + width, y + height], { strokeWidth: 0.15 }),
  line([x + width, y], [x, y + height], { strokeWidth: 0.15 }),
];

function outline(layout: PlotLayout, face: HungFace, bar: number): Shapes {
  const { scale } = layout;
  const [width, height] = [scale.mm(face.panel.width), scale.mm(face.panel.height)];
  const top = bar + HOOK;
  const fine = Math.min(width, height) < 2.5;
  const left = (column: number): number => layout.x(face.from) + column * width;
  const cells = face.columns.flatMap((rows, column) =>
    fine
      ? []
      : rows.map((row) => rect({ x: left(column), y: top + row * height, width, height }, { strokeWidth: 0.15 })),
  );
  const all = Array.from({ length: face.rows }, (_, row) => row);
  const absent = face.columns.flatMap((rows, column) =>
    fine
      ? []
      : all
          .filter((row) => !rows.includes(row))
          .flatMap((row) => crossed({ x: left(column), y: top + row * height, width, height })),
  );
  const whole = { x: left(0), y: top, width: width * face.columns.length, height: height * face.rows };
  const hooks = face.columns.map((_, column) => line([left(column) + width / 2, bar], [left(column) + width / 2, top]));
  return [
    ...(fine ? [] : hooks),
    ...cells,
    ...absent,
    rect(whole, { strokeWidth: WIDE }),
    ...(whole.width > 20 && whole.height > 5
      ? [lettering(face.name, [whole.x + 1.5, whole.y + whole.height - 1.5], { size: SMALL })]
      : []),
  ];
}

interface Below {
  readonly shapes: Shapes;
  readonly bottom: number;
}

/** The floor people walk on, as far below as there is room, and the trim over it. */
function floor(layout: PlotLayout, trim: Value, edge: number, from: number, { system }: DrawingSubject): Below {
  const left = Math.min(layout.left, ...layout.faces.map((face) => layout.x(face.from)));
  const right = layout.x(layout.length);
  const scaled = trim.known ? layout.scale.mm(trim.value) : 0;
  const broken = !trim.known || scaled > 45 || edge + scaled < from;
  const y = broken ? Math.max(edge + 14, from) : edge + scaled;
  const ground = { x: left - 12, y, width: right - left + 18, height: 2.2 };
  const x = left - 8;
  return {
    bottom: y + 6,
    shapes: [
      line([ground.x, y], [ground.x + ground.width, y], { strokeWidth: WIDE }),
      path(hatch(ground, "rising", 2.6), { strokeWidth: 0.15 }),
      ...(trim.known
        ? [
            uprightDimension(x, edge, y, {
              metres: trim.value,
              words: writtenText(trim, system),
              broken,
              beside: true,
              reach: [left, left],
            }),
          ]
        : []),
      ...(trim.known && broken ? [breakAt([x, y - 6])] : []),
      lettering(trim.known ? "floor" : `floor; trim ${UNWRITTEN}`, [ground.x, y + 5.4], { size: SMALL }),
    ],
  };
}

/** Everything below the bar: faces, their place on the bar, the bar's length, and the floor. */
export function belowBar(layout: PlotLayout, bar: number, subject: DrawingSubject): Below {
  const { faces, scale, length } = layout;
  const { system } = subject;
  const depth = Math.max(0, ...faces.map(({ rows, panel }) => scale.mm(rows * panel.height)));
  const edge = bar + HOOK + depth;
  const dims = faces.flatMap((face, index): Shapes => {
    const wide = face.columns.length * face.panel.width;
    const y = edge + 6;
    const carried = layout.bar.carries[index];
    return [
      levelDimension(layout.x(face.from), layout.x(face.from + wide), y, {
        metres: wide,
        words: writtenText({ known: true, value: wide, kind: "length", origin: { from: "counted", what: "" } }, system),
        reach: [edge, edge],
      }),
      ...(index === 0 && carried && face.from > 1e-6
        ? [
            levelDimension(layout.x(0), layout.x(face.from), y, {
              metres: face.from,
              words: writtenText(carried.from, system),
            }),
          ]
        : []),
    ];
  });
  const whole = levelDimension(layout.x(0), layout.x(length), edge + 13, {
    metres: length,
    words: `bar ${writtenText(layout.bar.length, system)}`,
    reach: [bar + 1, bar + 1],
  });
  const trims = [...new Map(layout.bar.carries.map(({ face }) => [face.name, face])).values()];
  const trim = trims[0]?.reader.value(`${trims[0].path}.trim`, "length", "trim", trims[0].label);
  const ground = trim ? floor(layout, trim, edge, edge + 17, subject) : { shapes: [], bottom: edge + 16 };
  return {
    shapes: [
      ...faces.flatMap((face) => outline(layout, face, bar)),
      group({ className: "dims" }, [...dims, whole]),
      ...ground.shapes,
    ],
    bottom: ground.bottom,
  };
}
