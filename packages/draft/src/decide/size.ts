import { type Part, turnsAllowed, turnsStated } from "@plumbmark/core";
import { type Brief, type PanelsOnOffer, partsOfKind } from "../brief.js";
import { grouped } from "../data.js";
import { type Extent, type OnSide, type Shape, shapes, suits } from "../search/shapes.js";
import { lengthAsWritten } from "../write/length.js";
import type { Scheme } from "./decision.js";

/** Out of a catalogue there is no end of panels; a face of more than this is no draft of a day. */
const MOST_PANELS = 400;

/** Faces of a panel that are told for want of panels, the nearest to the wish. */
const MOST_SHORT = 2;

/** A face that a wish could be, and what it is made of. */
export interface Candidate extends Shape {
  readonly offer: PanelsOnOffer;
  readonly spares: number;
}

/** The sides of one panel as it is mounted, in metres; undefined where the part does not say. */
export function panelSize({ catalogue }: Pick<Brief, "catalogue">, panel: string) {
  const [width, height] = ["size.1", "size.2"].map((path) => catalogue.parts.get(panel)?.quantities.get(path)?.value);
  return width === undefined || height === undefined ? undefined : { width, height };
}

/** The same as it stands in a face: panels on their side are as wide as they are high. */
export function sizeIn(
  brief: Pick<Brief, "catalogue">,
  { panel, rotated }: { readonly panel: string; readonly rotated?: OnSide | undefined },
) {
  const size = panelSize(brief, panel);
  return size && rotated !== undefined ? { width: size.height, height: size.width } : size;
}

/** How panels may lie on their side, by their maker and the maker of what would hang them; undefined where not at all. */
function onSide({ catalogue, wish }: Brief, panel: string): OnSide | undefined {
  const part = catalogue.parts.get(panel);
  const size = panelSize({ catalogue }, panel);
  // On its side a square panel makes the same face.
  if (!size || Math.abs(size.width - size.height) < 1e-9) return undefined;
  const allowed = turnsAllowed(part) ?? [];
  const attachments = partsOfKind({ catalogue }, "attachment");
  const held = (turn: OnSide): boolean =>
    (wish.support ?? "flown") !== "flown" || attachments.length === 0 || attachments.some(takesTurned(turn));
  return ([90, 270] as const).find((turn) => allowed.includes(turn) && held(turn));
}

/** Whether an attachment is made for panels that are turned so. */
export const takesTurned =
  (turn: OnSide) =>
  ({ data }: Part): boolean =>
    turnsStated(data["takes-turned"])?.includes(turn) === true;

/** The name a drafted face has. */
export const FACE = "display";

/** Fewest spares the rule on spares is content with; asked once for each number of panels. */
export function sparesFor({ desk, wish }: Brief, panel: string, { columns, rows }: Shape): number {
  const face = { panel, columns, rows, support: wish.support ?? "flown" };
  const told = (spares: number) =>
    desk
      .ask({ faces: { [FACE]: { ...face, spares } } })
      .checks("panels.spares")
      .find(({ outcome }) => outcome === "fails");
  const short = told(0);
  if (!short) return 0;
  const asked = short.allowed && "value" in short.allowed ? Math.ceil(Number(short.allowed.value) - 1e-9) : 1;
  // A rule that asks for something else than a number is asked again, for what it may be content with.
  for (let spares = asked; spares < asked + 4; spares += 1) if (!told(spares)) return spares;
  return asked;
}

/** How far a side is from what was asked for, as a share: nought where nothing was. */
export const offBy = (extent: Extent | undefined, length: number): number =>
  extent === undefined ? 0 : Math.abs(length - extent.length) / extent.length;

/** Of a side nothing was said of, and of one that is to be at least so much, the least is nearest to the wish. */
const wantsMore = ({
  width,
  height,
}: {
  readonly width?: Extent | undefined;
  readonly height?: Extent | undefined;
}): boolean => [width, height].every((each) => each !== undefined && each.how !== "at least");

/** Width of a picture in heights, where one side alone is wished for: that of the usual rasters (CTA-861). */
const PICTURE = 16 / 9;

/** How far a picture of which one side was said is from the shape of its raster, as a share. */
function offShape({ shows, width, height }: Brief["wish"], face: { readonly width: number; readonly height: number }) {
  if (shows !== "picture" || (width === undefined) === (height === undefined)) return 0;
  return Math.abs(face.width / face.height / PICTURE - 1);
}

export interface Sizes {
  readonly candidates: readonly Candidate[];
  /** Faces that suit the wish but for the panels that are free. */
  readonly short: readonly { readonly offer: PanelsOnOffer; readonly shape: Shape; readonly needs: number }[];
  /** Faces that suit the wish but for the text that is to stand on them, the nearest of each panel. */
  readonly narrow: readonly { readonly offer: PanelsOnOffer; readonly shape: Shape }[];
  /** Panels of which no whole number comes to what was asked for, with the reason. */
  readonly odd: readonly { readonly panel: string; readonly shape: Shape; readonly says: string }[];
  /** The face nearest to the wish where none suits it. */
  readonly nearest: { readonly panel: string; readonly width: number; readonly height: number } | undefined;
}

/**
 * Faces of the panels on offer whose sides are what was asked for, the nearest to the wish first.
 * @param holds whether a face has room for what is to stand on it; where none has, all are taken and told
 */
export function sizesOf(
  brief: Brief,
  perOffer: number,
  holds: (panel: string, shape: Shape) => boolean = () => true,
): Sizes {
  const { wish, offers } = brief;
  const asked = { ...(wish.width ? { width: wish.width } : {}), ...(wish.height ? { height: wish.height } : {}) };
  const candidates: Candidate[] = [];
  const short: { offer: PanelsOnOffer; shape: Shape; needs: number }[] = [];
  const narrow: { offer: PanelsOnOffer; shape: Shape }[] = [];
  const odd: { panel: string; shape: Shape; says: string }[] = [];
  let nearest: Sizes["nearest"];
  const spares = new Map<string, number>();
  const seen = new Set<string>();
  /** Panels of which a face has room for what is to stand on it. */
  const roomy = new Set<string>();
  for (const offer of offers) {
    const size = panelSize(brief, offer.panel);
    if (!size) continue;
    const off = ({ columns, rows, rotated }: Shape): number => {
      const { width, height } = sizeIn(brief, { panel: offer.panel, rotated }) ?? size;
      return (
        offBy(wish.width, columns * width) +
        offBy(wish.height, rows * height) +
        offShape(wish, { width: columns * width, height: rows * height })
      );
    };
    const sorted = (all: readonly Shape[]): readonly Shape[] =>
      [...all].sort(
        (a, b) =>
          off(a) - off(b) ||
          (wantsMore(asked) ? b.columns * b.rows - a.columns * a.rows : a.columns * a.rows - b.columns * b.rows),
      );
    const upright = sorted(shapes(size, asked, MOST_PANELS));
    const turn = onSide(brief, offer.panel);
    const turned =
      turn === undefined
        ? []
        : sorted(
            shapes({ width: size.height, height: size.width }, asked, MOST_PANELS).map((each) => ({
              ...each,
              rotated: turn,
            })),
          );
    // On their side they are looked at where that comes nearer to the wish than any upright face does.
    const nearer = upright[0] ? turned.filter((each) => off(each) < off(upright[0] as Shape) - 1e-9) : turned;
    const suiting = [...nearer, ...upright];
    const [first] = suiting;
    if (first && !holds(offer.panel, first) && !narrow.some((each) => each.offer.panel === offer.panel))
      narrow.push({ offer, shape: first });
    // What is larger is asked for as well, and there are fewer panels than for this.
    const isToldShort = (): boolean => short.filter((each) => each.offer.panel === offer.panel).length >= MOST_SHORT;
    let kept = 0;
    const take = (shape: Shape): void => {
      const key = `${offer.panel} ${shape.columns * shape.rows}`;
      const own = spares.get(key) ?? sparesFor(brief, offer.panel, shape);
      spares.set(key, own);
      const needs = shape.columns * shape.rows + own;
      if (needs > offer.free) {
        if (!isToldShort()) short.push({ offer, shape, needs });
        return;
      }
      kept += 1;
      // Another lot of the same panel makes the same face.
      const face = `${offer.panel} ${shape.columns} ${shape.rows} ${shape.rotated ?? 0}`;
      if (seen.has(face)) return;
      seen.add(face);
      candidates.push({ ...shape, offer, spares: own });
    };
    for (const shape of suiting) {
      if (kept >= perOffer) break;
      // Whether a text has room on a face takes a model of the face: nothing is asked of those that nobody takes.
      if ((isToldShort() && shape.columns * shape.rows > offer.free) || !holds(offer.panel, shape)) continue;
      roomy.add(offer.panel);
      take(shape);
    }
    if (!roomy.has(offer.panel))
      for (const shape of suiting) {
        if (kept >= perOffer) break;
        take(shape);
      }
    if (suiting.length > 0) continue;
    nearest ??= nearestTo(brief, offer.panel, size);
    if (!odd.some(({ panel }) => panel === offer.panel)) odd.push(oddOf(brief, offer.panel, size));
  }
  return { candidates, short, narrow, odd, nearest };
}

/** A side that was asked for, and what whole panels come to there. */
function sideTold(name: string, extent: Extent | undefined, step: number, system: Brief["system"]): readonly string[] {
  if (!extent) return [];
  const below = Math.max(1, Math.floor(extent.length / step + 1e-9));
  const fit = [below, below + 1].filter((count) => suits(extent, count * step, step));
  if (fit.length > 0) return [];
  const [least, more] = [below, below + 1].map((count) => lengthAsWritten(count * step, system));
  const comes = extent.length < step ? `${least} at least` : `${least} or ${more}`;
  return [`the ${name} comes to ${comes}, and ${extent.how} ${lengthAsWritten(extent.length, system)} is asked for`];
}

/** Why no face of whole panels suits a wish. */
function oddOf({ wish, system }: Brief, panel: string, size: { readonly width: number; readonly height: number }) {
  const sides = [
    ...sideTold("width", wish.width, size.width, system),
    ...sideTold("height", wish.height, size.height, system),
  ];
  const shape: Shape = {
    columns: Math.max(1, Math.round((wish.width?.length ?? 0) / size.width)),
    rows: Math.max(1, Math.round((wish.height?.length ?? 0) / size.height)),
  };
  const of = `Of panels of ${lengthAsWritten(size.width, system)} × ${lengthAsWritten(size.height, system)}`;
  const says =
    sides.length > 0
      ? `${of} ${sides.join("; ")}.`
      : `${of} more than ${MOST_PANELS} would be needed, the most that are looked at.`;
  return { panel, shape, says };
}

function nearestTo(
  { wish }: Brief,
  panel: string,
  { width, height }: { readonly width: number; readonly height: number },
) {
  const times = (extent: Extent | undefined, side: number): number =>
    Math.max(1, extent === undefined ? 1 : Math.round(extent.length / side));
  return { panel, width: times(wish.width, width) * width, height: times(wish.height, height) * height };
}

/** In words, of a face whose panels are turned. */
export const ON_SIDE = "panels on their side";

/** The scheme a candidate begins as. */
export function begun(brief: Brief, { columns, rows, rotated, offer, spares }: Candidate): Scheme {
  const { wish } = brief;
  const support = wish.support ?? "flown";
  const face = grouped({
    panel: offer.panel,
    columns,
    rows,
    support,
    rotated,
    on: brief.surveyed !== undefined && support !== "flown" ? wish.on : undefined,
    upstage:
      brief.surveyed === undefined || wish.upstage === undefined
        ? undefined
        : lengthAsWritten(wish.upstage, brief.system),
    lot: offer.lot,
    spares,
  });
  const of = offer.lot === undefined ? "the catalogue" : `${offer.lot}, ${offer.free} of which are free`;
  return {
    columns,
    rows,
    ...(rotated === undefined ? {} : { rotated }),
    panel: offer.panel,
    lot: offer.lot,
    matter: grouped({ venue: brief.surveyed, "on-site": wish.onSite, faces: { [FACE]: face } }),
    variant: rotated === undefined ? [] : [ON_SIDE],
    decisions: [
      {
        what: "size",
        why: `${columns} × ${rows} panels ${offer.panel} out of ${of}, with ${spares} spare${spares === 1 ? "" : "s"} of the same batch: the nearest to what was asked for that can be made of whole panels.${rotated === undefined ? "" : ` They are turned by ${rotated}°, as the makers of panel and hardware allow.`}`,
        exact: true,
        figures: [`faces.${FACE}.width`, `faces.${FACE}.height`],
      },
    ],
  };
}
