import { acuityDistance, guessMark, type Known, printQuantity, unitByCode, type Value } from "@plumbmark/calc";
import type { Face } from "@plumbmark/core";
import { levelDimension, uprightDimension } from "./shared/dimension.js";
import { type Drawing, type DrawingSubject, SHEET_WIDTH } from "./shared/drawing.js";
import { hatch } from "./shared/hatch.js";
import { drawingHeading, notes } from "./shared/heading.js";
import { LEADING, lettering, MIDDLE, SMALL } from "./shared/lettering.js";
import { type Scale, scaleBar, scaleFor, scaleText } from "./shared/scale.js";
import { FINEST, line, type PaperPoint, path, rect, type Shapes, svgShape, WIDE } from "./shared/svg.js";
import { gapNotes, resultText, UNTOLD, UNWRITTEN, writtenText } from "./shared/value-text.js";

const LEFT = 27;
const RIGHT = 11;

interface Section {
  readonly scale: Scale;
  readonly floor: number;
  /** Heights over the floor, metres. */
  readonly edge: number;
  readonly top: number;
  readonly eye: number | undefined;
}

/** Height of the lower edge over the floor people walk on. */
export function lowerEdge(face: Face): Value {
  const flown = face.support === "flown";
  return face.reader.value(
    `${face.path}.${flown ? "trim" : "height-above"}`,
    "length",
    flown ? "trim" : "height of the lower edge above the floor",
    face.label,
  );
}

/** Degrees above the level of the eye, down negative. */
const elevation = (height: number, eye: number, distance: number): string => {
  const degrees = (Math.atan2(height - eye, distance) * 180) / Math.PI;
  return `${Math.abs(degrees).toFixed(1)}° ${degrees < 0 ? "down" : "up"}`;
};

const arcMinutes = (angle: Value): string =>
  angle.known
    ? `${printQuantity(angle.value, "angle", "metric", unitByCode("angle", "'"), 3)}${guessMark(angle)}`
    : UNTOLD;

/** A viewer: a mark on the floor, and an eye where its height is written down. */
function viewer(name: string, distance: number, { scale, floor, edge, top, eye }: Section, lower = 0): Shapes {
  const x = LEFT + scale.mm(distance);
  const foot: Shapes = [
    line([x, floor - 2.4], [x, floor + 1], { strokeWidth: WIDE }),
    lettering(name, [x, floor + 6 + lower], {
      size: SMALL,
      anchor: "middle",
      bold: true,
      data: { dataViewer: name, dataDistance: distance },
    }),
  ];
  if (eye === undefined) return foot;
  const at: PaperPoint = [x, floor - scale.mm(eye)];
  const [low, high]: [PaperPoint, PaperPoint] = [
    [LEFT, floor - scale.mm(edge)],
    [LEFT, floor - scale.mm(top)],
  ];
  return [
    ...foot,
    line([x, floor], at),
    svgShape("circle", { cx: at[0], cy: at[1], r: 1, fill: "currentColor" }),
    line(at, low, { strokeDasharray: "2 1", className: "sight" }),
    line(at, high, { strokeDasharray: "2 1", className: "sight" }),
  ];
}

function facts(face: Face, { build, system }: DrawingSubject, section: Section | undefined): readonly string[] {
  const { nearest, farthest } = build.viewing;
  const acuity = acuityDistance.of({ p: face.pitch });
  const letters = build.lettering.filter((each) => each.face === face);
  const eye = section?.eye;
  const angles = [
    ["nearest", nearest],
    ["farthest", farthest],
  ] as const;
  return [
    ...(section && eye !== undefined
      ? angles.flatMap(([name, at]) =>
          at.known
            ? [
                `From the eye of the ${name} viewer the lower edge is ${elevation(section.edge, eye, at.value)}, the upper ${elevation(section.top, eye, at.value)}.`,
              ]
            : [],
        )
      : [`Height of the viewers' eyes ${UNWRITTEN}: no sight line is drawn, and no angle of elevation told.`]),
    `Pitch ${resultText(face.pitch, system)}: single pixels can be told from nearer than ${resultText(acuity, system)} (one arc-minute).`,
    ...letters.map(
      (each) =>
        `Capitals are ${resultText(each.capHeight, system)} high and fill ${arcMinutes(each.angle)} at the eye of the farthest viewer.`,
    ),
  ];
}

function drawn(face: Face, section: Section, { build, system }: DrawingSubject): Shapes {
  const { scale, floor, edge, top } = section;
  const { nearest, farthest } = build.viewing;
  const y = (height: number): number => floor - scale.mm(height);
  const right = LEFT + scale.mm((farthest as Known).value);
  const ground = { x: LEFT - 8, y: floor, width: right - LEFT + 16, height: 2 };
  const near = nearest.known && nearest.value < (farthest as Known).value ? nearest : undefined;
  return [
    line([ground.x, floor], [ground.x + ground.width, floor], { strokeWidth: WIDE }),
    path(hatch(ground, "rising", 2.6), { strokeWidth: FINEST }),
    rect(
      { x: LEFT - 1, y: y(top), width: 1, height: Math.max(scale.mm(top - edge), 0.3) },
      { fill: "currentColor", className: "face", dataEdge: edge },
    ),
    lettering(face.name, [LEFT + 1.5, y(top) - 1.5], { size: MIDDLE, bold: true }),
    ...(edge > 0
      ? [
          uprightDimension(LEFT - 10, y(edge), floor, {
            metres: edge,
            words: writtenText(lowerEdge(face), system),
            beside: true,
            reach: [LEFT - 2, LEFT - 9],
          }),
        ]
      : []),
    ...(near ? viewer("nearest", near.value, section) : []),
    ...viewer(
      "farthest",
      (farthest as Known).value,
      section,
      near && right - LEFT - scale.mm(near.value) < 22 ? LEADING : 0,
    ),
    ...(near
      ? [
          levelDimension(LEFT, LEFT + scale.mm(near.value), floor + 15, {
            metres: near.value,
            words: writtenText(near, system),
            reach: [floor + 3, floor + 7],
          }),
        ]
      : []),
    levelDimension(LEFT, right, floor + 20.5, {
      metres: (farthest as Known).value,
      words: writtenText(farthest, system),
      reach: [floor + 3, floor + 11],
    }),
  ];
}

/** The section, or nothing when a height or the farthest distance is not known. */
function sectionOf(face: Face, { build, system }: DrawingSubject, head: number): Section | undefined {
  const { farthest } = build.viewing;
  const edge = lowerEdge(face);
  if (!farthest.known || !edge.known || !face.height.known) return undefined;
  const eye = build.reader.quantities.get("audience.eye-height")?.value;
  const top = edge.value + face.height.value;
  const scale = scaleFor(farthest.value, SHEET_WIDTH - LEFT - RIGHT, system);
  return { scale, edge: edge.value, top, eye, floor: head + 8 + scale.mm(Math.max(top, eye ?? 0)) };
}

/** A face from the side with the nearest and the farthest viewer. */
export function sightlines(face: Face, subject: DrawingSubject): Drawing {
  const { build, system } = subject;
  const title = `Face ${face.name}: sightlines`;
  const { nearest, farthest } = build.viewing;
  const edge = lowerEdge(face);
  const guess = sectionOf(face, subject, 0);
  const top = drawingHeading(
    title,
    [
      guess
        ? `Section seen from the side, the audience at the right. ${scaleText(guess.scale)}.`
        : "Not drawn: a distance or a height is missing.",
    ],
    SHEET_WIDTH,
  );
  const section = sectionOf(face, subject, top.height);
  const low = section ? section.floor + 29 : top.height + 2;
  const words = [...facts(face, subject, section), ...gapNotes([nearest, farthest, edge, face.height])];
  const foot = notes(words, 2, low, SHEET_WIDTH - 4);
  return {
    name: `sightlines-${face.name}`,
    title,
    description: `Lower edge ${writtenText(edge, system)} over the floor; nearest viewer ${writtenText(nearest, system)}, farthest ${writtenText(farthest, system)} away. ${words.join(" ")}`,
    width: SHEET_WIDTH,
    height: low + 3 + foot.height,
    shapes: [
      ...top.shapes,
      ...(section ? [...drawn(face, section, subject), scaleBar(section.scale, [SHEET_WIDTH - 62, low - 2])] : []),
      ...foot.shapes,
    ],
  };
}
