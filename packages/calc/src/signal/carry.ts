import { times } from "../formula/arithmetic.js";
import { counted, type Known, tabled, type Value } from "../formula/value.js";
import { printQuantity } from "../quantity/print.js";
import { type Blanking, type RasterTotals, timingClock, timingsOf } from "./clock.js";
import { type ClockLink, type Link, type PacketLink, type SerialLink, TMDS_FLOOR } from "./links.js";
import { activeRate } from "./port.js";
import { sdiRate } from "./sdi.js";
import type { Timing } from "./timing.js";
import { tmdsClock } from "./tmds.js";

/** A picture signal: pixels, frame rate in Hz, bits of a colour component. */
export interface PictureSignal {
  readonly width: number;
  readonly height: number;
  readonly rate: number;
  readonly depth: number;
  readonly sampling?: "4:4:4" | "4:2:2" | "4:2:0";
  /** Timing its source is set to; any it may choose when left out, so that every one of them has to fit. */
  readonly blanking?: Blanking;
  /** Pixels of a line and lines of a frame its source is set to, blanking included; they come before any blanking. */
  readonly totals?: RasterTotals;
}

/** Whether a link carries a picture; if not, why in plain words and what to do instead. */
export interface CarriedSignal {
  readonly carried: boolean;
  /** What of the picture would decide it and is not told: one way of it is carried and another is not. */
  readonly undecided?: "blanking" | "sampling";
  readonly why: string;
  readonly instead?: string;
  /** What was held against the link's bound, where there is one. */
  readonly measured?: Value;
  readonly allowed?: Known;
  readonly sense?: "at least" | "at most";
  readonly timing?: Timing;
}

/** Components sent for each pixel, on average. */
export const COMPONENTS = { "4:4:4": 3, "4:2:2": 2, "4:2:0": 1.5 } as const;

const BIGGER = "Send a standard raster such as 1920 × 1080 and place the face on it, at 0,0.";

const named = (picture: PictureSignal): string => `${picture.width} × ${picture.height} at ${picture.rate} Hz`;
const show = (value: Value): string =>
  value.known ? printQuantity(value.value, value.kind, "metric") : "an unknown rate";

function overTmds(link: ClockLink, picture: PictureSignal): CarriedSignal {
  if (picture.depth > 8 && !link.deepColour)
    return {
      carried: false,
      why: `${link.name} carries 8 bit only, not ${picture.depth} bit.`,
      instead: "Send 8 bit.",
    };
  const half = picture.sampling === "4:2:0";
  const twoTwo = picture.sampling === "4:2:2";
  if (twoTwo && link.source.startsWith("dvi"))
    return { carried: false, why: `${link.name} carries full colour only, not 4:2:2.`, instead: "Send 4:4:4." };
  if (half && link.most < 600e6)
    return { carried: false, why: `${link.name} does not carry 4:2:0.`, instead: "Send full colour, or use HDMI 2.0." };
  const needs = (timing: Timing): Value =>
    tmdsClock.of({
      c: timingClock(timing),
      // HDMI sends 4:2:2 of up to 12 bit in the 24 bits of an ordinary pixel.
      b: counted(twoTwo && picture.depth <= 12 ? 24 : 3 * picture.depth, "bits of a pixel", "colour-depth"),
      s: counted(half ? 0.5 : 1, "share of the pixel clock", "factor"),
    });
  const most = tabled(link.most, "frequency", link.source, `highest clock of ${link.name}`);
  return held(link.name, picture, triesOf(picture, needs), most, true);
}

/** What one timing a source may choose asks of the link. */
interface Try {
  readonly timing: Timing;
  readonly needs: Known;
}

/** The timings a source may choose with what each asks, the least first. */
const triesOf = (picture: PictureSignal, needs: (timing: Timing) => Value): readonly Try[] =>
  timingsOf(picture.width, picture.height, picture.rate, picture.blanking, picture.totals)
    .flatMap((timing) => {
      const asks = needs(timing);
      return asks.known ? [{ timing, needs: asks }] : [];
    })
    .sort((a, b) => a.needs.value - b.needs.value);

const LOWER = "Lower the rate, the depth or the raster, or use a later link at both ends and the cable for it.";
const SAY_BLANKING =
  "Set the source to one blanking and write it under `picture.blanking`: `standard`, `reduced` or `reduced-2`.";

/** Carried only when every timing the source may choose is inside the bound; not carried when none is. */
function held(name: string, picture: PictureSignal, tries: readonly Try[], most: Known, floor: boolean): CarriedSignal {
  const [first, last] = [tries[0], tries.at(-1)];
  if (!first || !last) return { carried: false, why: `No timing is known for ${named(picture)}.`, instead: BIGGER };
  const slow = ({ needs }: Try): boolean => floor && needs.value < TMDS_FLOOR;
  if (slow(last)) return tooSmall(name, picture, last);
  const bound = { measured: last.needs, allowed: most, sense: "at most", timing: last.timing } as const;
  const [least, greatest] = [show(first.needs), show(last.needs)];
  if (!slow(first) && last.needs.value <= most.value) {
    const why =
      tries.length > 1
        ? `${named(picture)} needs up to ${greatest} by the blanking its source chooses (${last.timing.name}); ${name} carries ${show(most)}.`
        : `${named(picture)} needs ${greatest} (${last.timing.name}); ${name} carries ${show(most)}.`;
    return { ...bound, carried: true, why };
  }
  if (first.needs.value > most.value) {
    const why = `${named(picture)} needs ${tries.length > 1 ? "at least " : ""}${least} (${first.timing.name}); ${name} ends at ${show(most)}.`;
    return { ...bound, measured: first.needs, timing: first.timing, carried: false, why, instead: LOWER };
  }
  const range = slow(first) ? `runs from ${show(tabled(TMDS_FLOOR, "frequency", "dvi-1.0", "floor"))} to` : "ends at";
  const why = `${named(picture)} needs ${least} to ${greatest} by the blanking its source chooses, which is not written down; ${name} ${range} ${show(most)}.`;
  return { ...bound, carried: false, undecided: "blanking", why, instead: SAY_BLANKING };
}

/** What else helps a raster that is too small: wider blanking, unless its totals are written already. */
function orWider(picture: PictureSignal): string {
  const timing = picture.totals ? undefined : timingsOf(picture.width, picture.height, picture.rate, "widened")[0];
  if (!timing) return BIGGER;
  const totals = `${timing.totalWidth} × ${timing.totalHeight}`;
  return `${BIGGER} Or, where source and input both take custom rasters, widen the blanking to ${totals} in all: \`picture.blanking: widened\`.`;
}

function tooSmall(name: string, picture: PictureSignal, { timing, needs }: Try): CarriedSignal {
  const allowed = tabled(TMDS_FLOOR, "frequency", "dvi-1.0", "lowest TMDS clock");
  const why = `${named(picture)} is too small to be sent: it runs at ${show(needs)}, and ${name} starts at ${show(allowed)}.`;
  return { carried: false, why, instead: orWider(picture), measured: needs, allowed, sense: "at least", timing };
}

function overPackets(link: PacketLink, picture: PictureSignal): CarriedSignal {
  const clocks = triesOf(picture, timingClock);
  const fastest = clocks.at(-1);
  if (link.floor && fastest && fastest.needs.value < TMDS_FLOOR) return tooSmall(link.name, picture, fastest);
  const bits = COMPONENTS[picture.sampling ?? "4:4:4"] * picture.depth;
  const tries = triesOf(picture, (timing) =>
    activeRate.of({
      n: counted(
        link.visible ? timing.width * timing.height : timing.totalWidth * timing.totalHeight,
        `pixels of a frame, blanking ${link.visible ? "not counted" : "included"}`,
        "pixels",
      ),
      b: counted(bits, "bits of a pixel", "colour-depth"),
      f: tabled(timing.rate, "frequency", timing.source, `frame rate of ${timing.name}`),
    }),
  );
  // Blanking makes no difference to the visible pixels.
  const allowed = tabled(link.payload, "data-rate", link.source, `payload of ${link.name}`);
  return held(link.name, picture, link.visible ? tries.slice(0, 1) : tries, allowed, false);
}

function overSdi(link: SerialLink, picture: PictureSignal): CarriedSignal {
  const listed = sdiRate(picture.width, picture.height, picture.rate);
  if (listed === undefined) {
    const why = `SDI has no raster of ${named(picture)}: it carries only those SMPTE lists.`;
    return { carried: false, why, instead: BIGGER };
  }
  if (picture.depth > 10) {
    const why = `A single ${link.name} link carries 10 bit in this raster, not ${picture.depth} bit.`;
    return { carried: false, why, instead: "Send 10 bit or 8 bit." };
  }
  // The rasters are listed at 10 bit 4:2:2; full colour needs twice the rate. What is not told may be either.
  const full = picture.sampling === "4:4:4" || (picture.sampling === undefined && listed * 2 <= link.rate);
  const sampling = full ? "4:4:4" : "4:2:2";
  const needed = tabled(listed, "data-rate", link.source, `least SDI rate for ${named(picture)}, 4:2:2`);
  const measured = (full ? times(needed, 2, "2") : needed) as Known;
  const allowed = tabled(link.rate, "data-rate", link.source, `rate of ${link.name}`);
  const why = `${named(picture)} in ${sampling} needs SDI at ${show(measured)}; ${link.name} runs at ${show(allowed)}.`;
  const bound = { carried: measured.value <= link.rate, why, measured, allowed, sense: "at most" } as const;
  if (!bound.carried)
    return {
      ...bound,
      instead: `${full ? "Send 4:2:2, or use" : "Use"} a faster SDI link at both ends, or lower the frame rate.`,
    };
  if (picture.sampling !== undefined || full) return bound;
  return {
    ...bound,
    carried: false,
    undecided: "sampling",
    why: `${named(picture)} needs SDI at ${show(needed)} in 4:2:2 and at twice that in full colour, and which is sent is not written down; ${link.name} runs at ${show(allowed)}.`,
    instead: "Write `picture.sampling`: `4:2:2` where the converters send what SDI lists.",
  };
}

/**
 * Whether a link can carry a raster at its rate and depth, and if not why, and what to do instead.
 * Never throws: a picture that is none (no pixels, no rate) is not carried, for want of a timing.
 */
export function carries(link: Link, picture: PictureSignal): CarriedSignal {
  if (link.sort === "tmds") return overTmds(link, picture);
  if (link.sort === "packets") return overPackets(link, picture);
  return overSdi(link, picture);
}
