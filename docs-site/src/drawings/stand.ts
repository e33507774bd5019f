import type { Known, Value } from "@plumbmark/calc";
import type { Face } from "@plumbmark/core";
import { levelDimension, uprightDimension } from "./shared/dimension.js";
import { type Drawing, type DrawingSubject, failureNotes, SHEET_WIDTH } from "./shared/drawing.js";
import { hatch } from "./shared/hatch.js";
import { drawingHeading, notes } from "./shared/heading.js";
import { aboutMiddle, lettering, SMALL } from "./shared/lettering.js";
import { type Scale, scaleBar, scaleFor, scaleText } from "./shared/scale.js";
import { FINEST, line, path, rect, type Shapes, WIDE } from "./shared/svg.js";
import { gapNotes, resultText, UNWRITTEN, writtenText } from "./shared/value-text.js";
import { lowerEdge } from "./sightlines.js";

const LEFT = 60;
const DEEPEST = 70;
const HIGHEST = 95;
/** The base on the paper: its own height is not part of the document. */
const BASE = 4;

interface Measures {
  readonly depth: Known;
  readonly toe: Value;
  readonly arm: Value;
  readonly height: Known;
}

const written = (face: Face, key: string, what: string): Value =>
  face.reader.value(`${face.path}.base.${key}`, "length", what, `The base of face ${face.name}`);

function measuresOf(face: Face): Measures | undefined {
  const depth = written(face, "depth", "depth of the base");
  const { height } = face;
  if (!depth.known || !height.known) return undefined;
  const toe = written(face, "toe", "distance of the panels' centre from the toe");
  return { depth, height, toe, arm: written(face, "ballast-arm", "distance of the ballast from the toe") };
}

function place(
  value: Value,
  words: string,
  scale: Scale,
  y: number,
  down: number,
  system: DrawingSubject["system"],
): Shapes {
  if (!value.known) return [];
  const x = LEFT + scale.mm(value.value);
  return [
    levelDimension(LEFT, x, y + down, { metres: value.value, words: writtenText(value, system) }),
    line([x, y + 3], [x, y + down + 1], { strokeWidth: FINEST }),
    lettering(words, [LEFT - 4, aboutMiddle(y + down)], { size: SMALL, anchor: "end" }),
  ];
}

function drawn(
  face: Face,
  { depth, toe, arm, height }: Measures,
  scale: Scale,
  top: number,
  { system }: DrawingSubject,
): Shapes {
  const foot = top + scale.mm(height.value);
  const ground = foot + BASE;
  const right = LEFT + scale.mm(depth.value);
  const thick = face.panelValue("depth", "length", "depth of the panel");
  const wide = thick.known ? Math.max(scale.mm(thick.value), 1) : 1;
  const middle = toe.known ? LEFT + scale.mm(toe.value) : undefined;
  const ballast = arm.known ? LEFT + scale.mm(arm.value) : undefined;
  return [
    rect({ x: LEFT, y: foot, width: right - LEFT, height: BASE }, { strokeWidth: WIDE, className: "base" }),
    ...(middle === undefined
      ? []
      : [
          rect(
            { x: middle - wide / 2, y: top, width: wide, height: foot - top },
            { strokeWidth: WIDE, className: "face" },
          ),
          path(hatch({ x: middle - wide / 2, y: top, width: wide, height: foot - top }, "rising", 1.6), {
            strokeWidth: FINEST,
          }),
          uprightDimension(LEFT - 10, top, foot, {
            metres: height.value,
            words: writtenText(height, system),
            beside: true,
            reach: [middle, LEFT],
          }),
        ]),
    ...(ballast === undefined
      ? []
      : [
          rect({ x: ballast - 4, y: foot - 6, width: 8, height: 6 }, { strokeWidth: WIDE }),
          path(hatch({ x: ballast - 4, y: foot - 6, width: 8, height: 6 }, "crossed", 1.4), { strokeWidth: FINEST }),
          lettering("ballast", [ballast + 6, foot - 2], { size: SMALL }),
        ]),
    line([LEFT - 14, ground], [right + 20, ground], { strokeWidth: WIDE }),
    // Ballast at the wrong side of a face does not hold it, and a side view is easily taken for its mirror image.
    lettering("◂ audience", [LEFT - 16, ground + 1], { size: SMALL, anchor: "end" }),
    lettering("behind ▸", [right + 22, ground + 1], { size: SMALL }),
    path(hatch({ x: LEFT - 14, y: ground, width: right - LEFT + 34, height: 2 }, "rising", 2.4), {
      strokeWidth: FINEST,
    }),
    ...place(toe, "toe to the panels' centre", scale, ground, 8, system),
    ...place(arm, "toe to the ballast", scale, ground, 14, system),
    ...place(depth, "depth of the base", scale, ground, 20, system),
    line([LEFT, ground + 3], [LEFT, ground + 21], { strokeWidth: FINEST }),
  ];
}

function facts(face: Face, { build, system }: DrawingSubject): readonly string[] {
  const { reader } = build;
  const base = `${face.path}.base`;
  const mass = (key: string): string => writtenText(reader.value(`${base}.${key}`, "mass", key, ""), system);
  const stand = face.stand;
  const fixed = reader.text(`${base}.fixed-to`);
  const feet = reader.data(`${base}.feet.count`);
  const print = reader.text(`${base}.deck.footprint`) ?? UNWRITTEN;
  return [
    `Lower edge over the floor: ${writtenText(lowerEdge(face), system)}. Base ${mass("mass")}, ballast ${mass("ballast")}, panels and extras ${resultText(face.mass, system)}; together ${stand ? resultText(stand.mass, system) : UNWRITTEN}.`,
    `On the deck, over ${print}: ${stand ? resultText(stand.pressure, system) : UNWRITTEN}; the deck is rated ${stand ? writtenText(stand.deckRating, system) : UNWRITTEN}. Feet: ${typeof feet === "number" ? feet : UNWRITTEN}.`,
    ...(fixed ? [`Fixed: ${fixed}.`] : []),
    "The base is drawn with its true depth, not its true height; the ballast in its place, not in its size.",
  ];
}

/** A standing face from the side, with its base and ballast; undefined for a face that does not stand. */
export function standDrawing(face: Face, subject: DrawingSubject): Drawing | undefined {
  if (!face.stand) return undefined;
  const { system } = subject;
  const measures = measuresOf(face);
  const title = `Face ${face.name}: base and ballast`;
  const tries = measures
    ? [scaleFor(measures.depth.value, DEEPEST, system), scaleFor(measures.height.value, HIGHEST, system)]
    : [];
  const scale = tries.reduce<Scale | undefined>((a, b) => (a && a.ratio > b.ratio ? a : b), undefined);
  const below = scale
    ? `Seen from the side, the audience at the left. The toe is the edge of the base on the audience's side; places are from there. ${scaleText(scale)}.`
    : "Not drawn: depth of the base or size of the panel is missing.";
  const top = drawingHeading(title, [below], SHEET_WIDTH);
  const start = top.height + 4;
  const low = measures && scale ? start + scale.mm(measures.height.value) + BASE + 24 : start;
  const gaps = gapNotes([
    written(face, "depth", "depth of the base"),
    written(face, "toe", "distance of the panels' centre from the toe"),
    written(face, "ballast-arm", "distance of the ballast from the toe"),
  ]);
  const words = [...failureNotes(subject, [face]), ...facts(face, subject), ...gaps];
  const foot = notes(words, 2, low + 6, SHEET_WIDTH - 4);
  return {
    name: `stand-${face.name}`,
    title,
    description: words.join(" "),
    width: SHEET_WIDTH,
    height: low + 9 + foot.height,
    shapes: [
      ...top.shapes,
      ...(measures && scale
        ? [...drawn(face, measures, scale, start, subject), scaleBar(scale, [SHEET_WIDTH - 62, low + 3])]
        : []),
      ...foot.shapes,
    ],
  };
}
