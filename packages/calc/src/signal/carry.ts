import { given, type Known, tabled, type Value } from "../formula/value.js";
import { printQuantity } from "../quantity/print.js";
import { timingsOf } from "./clock.js";
import type { CvtMode } from "./cvt.js";
import { type ClockLink, type Link, type PacketLink, type SerialLink, TMDS_FLOOR } from "./links.js";
import { activeRate } from "./port.js";
import { sdiRate } from "./sdi.js";
import type { Timing } from "./timing.js";
import { tmdsClock } from "./tmds.js";

/** A picture signal: pixels, frame rate in Hz, bits of a colour component. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly rate: number;
  readonly depth: number;
  readonly sampling?: "4:4:4" | "4:2:2" | "4:2:0";
  /** Timing its source is set to; any it may choose when left out. */
  readonly blanking?: CvtMode;
}

/** Whether a link carries a picture; if not, why in plain words and what to do instead. */
export interface Carried {
  readonly carried: boolean;
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

const named = (picture: Picture): string => `${picture.width} × ${picture.height} at ${picture.rate} Hz`;
const show = (value: Value): string =>
  value.known ? printQuantity(value.value, value.kind, "metric") : "an unknown rate";

function overTmds(link: ClockLink, picture: Picture): Carried {
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
  const tries = timingsOf(picture.width, picture.height, picture.rate, picture.blanking).map((timing) => {
    const clock = tmdsClock.of({
      c: given(timing.clock, "frequency"),
      // HDMI sends 4:2:2 of up to 12 bit in the 24 bits of an ordinary pixel.
      b: given(twoTwo && picture.depth <= 12 ? 24 : 3 * picture.depth, "colour-depth"),
      s: given(half ? 0.5 : 1, "factor"),
    });
    return { timing, clock, hertz: clock.known ? clock.value : Number.NaN };
  });
  const most = tabled(link.most, "frequency", link.source, `highest clock of ${link.name}`);
  const least = tabled(TMDS_FLOOR, "frequency", "dvi-1.0", "lowest TMDS clock");
  const fits = tries.find(({ hertz }) => hertz >= TMDS_FLOOR && hertz <= link.most);
  if (fits) {
    const why = `${named(picture)} needs ${show(fits.clock)} of the ${show(most)} of ${link.name}.`;
    return { carried: true, why, measured: fits.clock, allowed: most, sense: "at most", timing: fits.timing };
  }
  const slow = [...tries].reverse().find(({ hertz }) => hertz < TMDS_FLOOR);
  if (slow) {
    const why = `${named(picture)} is too small to be sent: it runs at ${show(slow.clock)}, and ${link.name} starts at ${show(least)}.`;
    return {
      carried: false,
      why,
      instead: BIGGER,
      measured: slow.clock,
      allowed: least,
      sense: "at least",
      timing: slow.timing,
    };
  }
  const fast = tries[0];
  if (!fast) return { carried: false, why: `No timing is known for ${named(picture)}.`, instead: BIGGER };
  const why = `${named(picture)} needs ${show(fast.clock)}; ${link.name} ends at ${show(most)}.`;
  const instead = "Lower the rate, the depth or the raster, or use a later link at both ends and the cable for it.";
  return { carried: false, why, instead, measured: fast.clock, allowed: most, sense: "at most", timing: fast.timing };
}

/** A raster whose every timing is below the floor of the clock. */
function tooSlow(link: PacketLink, picture: Picture): Carried | undefined {
  const clocks = timingsOf(picture.width, picture.height, picture.rate, picture.blanking).map(({ clock }) => clock);
  if (!link.floor || clocks.length === 0 || Math.max(...clocks) >= TMDS_FLOOR) return undefined;
  const measured = given(Math.max(...clocks), "frequency");
  const allowed = tabled(TMDS_FLOOR, "frequency", "dvi-1.0", "lowest TMDS clock");
  const why = `${named(picture)} is too small to be sent: it runs at ${show(measured)}, and ${link.name} starts at ${show(allowed)}.`;
  return { carried: false, why, instead: BIGGER, measured, allowed, sense: "at least" };
}

function overPackets(link: PacketLink, picture: Picture): Carried {
  const slow = tooSlow(link, picture);
  if (slow) return slow;
  const timing = timingsOf(picture.width, picture.height, picture.rate, picture.blanking)[0];
  if (!timing) return { carried: false, why: `No timing is known for ${named(picture)}.`, instead: BIGGER };
  const measured = activeRate.of({
    n: given(link.visible ? timing.width * timing.height : timing.totalWidth * timing.totalHeight, "pixels"),
    b: given(COMPONENTS[picture.sampling ?? "4:4:4"] * picture.depth, "colour-depth"),
    f: given(timing.rate, "frequency"),
  });
  const allowed = tabled(link.payload, "data-rate", link.source, `payload of ${link.name}`);
  const carried = measured.known && measured.value <= link.payload;
  const why = `${named(picture)} needs ${show(measured)}, blanking ${link.visible ? "not counted" : "included"}; ${link.name} carries ${show(allowed)}.`;
  const bound = { carried, why, measured, allowed, sense: "at most", timing } as const;
  return carried ? bound : { ...bound, instead: "Lower the rate, the depth or the raster, or use a later link." };
}

function overSdi(link: SerialLink, picture: Picture): Carried {
  const needed = sdiRate(picture.width, picture.height, picture.rate);
  if (needed === undefined) {
    const why = `SDI has no raster of ${named(picture)}: it carries only those SMPTE lists.`;
    return { carried: false, why, instead: BIGGER };
  }
  if (picture.depth > 10) {
    const why = `A single ${link.name} link carries 10 bit in this raster, not ${picture.depth} bit.`;
    return { carried: false, why, instead: "Send 10 bit or 8 bit." };
  }
  const measured = tabled(needed, "data-rate", link.source, `least SDI rate for ${named(picture)}`);
  const allowed = tabled(link.rate, "data-rate", link.source, `rate of ${link.name}`);
  const carried = needed <= link.rate;
  const why = `${named(picture)} needs SDI at ${show(measured)}; ${link.name} runs at ${show(allowed)}.`;
  const bound = { carried, why, measured, allowed, sense: "at most" } as const;
  return carried ? bound : { ...bound, instead: "Use a faster SDI link at both ends, or lower the frame rate." };
}

/**
 * Whether a link can carry a raster at its rate and depth, and if not why, and what to do instead.
 * Never throws: a picture that is none (no pixels, no rate) is not carried, for want of a timing.
 */
export function carries(link: Link, picture: Picture): Carried {
  if (link.sort === "tmds") return overTmds(link, picture);
  if (link.sort === "packets") return overPackets(link, picture);
  return overSdi(link, picture);
}
