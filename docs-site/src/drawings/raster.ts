import { overlap, type Rectangle } from "@plumbmark/calc";
import type { Build } from "@plumbmark/core";
import { levelDimension, uprightDimension } from "./shared/dimension.js";
import { type Drawing, type DrawingSubject, SHEET_WIDTH } from "./shared/drawing.js";
import { hatch } from "./shared/hatch.js";
import { drawingHeading, notes } from "./shared/heading.js";
import { lettering, measure, SMALL } from "./shared/lettering.js";
import { series } from "./shared/series.js";
import { type Box, group, line, paper, path, rect, type Shapes, svgShape, WIDE } from "./shared/svg.js";
import { drawnTable } from "./shared/table.js";
import { gapNotes, UNWRITTEN } from "./shared/value-text.js";

type Placement = Build["picture"]["placements"][number];

const LEFT = 18;
const HIGHEST = 110;

interface Ground {
  readonly x: number;
  readonly y: number;
  /** Millimetres of paper for one pixel. */
  readonly per: number;
}

const onPaper = ({ x, y, per }: Ground, pixels: Rectangle): Box => ({
  x: x + pixels.x * per,
  y: y + pixels.y * per,
  width: pixels.width * per,
  height: pixels.height * per,
});

/** Number and name of a face in its rectangle; the number alone, beside it, where that is too small. */
function number(box: Box, sign: string, name: string): Shapes {
  const room = (words: string): boolean => box.width > measure(words, SMALL, true) + 2 && box.height > SMALL + 1.5;
  const words = room(`${sign} ${name}`) ? `${sign} ${name}` : sign;
  const width = measure(words, SMALL, true) + 1;
  const fits = room(words);
  const x = fits ? box.x + 1 : box.x + box.width + 1;
  const y = fits ? box.y + SMALL + 0.6 : box.y + Math.min(box.height, SMALL) + 0.4;
  return [
    paper({ x: x - 0.4, y: y - SMALL * 0.85, width, height: SMALL * 1.1 }),
    lettering(words, [x, y], { size: SMALL, bold: true }),
  ];
}

function placed(ground: Ground, placement: Placement, index: number): Shapes {
  const { rectangle, copyOf, face } = placement;
  if (!rectangle) return [];
  const box = onPaper(ground, rectangle);
  const { colour, className, hatch: kind } = series(index);
  const marks = {
    dataFace: face.name,
    dataX: rectangle.x,
    dataY: rectangle.y,
    dataWidth: rectangle.width,
    dataHeight: rectangle.height,
  };
  return [
    group(marks, [
      path(hatch(box, kind, 2.6), { stroke: colour, strokeWidth: 0.18, className: `hatch ${className}` }),
      rect(box, { stroke: colour, className, strokeWidth: 0.7, ...(copyOf ? { strokeDasharray: "3 1.5" } : {}) }),
    ]),
    ...number(box, `${index + 1}`, face.name),
  ];
}

/** Where two faces lie over one another without saying so. */
function collisions(ground: Ground, placements: readonly Placement[]): Shapes {
  return placements.flatMap((one, index) =>
    placements.slice(0, index).flatMap((other) => {
      const shared =
        one.rectangle && other.rectangle && one.copyOf !== other.face.name && other.copyOf !== one.face.name
          ? overlap(one.rectangle, other.rectangle)
          : undefined;
      if (!shared) return [];
      const box = onPaper(ground, shared);
      return [
        path(hatch(box, "crossed", 1.2), { strokeWidth: 0.3, className: "overlap" }),
        rect(box, { strokeWidth: WIDE, dataOverlap: `${other.face.name} ${one.face.name}` }),
      ];
    }),
  );
}

const rows = (placements: readonly Placement[]) =>
  placements.map(({ face, rectangle, corner, copyOf, scaled }, index) => [
    { words: String(index + 1) },
    { words: face.name },
    {
      words: corner ? `${corner.x}, ${corner.y}` : UNWRITTEN,
      data: corner ? { dataCorner: `${corner.x},${corner.y}` } : {},
    },
    { words: rectangle ? `${rectangle.width} × ${rectangle.height}` : "cannot be told" },
    {
      words: rectangle
        ? `${rectangle.x + rectangle.width - 1}, ${rectangle.y + rectangle.height - 1}`
        : "cannot be told",
    },
    { words: copyOf ? `copy of ${copyOf}` : scaled ? "scaled, not one to one" : "one to one" },
  ]);

/** Origin and the way pixels are counted: across and down. */
const origin = ({ x, y }: Ground): Shapes => [
  svgShape("circle", { cx: x, cy: y, r: 1.1, fill: "none", stroke: "currentColor", strokeWidth: 0.4 }),
  lettering("0,0", [x - 1.6, y + 1], { size: SMALL, anchor: "end" }),
];

function picture(
  raster: { readonly width: number; readonly height: number },
  ground: Ground,
  placements: readonly Placement[],
): Shapes {
  const whole = onPaper(ground, { x: 0, y: 0, ...raster });
  const [right, bottom] = [whole.x + whole.width, whole.y + whole.height];
  return [
    rect(whole, { strokeWidth: WIDE, className: "raster", dataRaster: `${raster.width}x${raster.height}` }),
    ...placements.flatMap((each, index) => placed(ground, each, index)),
    ...collisions(ground, placements),
    ...origin(ground),
    line([whole.x, whole.y - 3], [whole.x, whole.y - 8], { strokeWidth: 0.15 }),
    line([right, whole.y - 1], [right, whole.y - 8], { strokeWidth: 0.15 }),
    levelDimension(whole.x, right, whole.y - 6, { words: `${raster.width} pixels across` }),
    uprightDimension(whole.x - 10, whole.y, bottom, {
      words: `${raster.height} pixels down`,
      reach: [whole.x - 8, whole.x - 1],
    }),
  ];
}

/** How far the drawing reaches: the raster, and faces that lie beyond it. */
function reach(raster: { readonly width: number; readonly height: number }, placements: readonly Placement[]) {
  const boxes = placements.flatMap(({ rectangle }) => (rectangle ? [rectangle] : []));
  return {
    width: Math.max(raster.width, ...boxes.map((each) => each.x + each.width)),
    height: Math.max(raster.height, ...boxes.map((each) => each.y + each.height)),
  };
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
  const all = raster && reach(raster, placements);
  const per = all ? Math.min((SHEET_WIDTH - LEFT - 10) / all.width, HIGHEST / all.height) : 0;
  const ground: Ground = { x: LEFT, y: top.height + 13, per };
  const drawn = raster ? picture(raster, ground, placements) : [];
  const low = all ? ground.y + all.height * per + 5 : top.height + 2;
  const list = drawnTable(
    ["No.", "Face", "Upper left", "Pixels", "Lower right", "How"],
    rows(placements),
    [2, low],
    SHEET_WIDTH - 4,
  );
  const outside = placements.filter(
    ({ rectangle: box }) => raster && box && (box.x + box.width > raster.width || box.y + box.height > raster.height),
  );
  const words = [
    ...outside.map(({ face }) => `Face ${face.name} reaches beyond the raster.`),
    ...gapNotes([width, height, ...placements.flatMap((each) => [each.right, each.bottom])]),
  ];
  const foot = notes(words, 2, low + list.height, SHEET_WIDTH - 4);
  return {
    name: "raster",
    title,
    description:
      placements
        .map(({ face, rectangle: box }) =>
          box
            ? `Face ${face.name}: ${box.width} by ${box.height} pixels, its upper left pixel at ${box.x},${box.y}`
            : `Face ${face.name}: place or size not written down`,
        )
        .join(". ") + `. The raster: ${raster ? `${raster.width} by ${raster.height} pixels` : UNWRITTEN}.`,
    width: SHEET_WIDTH,
    height: low + list.height + foot.height + 2,
    shapes: [...top.shapes, ...drawn, ...list.shapes, ...foot.shapes],
  };
}
