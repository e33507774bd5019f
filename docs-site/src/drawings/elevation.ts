import { printQuantity, type Value } from "@plumbmark/calc";
import type { Face } from "@plumbmark/core";
import { levelDimension, uprightDimension } from "./shared/dimension.js";
import type { Drawing, DrawingSubject } from "./shared/drawing.js";
import { hatch } from "./shared/hatch.js";
import { LEADING, lettering, SMALL, wrapped } from "./shared/lettering.js";
import { type Scale, scaleBar, scaleFor } from "./shared/scale.js";
import { type Box, FINEST, line, type PaperPoint, path, rect, type Shapes, svgShape, WIDE } from "./shared/svg.js";
import { resultText } from "./shared/value-text.js";
import { lowerEdge } from "./sightlines.js";

/** Room for what is drawn to scale, in millimetres of paper. */
const ROOM = { width: 60, height: 78 } as const;
/** Beside and above it, for dimensions. */
const [LEFT, TOP, RIGHT, FOOT] = [5, 11, 16, 17];
const WIDTH = LEFT + ROOM.width + RIGHT;
/** A person for scale, in metres: a figure one compares with, no measure of anybody. */
const PERSON = 1.75;
/** From the middle of the person to the nearest the face comes, in metres. */
const BESIDE = 0.6;
/** Panels smaller than this are not drawn one by one: their lines would run into one another. */
const LEAST = 1.2;

interface Elevated {
  readonly face: Face;
  readonly subject: DrawingSubject;
  readonly width: number;
  readonly height: number;
  /** Over the floor; undefined where nobody wrote it. */
  readonly edge: number | undefined;
}

function measured(subject: DrawingSubject): Elevated | undefined {
  const [face] = subject.build.faces;
  if (!face?.width.known || !face.height.known) return undefined;
  const edge = lowerEdge(face);
  return {
    face,
    subject,
    width: face.width.value,
    height: face.height.value,
    edge: edge.known ? edge.value : undefined,
  };
}

/** What all elevations share: one scale, one floor, one place for the person. */
interface Frame {
  readonly scale: Scale;
  readonly height: number;
  readonly floor: number;
  readonly person: number;
  /** Middle of every face. */
  readonly middle: number;
}

function frameOf(all: readonly Elevated[], system: DrawingSubject["system"]): Frame {
  const wide = Math.max(...all.map(({ width }) => width));
  const tall = Math.max(PERSON, ...all.map(({ edge = 0, height }) => edge + height));
  const across = 2 * BESIDE + wide;
  const [byWidth, byHeight] = [scaleFor(across, ROOM.width, system), scaleFor(tall, ROOM.height, system)];
  const scale = byWidth.ratio > byHeight.ratio ? byWidth : byHeight;
  const floor = TOP + scale.mm(tall);
  const left = LEFT + (ROOM.width - scale.mm(across)) / 2;
  return {
    scale,
    height: floor + FOOT,
    floor,
    person: left + scale.mm(BESIDE / 2),
    middle: left + scale.mm(2 * BESIDE + wide / 2),
  };
}

/** Head, trunk and legs of the person, as plain as can be. */
function personAt([x, floor]: PaperPoint, scale: Scale): Shapes {
  const mm = (share: number): number => scale.mm(PERSON * share);
  const look = { fill: "currentColor", fillOpacity: 0.35, stroke: undefined };
  return [
    svgShape("circle", { cx: x, cy: floor - mm(0.93), r: mm(0.065), ...look }),
    rect({ x: x - mm(0.115), y: floor - mm(0.84), width: mm(0.23), height: mm(0.4) }, { ...look, rx: mm(0.06) }),
    rect({ x: x - mm(0.09), y: floor - mm(0.47), width: mm(0.075), height: mm(0.47) }, look),
    rect({ x: x + mm(0.015), y: floor - mm(0.47), width: mm(0.075), height: mm(0.47) }, look),
  ];
}

const panelsOf = (face: Face, { x, y, width, height }: Box): Shapes => {
  const [across, down] = [width / face.columns, height / face.rows];
  if (Math.min(across, down) < LEAST) return [];
  return face.cells.map(({ row, column }) =>
    rect({ x: x + column * across, y: y + row * down, width: across, height: down }, { strokeWidth: FINEST }),
  );
};

/** Lines of text as bands as high as their capitals. */
function textOn(face: Face, { build, system }: DrawingSubject, scale: Scale, box: Box): Shapes {
  const lines = face.reader.data(`${face.path}.text.lines`);
  const cap: Value | undefined = build.valueAt(`viewing.${face.name}.cap-height`);
  if (typeof lines !== "number" || lines < 1 || lines > 40 || !cap?.known) return [];
  const pitch = box.height / lines;
  const high = scale.mm(cap.value);
  return Array.from({ length: lines }, (_, index) => {
    const y = box.y + index * pitch + (pitch - high) / 2;
    return rect(
      { x: box.x + box.width * 0.03, y, width: box.width * 0.94, height: high },
      {
        fill: "currentColor",
        fillOpacity: 0.3,
        stroke: undefined,
        dataCapital: printQuantity(cap.value, "length", system),
      },
    );
  });
}

function drawn({ face, subject, width, height, edge }: Elevated, frame: Frame): Drawing {
  const { system } = subject;
  const { scale, floor, middle } = frame;
  const [wide, high] = [scale.mm(width), scale.mm(height)];
  const bottom = floor - scale.mm(edge ?? 0);
  const box = { x: middle - wide / 2, y: bottom - high, width: wide, height: high };
  const words = (value: Value): string => resultText(value, system);
  const ground = { x: LEFT - 2, y: floor, width: ROOM.width + 4, height: 1.6 };
  const person = `The figure is ${printQuantity(PERSON, "length", system)} tall, for scale.`;
  const over = edge === undefined ? ["How high it hangs or stands is not said; it is drawn on the floor."] : [];
  const notes = [person, ...over].flatMap((each) => wrapped(each, WIDTH - LEFT - 2, SMALL));
  return {
    name: `elevation-${face.name}`,
    title: "Seen from the audience",
    description: `${face.columns} × ${face.rows} panels, ${words(face.width)} wide and ${words(face.height)} high, ${edge === undefined ? "at a height that is not said" : `its lower edge ${words(lowerEdge(face))} over the floor`}. A figure ${printQuantity(PERSON, "length", system)} tall stands beside it. Scale 1:${scale.ratio}.`,
    width: WIDTH,
    height: frame.height + (notes.length - 1) * LEADING,
    shapes: [
      ...personAt([frame.person, floor], scale),
      rect(box, { fill: "currentColor", fillOpacity: 0.08, stroke: undefined }),
      ...panelsOf(face, box),
      ...textOn(face, subject, scale, box),
      rect(box, { strokeWidth: WIDE, dataWidth: width, dataHeight: height }),
      levelDimension(box.x, box.x + wide, box.y - 4, {
        metres: width,
        words: words(face.width),
        reach: [box.y, box.y],
      }),
      uprightDimension(box.x + wide + 5, box.y, bottom, {
        metres: height,
        words: words(face.height),
        reach: [box.x + wide, box.x + wide],
      }),
      ...(edge === undefined || edge <= 0
        ? []
        : [
            uprightDimension(box.x + wide + 5, bottom, floor, {
              metres: edge,
              words: words(lowerEdge(face)),
              reach: [box.x + wide, box.x + wide],
            }),
          ]),
      line([ground.x, floor], [ground.x + ground.width, floor], { strokeWidth: WIDE }),
      path(hatch(ground, "rising", 2.6), { strokeWidth: FINEST }),
      scaleBar(scale, [LEFT, floor + 7.5]),
      ...notes.map((each, index) => lettering(each, [LEFT - 2, floor + 13 + index * LEADING], { size: SMALL })),
    ],
  };
}

/**
 * The face of each build from the audience with the floor and a person, all to one scale and over one floor, so that
 * they can be compared side by side; undefined for one whose size is not known.
 */
export function elevationsOf(subjects: readonly DrawingSubject[]): readonly (Drawing | undefined)[] {
  const all = subjects.map(measured);
  const known = all.filter((each) => each !== undefined);
  const [first] = known;
  if (!first) return all.map(() => undefined);
  const frame = frameOf(known, first.subject.system);
  return all.map((each) => each && drawn(each, frame));
}
