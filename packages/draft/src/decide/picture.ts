import { type Data, type Part, stretchAsWritten } from "@plumbmark/core";
import { type Brief, partsOfKind } from "../brief.js";
import { grouped, type Mapping, wholeAt } from "../data.js";
import { type FoldedFace, fold, type PixelFace } from "../search/fold.js";
import { lengthFor, wayTo } from "./cables.js";
import { type Decided, decided, fallen, PLANNER, type Scheme } from "./decision.js";
import { FACE } from "./size.js";

/** Where the rack stands when nobody said so, and no circuit has its outlet at a place. */
export const RACK = "rack";
const RASTERS = ["1280 x 720", "1920 x 1080", "3840 x 2160"] as const;
/** So many paths are tried; a catalogue of hundreds of cables is not looked through whole. */
const MOST_TRIED = 48;

/** Place of the processor, and of the source of the picture. */
export const placesOfDevices = ({
  wish,
  facts,
}: Pick<Brief, "wish" | "facts">): { readonly processor: string; readonly source: string } => {
  const near = facts.circuits.filter(({ name }) => wish.powerFrom.length === 0 || wish.powerFrom.includes(name));
  const processor = wish.dataAt ?? near.find(({ at }) => at !== undefined)?.at ?? RACK;
  return { processor, source: wish.pictureAt ?? processor };
};

const entry = (part: Part, place: string): Data => ({ part: part.name, place });

/** Cables between devices that stand side by side. */
const patch = ({ system }: Brief): string => (system === "us" ? "6 ft" : "2 m");

/** Ways a picture can come from a source to the processor, the plainest first. */
function* paths(brief: Brief): Generator<readonly Data[]> {
  const at = placesOfDevices(brief);
  const apart = at.source !== at.processor;
  const way = wayTo(brief.facts.survey, at.source, at.processor);
  const cables = partsOfKind(brief, "video-cable");
  const length = (cable: Part): string | undefined => (apart ? lengthFor(brief, cable, way) : patch(brief));
  const cableOf = (part: Part, text: string | undefined): Data => grouped({ part: part.name, length: text });
  for (const source of partsOfKind(brief, "source"))
    for (const cable of cables) yield [entry(source, at.source), cableOf(cable, length(cable))];
  const converters = partsOfKind(brief, "converter");
  for (const source of partsOfKind(brief, "source"))
    for (const there of converters)
      for (const back of converters)
        if (there !== back)
          for (const long of cables)
            for (const short of cables)
              if (long !== short)
                yield [
                  entry(source, at.source),
                  cableOf(short, patch(brief)),
                  entry(there, at.source),
                  cableOf(long, length(long)),
                  entry(back, at.processor),
                  cableOf(short, patch(brief)),
                ];
}

interface Tried {
  readonly matter: Mapping;
  readonly raster: string;
  /** How the face is folded on it; undefined where it lies there whole. */
  readonly fold: FoldedFace | undefined;
  readonly fails: readonly { readonly says: string }[];
  readonly open: number;
}

/** A raster with the place of the face on it. */
type Laid = Pick<Tried, "raster" | "fold">;

const sidesOf = (raster: string): { readonly width: number; readonly height: number } => {
  const [width = 0, height = 0] = raster.split(" x ").map(Number);
  return { width, height };
};

/** The face in pixels; undefined where its panel does not say how many it has. */
function pixelFace({ desk }: Brief, { matter, columns, rows }: Scheme): PixelFace | undefined {
  const face = desk.ask(matter);
  const [wide, high] = ["pixels-wide", "pixels-high"].map((key) => face.known(`faces.${FACE}.${key}`));
  return wide === undefined || high === undefined
    ? undefined
    : { columns, rows, panel: { wide: wide / columns, high: high / rows } };
}

/** Rasters the face lies on whole: the standard ones, the least first, then one of its own size. */
function whole(face: PixelFace | undefined): readonly Laid[] {
  if (!face) return RASTERS.map((raster) => ({ raster, fold: undefined }));
  const [wide, high] = [face.columns * face.panel.wide, face.rows * face.panel.high];
  const large = RASTERS.filter((each) => sidesOf(each).width >= wide && sidesOf(each).height >= high);
  return [...new Set([...large, `${wide} x ${high}`])].map((raster) => ({ raster, fold: undefined }));
}

/** Standard rasters the face is folded on: the fewest parts first, and of as many the least raster. */
function folded(face: PixelFace | undefined): readonly Laid[] {
  const laid = RASTERS.flatMap((raster) => {
    const found = face && fold(face, sidesOf(raster));
    return found ? [{ raster, fold: found }] : [];
  });
  return laid.sort((a, b) => a.fold.pieces.length - b.fold.pieces.length);
}

/** The place of the face as a document writes it. */
const placeOf = (found: FoldedFace | undefined): Data =>
  found
    ? {
        parts: found.pieces.map(({ first, last, x, y }) => ({
          [found.along]: stretchAsWritten({ first, last }, found.along),
          at: `${x},${y}`,
        })),
      }
    : "0,0";

/** Processors with ports and pixels for the face, by what their parts state; all where none is. */
function ableTo(processors: readonly Part[], face: PixelFace | undefined): readonly Part[] {
  const pixels = face === undefined ? 0 : face.columns * face.rows * face.panel.wide * face.panel.high;
  const able = processors.filter(({ quantities, data }) => {
    const [all, port, ports] = [
      quantities.get("pixels")?.value,
      quantities.get("port-pixels")?.value,
      wholeAt(data, "ports"),
    ];
    return pixels <= (all ?? pixels) && (port === undefined || ports === undefined || pixels <= port * ports);
  });
  return able.length > 0 ? able : processors;
}

/** Puts a raster to the processors and paths there are. */
function tried(
  brief: Brief,
  scheme: Scheme,
  { raster, fold: found }: Laid,
  processor: Part,
  path: readonly Data[],
): Tried {
  const own = !RASTERS.includes(raster as (typeof RASTERS)[number]);
  const picture = grouped({
    raster,
    rate: brief.practice === "us" ? "60 Hz" : "50 Hz",
    depth: "8 bit",
    sampling: path.length > 2 ? "4:2:2" : undefined,
    blanking: own ? "widened" : undefined,
    path: path as Data,
    at: { [FACE]: placeOf(found) },
  });
  const at = placesOfDevices(brief);
  const matter = { data: { processor: { part: processor.name, place: at.processor } }, picture };
  const checks = brief.desk.ask({ ...scheme.matter, ...matter }).checks("picture.", "connectors.mate");
  const fails = checks.filter(({ outcome, level }) => outcome === "fails" && level === "shall");
  return { matter, raster, fold: found, fails, open: checks.length - fails.length };
}

/** What was found of some rasters, and whether all there is was looked at. */
interface Found {
  readonly best: Tried | undefined;
  readonly all: boolean;
}

/** The best of some rasters with each processor and path: the first without a question, as far as the search goes. */
function bestOf(
  brief: Brief,
  scheme: Scheme,
  ways: Iterable<readonly [laid: Laid, processor: Part, path: readonly Data[]]>,
): Found {
  let best: Tried | undefined;
  let count = 0;
  for (const [laid, processor, path] of ways) {
    if (best && best.fails.length + best.open === 0) break;
    if (count >= MOST_TRIED) return { best, all: false };
    count += 1;
    const found = tried(brief, scheme, laid, processor, path);
    // Of rasters that do not do the largest says what is in the way.
    const fewer = best === undefined || found.fails.length < best.fails.length;
    const same = found.fails.length === best?.fails.length;
    if (fewer || (same && (found.fails.length > 0 || found.open < (best?.open ?? 0)))) best = found;
  }
  return { best, all: true };
}

/** The first of what may be very many. */
function first<T>(many: Iterable<T>, most: number): readonly T[] {
  const found: T[] = [];
  for (const each of many) {
    if (found.length >= most) break;
    found.push(each);
  }
  return found;
}

/** Every way there is to take one of each list, the last list the fastest. */
function* inTurn<A, B, C>(as: readonly A[], bs: readonly B[], cs: readonly C[]): Generator<readonly [A, B, C]> {
  for (const a of as) for (const b of bs) for (const c of cs) yield [a, b, c];
}

const counted = (numbers: readonly number[]): string => numbers.join(", ").replace(/, ([^,]*)$/u, " and $1");

/** Why it is folded, into what, and what that asks of the source. */
function whyFolded(
  { columns, rows, panel }: PixelFace,
  { raster, open }: Tried,
  { along, pieces }: FoldedFace,
): string {
  const sizes = counted(pieces.map(({ first, last }) => last - first + 1));
  const where = along === "columns" ? "one under another" : "side by side";
  const sure = open === 0 ? "take without a question" : "may take";
  return `The face has ${columns * panel.wide} × ${rows * panel.high} pixels, and no raster that processor and links take carries it whole: it is folded into ${pieces.length} parts of ${sizes} ${along}, ${where} on ${raster}, the fewest there can be on a raster they ${sure}. The source has to send the picture cut so; one pixel of the picture is one of the face.`;
}

/** The raster and the way of the picture: the plainest that the processor and every link carry; folded where none carries it whole. */
export function pictured(brief: Brief, scheme: Scheme): Decided {
  const all = partsOfKind(brief, "processor");
  if (all.length === 0) return fallen("picture.carried", "The catalogue has no processor.");
  const face = pixelFace(brief, scheme);
  const processors = ableTo(all, face);
  const ways = first(paths(brief), MOST_TRIED + 1);
  const inOne = bestOf(
    brief,
    scheme,
    [...inTurn(processors, ways, whole(face))].map(([processor, path, laid]) => [laid, processor, path] as const),
  );
  if (!inOne.best) return fallen("picture.carried", "The catalogue has no source of a picture with a cable.");
  const cuts = inOne.best.fails.length > 0 ? folded(face) : [];
  const inParts = bestOf(brief, scheme, inTurn(cuts, processors, ways));
  const best = inParts.best ?? inOne.best;
  const says = best.fails.map((each) => each.says).join(" ");
  if (best.fails.length > 0)
    return fallen(
      "picture.carried",
      cuts.length > 0 ? says : `${says} Folded in whole panels it lies on no standard raster.`,
    );
  const { all: isExact } = inParts.best ? inParts : inOne;
  const made = decided(scheme, best.matter, {
    what: "raster",
    why:
      face && best.fold
        ? whyFolded(face, best, best.fold)
        : `The face stands in the top left corner of ${best.raster}, the least raster that processor and links take without a question; one pixel of the picture is one of the face.`,
    exact: isExact,
    ...(isExact ? {} : { gap: `${MOST_TRIED} ways of the picture were looked at, and there are more.` }),
    figures: [`picture.at.${FACE}.right`, `picture.at.${FACE}.bottom`],
  });
  const cut = best.fold && {
    what: `source that sends the picture cut into ${best.fold.pieces.length} parts`,
    by: PLANNER,
  };
  return { ok: true, scheme: cut ? { ...made, toFindOut: [...(made.toFindOut ?? []), cut] } : made };
}
