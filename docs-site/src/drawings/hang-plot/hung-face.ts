import { counted, type Value } from "@plumbmark/calc";
import { isShort, levelDimension, roomBeyond, uprightDimension } from "../shared/dimension.js";
import type { DrawingSubject } from "../shared/drawing.js";
import { hatch } from "../shared/hatch.js";
import { lettering, measure, SMALL } from "../shared/lettering.js";
import { type Box, FINEST, group, line, path, rect, type Shapes, WIDE } from "../shared/svg.js";
import { UNWRITTEN, writtenText } from "../shared/value-text.js";
import type { HungFace, PlotLayout } from "./layout.js";
import { breakAt } from "./supports.js";

/** From the bar down to the face: the length of a hook is not part of the document. */
const HOOK = 3.5;

/** A cell that is left out. */
const crossed = ({ x, y, width, height }: Box): Shapes => [
  line([x, y], [x + width, y + height], { strokeWidth: FINEST }),
  line([x + width, y], [x, y + height], { strokeWidth: FINEST }),
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
      : rows.map((row) => rect({ x: left(column), y: top + row * height, width, height }, { strokeWidth: FINEST })),
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

/** The dimension of the trim stands so far to the left of everything, and of what is written there. */
const BESIDE = 8;

/**
 * The floor people walk on, as far below as there is room, and the trim over it.
 * @param room taken to the left of the bar
 */
function floor(
  layout: PlotLayout,
  trim: Value,
  edge: number,
  from: number,
  room: number,
  { system }: DrawingSubject,
): Below {
  const left = Math.min(layout.left, ...layout.faces.map((face) => layout.x(face.from)));
  const x = Math.min(left - BESIDE, layout.x(0) - room - 1);
  const right = layout.x(layout.length);
  const scaled = trim.known ? layout.scale.mm(trim.value) : 0;
  const broken = !trim.known || scaled > 45 || edge + scaled < from;
  const y = broken ? Math.max(edge + 14, from) : edge + scaled;
  const ground = { x: x - 4, y, width: right - x + 10, height: 2.2 };
  return {
    bottom: y + 6,
    shapes: [
      line([ground.x, y], [ground.x + ground.width, y], { strokeWidth: WIDE }),
      path(hatch(ground, "rising", 2.6), { strokeWidth: FINEST }),
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

const wideOf = ({ columns, panel }: HungFace): number => columns.length * panel.width;

/** The dimensions of the faces under a bar, and of where the first begins; the room they take to the left of the bar. */
function faceDimensions(layout: PlotLayout, y: number, edge: number, { system }: DrawingSubject) {
  const { faces, scale } = layout;
  const [first] = layout.bar.carries;
  const wordsOf = (face: HungFace): string => writtenText(counted(wideOf(face), "columns", "length"), system);
  const shapes = faces.map((face) =>
    levelDimension(layout.x(face.from), layout.x(face.from + wideOf(face)), y, {
      metres: wideOf(face),
      words: wordsOf(face),
      reach: [edge, edge],
    }),
  );
  const [face] = faces;
  if (!face || !first || face.from <= 1e-6) return { shapes, room: 0 };
  const words = writtenText(first.from, system);
  const beyond = roomBeyond(words);
  const free = (scale.mm(wideOf(face)) - measure(wordsOf(face), SMALL)) / 2;
  // Its figure stands over the face, unless the figure of the face is there.
  const before = isShort(scale.mm(face.from)) && beyond + 1 > free;
  const from = levelDimension(layout.x(0), layout.x(face.from), y, { metres: face.from, words, before });
  return { shapes: [...shapes, from], room: before ? beyond : 0 };
}

/** Everything below the bar: faces, their place on the bar, the bar's length, and the floor. */
export function belowBar(layout: PlotLayout, bar: number, subject: DrawingSubject): Below {
  const { faces, scale, length } = layout;
  const { system } = subject;
  const depth = Math.max(0, ...faces.map(({ rows, panel }) => scale.mm(rows * panel.height)));
  const edge = bar + HOOK + depth;
  const { shapes: dims, room } = faceDimensions(layout, edge + 6, edge, subject);
  const whole = levelDimension(layout.x(0), layout.x(length), edge + 13, {
    metres: length,
    words: `bar ${writtenText(layout.bar.length, system)}`,
    reach: [bar + 1, bar + 1],
  });
  const trims = [...new Map(layout.bar.carries.map(({ face }) => [face.name, face])).values()];
  const trim = trims[0]?.reader.value(`${trims[0].path}.trim`, "length", "trim", trims[0].label);
  const ground = trim ? floor(layout, trim, edge, edge + 17, room, subject) : { shapes: [], bottom: edge + 16 };
  return {
    shapes: [
      ...faces.flatMap((face) => outline(layout, face, bar)),
      group({ className: "dims" }, [...dims, whole]),
      ...ground.shapes,
    ],
    bottom: ground.bottom,
  };
}
