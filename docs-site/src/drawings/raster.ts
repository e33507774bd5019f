import { overlap, type Rectangle } from "@plumbmark/calc";
import type { Build } from "@plumbmark/core";
import { levelDimension, uprightDimension } from "./shared/dimension.js";
import { type Drawing, type DrawingSubject, SHEET_WIDTH } from "./shared/drawing.js";
import { hatch } from "./shared/hatch.js";
import { drawingHeading, notes } from "./shared/heading.js";
import { aboutMiddle, lettering, measure, onPaper, SMALL } from "./shared/lettering.js";
import { series } from "./shared/series.js";
import { type Box, FINEST, group, line, NARROW, path, rect, type Shapes, svgShape, WIDE } from "./shared/svg.js";
import { drawnTable } from "./shared/table.js";
import { gapNotes, UNWRITTEN } from "./shared/value-text.js";

type Placement = Build["picture"]["placements"][number];
type Part = Placement["parts"][number];

/** A part with the number of its face, which gives it its colour. */
interface Piece {
  readonly part: Part;
  readonly face: number;
}

const piecesOf = (placements: readonly Placement[]): readonly Piece[] =>
  placements.flatMap(({ parts }, face) => parts.map((part) => ({ part, face })));

const LEFT = 18;
const HIGHEST = 110;

interface Ground {
  readonly x: number;
  readonly y: number;
  /** Millimetres of paper for one pixel. */
  readonly per: number;
}

const boxOfPixels = ({ x, y, per }: Ground, pixels: Rectangle): Box => ({
  x: x + pixels.x * per,
  y: y + pixels.y * per,
  width: pixels.width * per,
  height: pixels.height * per,
});

/** Number and name of a part in its rectangle; the number alone, beside it, where that is too small. */
function number(box: Box, sign: string, part: Part): Shapes {
  const room = (words: string): boolean => box.width > measure(words, SMALL, true) + 2 && box.height > SMALL + 1.5;
  const words = [part.name, part.words ?? part.name].map((each) => `${sign} ${each}`).find(room) ?? sign;
  const fits = room(words);
  const x = fits ? box.x + 1 : box.x + box.width + 1;
  const y = fits ? box.y + SMALL + 0.6 : box.y + Math.min(box.height, SMALL) + 0.4;
  return onPaper(words, [x, y], { size: SMALL, bold: true });
}

/** Numbers of those that take the very same pixels, told once, at the first of them: a copy lies on what it repeats. */
function signAt(pieces: readonly Piece[], index: number): string | undefined {
  const boxOf = ({ part: { rectangle: box } }: Piece): string =>
    box ? [box.x, box.y, box.width, box.height].join() : "";
  const own = boxOf(pieces[index] as Piece);
  const same = pieces.flatMap((each, at) => (boxOf(each) === own ? [at] : []));
  return same[0] === index ? same.map((at) => at + 1).join(", ") : undefined;
}

function placed(ground: Ground, { part, face }: Piece, sign: string | undefined): Shapes {
  const { rectangle, placement } = part;
  if (!rectangle) return [];
  const box = boxOfPixels(ground, rectangle);
  const { colour, className, hatch: kind } = series(face);
  const marks = {
    dataFace: placement.face.name,
    dataX: rectangle.x,
    dataY: rectangle.y,
    dataWidth: rectangle.width,
    dataHeight: rectangle.height,
  };
  const dashes = placement.copyOf ? { strokeDasharray: "3 1.5" } : {};
  return [
    group(marks, [
      path(hatch(box, kind, 2.6), { stroke: colour, strokeWidth: FINEST, className: `hatch ${className}` }),
      rect(box, { stroke: colour, className, strokeWidth: 0.7, ...dashes }),
    ]),
    ...(sign === undefined ? [] : number(box, sign, part)),
  ];
}

/** Where two faces, or two parts of one, lie over one another without saying so. */
function collisions(ground: Ground, pieces: readonly Piece[]): Shapes {
  return pieces.flatMap(({ part: one }, index) =>
    pieces.slice(0, index).flatMap(({ part: other }) => {
      const shared =
        one.rectangle && other.rectangle && !one.placement.isRepeat(other.placement)
          ? overlap(one.rectangle, other.rectangle)
          : undefined;
      if (!shared) return [];
      const box = boxOfPixels(ground, shared);
      const [first, second] = [other.placement.face.name, one.placement.face.name];
      return [
        path(hatch(box, "crossed", 1.2), { strokeWidth: NARROW, className: "overlap" }),
        rect(box, { strokeWidth: WIDE, dataOverlap: `${first} ${second}` }),
      ];
    }),
  );
}

const NOT_TOLD = "cannot be told";

function how({ placement }: Part): string {
  const { copyOf, scaled, isFolded } = placement;
  if (copyOf) return `copy of ${copyOf}`;
  return scaled ? "scaled, not one to one" : isFolded ? "folded, one to one" : "one to one";
}

/** First pixel of a part within its face. */
const onFace = ({ left, top }: Part): string => (left.known && top.known ? `${left.value}, ${top.value}` : NOT_TOLD);

const rows = (pieces: readonly Piece[], isFolded: boolean) =>
  pieces.map(({ part }, index) => {
    const { corner, rectangle: box } = part;
    return [
      { words: String(index + 1) },
      { words: part.name },
      ...(isFolded ? [{ words: onFace(part) }] : []),
      {
        words: corner ? `${corner.x}, ${corner.y}` : UNWRITTEN,
        data: corner ? { dataCorner: `${corner.x},${corner.y}` } : {},
      },
      { words: box ? `${box.width} × ${box.height}` : NOT_TOLD },
      { words: box ? `${box.x + box.width - 1}, ${box.y + box.height - 1}` : NOT_TOLD },
      { words: how(part) },
    ];
  });

/** Origin and the way pixels are counted: across and down. */
const origin = ({ x, y }: Ground): Shapes => [
  svgShape("circle", { cx: x, cy: y, r: 1.1, fill: "none", stroke: "currentColor", strokeWidth: 0.35 }),
  lettering("0,0", [x - 1.6, aboutMiddle(y)], { size: SMALL, anchor: "end" }),
];

function picture(
  raster: { readonly width: number; readonly height: number },
  ground: Ground,
  pieces: readonly Piece[],
): Shapes {
  const whole = boxOfPixels(ground, { x: 0, y: 0, ...raster });
  const [right, bottom] = [whole.x + whole.width, whole.y + whole.height];
  return [
    rect(whole, { strokeWidth: WIDE, className: "raster", dataRaster: `${raster.width}x${raster.height}` }),
    ...pieces.flatMap((each, index) => placed(ground, each, signAt(pieces, index))),
    ...collisions(ground, pieces),
    ...origin(ground),
    line([whole.x, whole.y - 3], [whole.x, whole.y - 8], { strokeWidth: FINEST }),
    line([right, whole.y - 1], [right, whole.y - 8], { strokeWidth: FINEST }),
    levelDimension(whole.x, right, whole.y - 6, { words: `${raster.width} pixels across` }),
    uprightDimension(whole.x - 10, whole.y, bottom, {
      words: `${raster.height} pixels down`,
      reach: [whole.x - 8, whole.x - 1],
    }),
  ];
}

/** How far the drawing reaches: the raster, and faces that lie beyond it. */
function reach(raster: { readonly width: number; readonly height: number }, pieces: readonly Piece[]) {
  const boxes = pieces.flatMap(({ part: { rectangle } }) => (rectangle ? [rectangle] : []));
  return {
    width: Math.max(raster.width, ...boxes.map((each) => each.x + each.width)),
    height: Math.max(raster.height, ...boxes.map((each) => each.y + each.height)),
  };
}

/** Of a folded face: that its picture has to be cut, and what is in no part. */
function foldedNotes({ isFolded, face, parts, coverage }: Placement): readonly string[] {
  if (!isFolded) return [];
  const cut = `Face ${face.name} is folded: its picture is cut into ${parts.length} parts, each from its upper left pixel on the face to the one on the raster.`;
  return [cut, ...(coverage.leftOut.count > 0 ? [`No part has ${coverage.leftOut.words} of face ${face.name}.`] : [])];
}

/** Where every face takes its pixels from. Undefined when the build has no picture. */
export function rasterDrawing({ build }: DrawingSubject): Drawing | undefined {
  const { width, height, placements } = build.picture;
  if (build.reader.data("picture") === undefined || placements.length === 0) return undefined;
  const raster = width.known && height.known ? { width: width.value, height: height.value } : undefined;
  const title = "Place of every face on the raster";
  const below = raster
    ? [
        "Pixels are counted from the upper left corner, across and down, as the audience sees the picture: stage left is at the right.",
      ]
    : ["Not drawn: the raster is not written down."];
  const top = drawingHeading(title, below, SHEET_WIDTH);
  const pieces = piecesOf(placements);
  const isFolded = placements.some((each) => each.isFolded);
  const all = raster && reach(raster, pieces);
  const per = all ? Math.min((SHEET_WIDTH - LEFT - 10) / all.width, HIGHEST / all.height) : 0;
  const ground: Ground = { x: LEFT, y: top.height + 13, per };
  const drawn = raster ? picture(raster, ground, pieces) : [];
  const low = all ? ground.y + all.height * per + 5 : top.height + 2;
  const list = drawnTable(
    ["No.", "Face", ...(isFolded ? ["On the face"] : []), "Upper left", "Pixels", "Lower right", "How"],
    rows(pieces, isFolded),
    [2, low],
    SHEET_WIDTH - 4,
  );
  const outside = pieces.filter(
    ({ part: { rectangle: box } }) =>
      raster && box && (box.x + box.width > raster.width || box.y + box.height > raster.height),
  );
  const words = [
    ...placements.flatMap(foldedNotes),
    ...outside.map(({ part }) => `${part.label} reaches beyond the raster.`),
    ...gapNotes([width, height, ...pieces.flatMap(({ part }) => [part.right, part.bottom])]),
  ];
  const foot = notes(words, 2, low + list.height, SHEET_WIDTH - 4);
  return {
    name: "raster",
    title,
    description:
      pieces
        .map(({ part: { label, rectangle: box } }) =>
          box
            ? `${label}: ${box.width} by ${box.height} pixels, its upper left pixel at ${box.x},${box.y}`
            : `${label}: place or size not written down`,
        )
        .join(". ") + `. The raster: ${raster ? `${raster.width} by ${raster.height} pixels` : UNWRITTEN}.`,
    width: SHEET_WIDTH,
    height: low + list.height + foot.height + 2,
    shapes: [...top.shapes, ...drawn, ...list.shapes, ...foot.shapes],
  };
}
