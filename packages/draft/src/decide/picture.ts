import type { Data, Part } from "@plumbmark/core";
import { type Brief, partsOfKind } from "../brief.js";
import { grouped, type Mapping } from "../data.js";
import { lengthFor, wayTo } from "./cables.js";
import { type Decided, decided, fallen, type Scheme } from "./decision.js";
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
  readonly fails: readonly { readonly says: string }[];
  readonly open: number;
}

/** The raster and the way of the picture: the plainest that the processor and every link carry. */
export function pictured(brief: Brief, scheme: Scheme): Decided {
  const { desk, practice } = brief;
  const at = placesOfDevices(brief);
  const face = desk.ask(scheme.matter);
  const [wide, high] = ["pixels-wide", "pixels-high"].map((key) => face.known(`faces.${FACE}.${key}`));
  const straight = wide === undefined || high === undefined ? [] : [`${wide} x ${high}`];
  let best: Tried | undefined;
  let tried = 0;
  const processors = partsOfKind(brief, "processor");
  if (processors.length === 0) return fallen("picture.carried", "The catalogue has no processor.");
  for (const processor of processors)
    for (const path of paths(brief))
      for (const raster of [...RASTERS, ...straight]) {
        if ((best && best.fails.length + best.open === 0) || tried >= MOST_TRIED) break;
        tried += 1;
        const own = straight.includes(raster) && !RASTERS.includes(raster as (typeof RASTERS)[number]);
        const picture = grouped({
          raster,
          rate: practice === "us" ? "60 Hz" : "50 Hz",
          depth: "8 bit",
          sampling: path.length > 2 ? "4:2:2" : undefined,
          blanking: own ? "widened" : undefined,
          path: path as Data,
          at: { [FACE]: "0,0" },
        });
        const matter = { data: { processor: { part: processor.name, place: at.processor } }, picture };
        const asked = desk.ask({ ...scheme.matter, ...matter });
        const checks = asked.checks("picture.", "connectors.mate");
        const fails = checks.filter(({ outcome, level }) => outcome === "fails" && level === "shall");
        const found = { matter, fails, open: checks.length - fails.length };
        // Of rasters that do not do the largest says what is in the way.
        const fewer = best === undefined || fails.length < best.fails.length;
        const same = fails.length === best?.fails.length;
        if (fewer || (same && (fails.length > 0 || found.open < (best?.open ?? 0)))) best = found;
      }
  if (!best) return fallen("picture.carried", "The catalogue has no source of a picture with a cable.");
  if (best.fails.length > 0) return fallen("picture.carried", best.fails.map(({ says }) => says).join(" "));
  const { raster } = best.matter.picture as { readonly raster: string };
  return {
    ok: true,
    scheme: decided(scheme, best.matter, {
      what: "raster",
      why: `The face stands in the top left corner of ${raster}, the least raster that processor and links take without a question; one pixel of the picture is one of the face.`,
      exact: tried < MOST_TRIED,
      ...(tried < MOST_TRIED ? {} : { gap: `${MOST_TRIED} ways of the picture were looked at, and there are more.` }),
      figures: [`picture.at.${FACE}.right`, `picture.at.${FACE}.bottom`],
    }),
  };
}
