import type { Face } from "@plumbmark/core";
import { levelDimension, uprightDimension } from "../shared/dimension.js";
import { type Drawing, type DrawingSubject, fitsPage, fittedToPage, SHEET_WIDTH } from "../shared/drawing.js";
import { drawingHeading, notes } from "../shared/heading.js";
import { lettering, measure, SMALL } from "../shared/lettering.js";
import { scaleBar, scaleText } from "../shared/scale.js";
import { rect, type Shapes, WIDE } from "../shared/svg.js";
import { writtenText } from "../shared/value-text.js";
import { type CableEntry, cableEntries, entrySide, type Side, TAG, tooMany } from "./cable-entries.js";
import { cellShapes, groupHatches } from "./cells.js";
import { dataLayer } from "./data.js";
import { kindMarks, turnMarks } from "./kinds.js";
import { legend, legendList } from "./legend.js";
import { powerLayer } from "./power.js";
import { remarks } from "./remarks.js";
import { route } from "./route.js";
import { rulers } from "./rulers.js";
import { socketKeys } from "./sockets.js";
import type { Layer } from "./strand.js";
import { extentOf, roomIn, type View, viewOf } from "./view.js";

const HIGHEST = 150;
/** Room beside the face for rulers and a dimension. */
const BARE = 14;

const at = (entries: readonly CableEntry[], side: Side): boolean => entries.some((each) => each.side === side);

const named = (entries: readonly CableEntry[], side: Side): boolean => at(entries, side) && !tooMany(entries, side);

interface Margins {
  readonly left: number;
  readonly right: number;
  readonly above: number;
  readonly below: number;
}

/**
 * Widths of drawings that can be read on a phone as they are, millimetres. At full size, as their scale says, two of
 * the first stand side by side on A4, two of the second on Letter.
 */
const COMPACT = [92, 95.5];
const COMPACT_MARGINS = { left: 3, right: 9 };
/** More lines than these are shorter as a table. */
const LISTED = 8;
/** How many tags stand side by side on it. */
const TAGS = 3;

/** The width of a narrow drawing, for a face whose cells hold their names on it and whose cables all come from above or below. */
function compactWidth(face: Face, { strands }: Layer, { system }: DrawingSubject): number | undefined {
  const entries = cableEntries({ face, rear: false, compact: true }, strands);
  const outer = entries.every(({ cell: { row }, side }) => row === (side === "above" ? 0 : face.rows - 1));
  const few = (["above", "below"] as const).every(
    (side) => entries.filter((each) => each.side === side).length <= TAGS,
  );
  if (!outer || !few || strands.length > 2 * TAGS) return undefined;
  return COMPACT.find((width) => {
    const room = { width: width - COMPACT_MARGINS.left - COMPACT_MARGINS.right, height: HIGHEST };
    const { scale, cell } = extentOf(face, room, system);
    return scale !== undefined && roomIn({ cell }) === "name";
  });
}

/** Room for cables with their tags, for cables alone, or for a ruler. */
const roomAt = (entries: readonly CableEntry[], side: Side): number =>
  named(entries, side) ? 17 : at(entries, side) ? 9 : 7;

const marginsOf = (entries: readonly CableEntry[], compact: boolean): Margins => ({
  left: named(entries, "left") ? TAG + 4 : BARE,
  // The height is written beyond the names where they stand on both sides.
  right: named(entries, "right") ? TAG + (named(entries, "left") ? 10 : 4) : BARE,
  ...(compact ? COMPACT_MARGINS : {}),
  above: roomAt(entries, "above"),
  below: roomAt(entries, "below"),
});

/** Whether the height is written at the left: cables come in from the right alone. */
const leftwardOf = (entries: readonly CableEntry[]): boolean => at(entries, "right") && !at(entries, "left");

/** How far from the face the height is written: on a narrow drawing no ruler stands between them. */
const clearOf = (entries: readonly CableEntry[], compact: boolean): number =>
  named(entries, "right") && named(entries, "left") ? TAG + 6 : compact ? 6 : 8;

function dimensions(
  view: View,
  { below }: Margins,
  { system }: DrawingSubject,
  entries: readonly CableEntry[],
  compact: boolean,
): Shapes {
  const { face, outline, scale } = view;
  const [right, bottom] = [outline.x + outline.width, outline.y + outline.height];
  if (!scale || !face.width.known || !face.height.known) return [];
  const leftward = leftwardOf(entries);
  const clear = clearOf(entries, compact);
  const x = leftward ? outline.x - clear : right + clear;
  const near = leftward ? outline.x : right;
  return [
    levelDimension(outline.x, right, bottom + below + 3, {
      metres: face.width.value,
      words: writtenText(face.width, system),
      reach: [bottom, bottom],
      // Where it is short, its figure stands beside it, and many tags at that side may reach as far down.
      before: at(entries, "right"),
    }),
    uprightDimension(x, outline.y, bottom, {
      metres: face.height.value,
      words: writtenText(face.height, system),
      reach: [near, near],
      ...(leftward && outline.height < measure(writtenText(face.height, system), SMALL) + 1 ? { beside: true } : {}),
    }),
  ];
}

/** From one of the words under a face to the next. */
const APART = 6;

/** Whose left and right: the mistake a mirrored view invites. */
function hands({ outline, rear }: View, y: number): Shapes {
  const [left, right] = rear ? ["audience's right", "audience's left"] : ["audience's left", "audience's right"];
  const needed = [left, right, "▴ up"].reduce((sum, words) => sum + measure(words, SMALL) + APART, 0);
  const spare = Math.max(0, needed - outline.width) / 2;
  const [x1, x2] = [outline.x - spare, outline.x + outline.width + spare];
  const middle = (x1 + x2) / 2;
  return [
    lettering(`◂ ${left}`, [x1, y], { size: SMALL }),
    lettering("▴ up", [middle, y], { size: SMALL, anchor: "middle", data: { dataUp: "face" } }),
    lettering(`${right} ▸`, [x2, y], { size: SMALL, anchor: "end" }),
  ];
}

const captions = (face: Face, { what }: Layer, rear: boolean, scale: string): readonly [string, readonly string[]] => [
  `Face ${face.name}: ${what.toLowerCase()}, from ${rear ? "the rear" : "the audience"}`,
  [
    rear
      ? "Seen from behind the face, mirrored: A1 is at the upper right. Stage left is at the left."
      : "Seen from the audience: A1 is at the upper left. Stage left is at the right.",
    `A square marks the first panel, arrow heads the way of the cable. ${scale}.`,
  ],
];

const some = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

function describe(face: Face, layer: Layer, rear: boolean): string {
  const ways = layer.strands.map(({ name, cells, enters, returns, legend: row }) => {
    const order = row[layer.header.indexOf("In cable order")]?.words ?? "";
    return `${layer.on} ${name} ${enters[1] ?? ""}: ${cells ? `${cells.length} panels, ${order}` : "panels not written down"}${returns ? `, ${returns[1]}` : ""}`;
  });
  const seen = rear ? "from behind, mirrored, column 1 at the right" : "from the audience, column 1 at the left";
  const none = `No ${layer.on} of it is written down`;
  return `${some(face.columns, "column")} and ${some(face.rows, "row")}, ${some(face.cells.length, "panel")}, ${seen}. ${ways.slice(0, 40).join("; ") || none}.`;
}

/** Width of the paper, and how much of the usual height there is for the face. */
interface Size {
  readonly width: number;
  readonly share: number;
}

/** Margins, and what they leave: the figure of a height that is too low to be written along it stands beside it. */
function roomFor(
  face: Face,
  entries: readonly CableEntry[],
  { width, share }: Size,
  { system }: DrawingSubject,
): readonly [Margins, { readonly width: number; readonly height: number }, ReturnType<typeof extentOf>] {
  const given = marginsOf(entries, width < SHEET_WIDTH);
  const within = ({ left, right }: Margins) => ({ width: width - left - right, height: HIGHEST * share });
  const extent = extentOf(face, within(given), system);
  const words = measure(writtenText(face.height, system), SMALL);
  if (extent.height >= words + 1) return [given, within(given), extent];
  const side = clearOf(entries, width < SHEET_WIDTH) + words + 4;
  const margins = leftwardOf(entries)
    ? { ...given, left: Math.max(given.left, side) }
    : { ...given, right: Math.max(given.right, side) };
  return [margins, within(margins), extentOf(face, within(margins), system)];
}

/** One face, one view, one layer of cables. */
function faceDrawing(face: Face, layer: Layer, rear: boolean, subject: DrawingSubject, size: Size): Drawing {
  const { width } = size;
  const compact = width < SHEET_WIDTH;
  const entries = cableEntries({ face, rear, compact }, layer.strands);
  const [margins, room, extent] = roomFor(face, entries, size, subject);
  const [title, below] = captions(face, layer, rear, extent.scale ? scaleText(extent.scale) : "Not to scale");
  const top = drawingHeading(title, below, width);
  const spare = (room.width - extent.width) / 2;
  const view = viewOf(face, rear, [margins.left + spare, top.height + 2 + margins.above], extent);
  const paper = compact ? width : undefined;
  const sides = (["left", "right", "above", "below"] as const).map((side) => entrySide(view, entries, side, paper));
  const bottom = view.outline.y + view.outline.height;
  const reach = Math.max(bottom + margins.below + 6, (sides[0]?.reach ?? 0) + 2, (sides[1]?.reach ?? 0) + 2);
  const bar = extent.scale ? [scaleBar(extent.scale, [width - 62, reach + 11])] : [];
  const keys = rear ? socketKeys(face, layer.name, reach + 15, width, subject) : { shapes: [], height: 0, notes: [] };
  const low = reach + 14 + (keys.height > 0 ? keys.height + 3 : 0);
  const list = layer.strands.length <= LISTED ? legendList(layer, low, width) : legend(layer, low);
  const unnamed = sides.some((each) => each.unnamed)
    ? [`Too many ${layer.on}s to name beside the face; the list and the schedules name them by their first panel.`]
    : [];
  const said = [...unnamed, ...keys.notes, ...remarks(face, layer, rear, subject)];
  const foot = notes(said, 2, low + list.height, width - 4);
  return {
    name: `face-${face.name}-${layer.name}-${rear ? "rear" : "audience"}`,
    title,
    description: describe(face, layer, rear),
    width,
    height: low + 2 + list.height + foot.height,
    opens: at(entries, "right") && entries[0]?.side === "right" ? "right" : "left",
    shapes: [
      ...top.shapes,
      ...groupHatches(view, layer.strands),
      ...cellShapes(view, layer.strands),
      ...turnMarks(view, subject),
      ...kindMarks(view),
      rect(view.outline, { strokeWidth: WIDE, className: "outline" }),
      ...dimensions(view, margins, subject, entries, compact),
      ...sides.flatMap((each) => each.shapes),
      ...rulers(view, at(entries, "left") ? "right" : "left"),
      ...layer.strands.map((each) => route(view, each)).filter((each) => each !== undefined),
      ...hands(view, reach + 5),
      ...bar,
      ...keys.shapes,
      ...list.shapes,
      ...foot.shapes,
    ],
  };
}

/** Both views of a layer in one form: narrow where that fits a page, else as wide as the sheet. */
function bothViews(face: Face, layer: Layer, subject: DrawingSubject): readonly Drawing[] {
  const views = [false, true];
  const width = compactWidth(face, layer, subject);
  const narrow =
    width === undefined ? [] : views.map((rear) => faceDrawing(face, layer, rear, subject, { width, share: 1 }));
  return width !== undefined && narrow.every(fitsPage)
    ? narrow
    : views.map((rear) =>
        fittedToPage((share) => faceDrawing(face, layer, rear, subject, { width: SHEET_WIDTH, share })),
      );
}

/** A face from the audience and from the rear, with its power and with its data. */
export function faceDrawings(face: Face, subject: DrawingSubject): readonly Drawing[] {
  if (face.cells.length === 0) return [];
  return [powerLayer(face, subject), dataLayer(face, subject)].flatMap((layer) => bothViews(face, layer, subject));
}
