import type { SourceId } from "../sources/index.js";

/** Least TMDS clock in Hz (DVI 1.0, HDMI). */
export const TMDS_FLOOR = 25e6;

/** A link with a pixel clock between two bounds, in Hz. */
export interface ClockLink {
  readonly sort: "tmds";
  readonly name: string;
  readonly most: number;
  /** Whether more than 8 bits a component are carried, at a raised clock. */
  readonly deepColour: boolean;
  readonly source: SourceId;
}

/** A link that packs pixels into a payload rate in bit/s. */
export interface PacketLink {
  readonly sort: "packets";
  readonly name: string;
  readonly payload: number;
  /** Only the visible pixels are held against it: a bound nothing passes, where how blanking is sent is not told. */
  readonly visible?: true;
  /** Taken only for what is too fast for the clocked link of the same socket, whose floor it keeps. */
  readonly floor?: true;
  readonly source: SourceId;
}

/** A serial digital interface: only the rasters SMPTE lists for its rate in bit/s. */
export interface SerialLink {
  readonly sort: "sdi";
  readonly name: string;
  readonly rate: number;
  readonly source: SourceId;
}

export type Link = ClockLink | PacketLink | SerialLink;

const tmds = (name: string, megahertz: number, deepColour: boolean, source: SourceId): ClockLink => ({
  sort: "tmds",
  name,
  most: megahertz * 1e6,
  deepColour,
  source,
});

/** Rates of HDMI 2.1 in Gb/s: three lanes of 6, four of 6, 8, 10 and 12. */
export const fixedRates = [18, 24, 32, 40, 48] as const;
export type FixedRate = (typeof fixedRates)[number];

/**
 * HDMI 2.1 at a fixed rate. Coded 16 in 18; of each block of 510 characters 8 are error correction. With blanking sent
 * in full inside that it is carried for certain.
 */
export const fixedRate = (gigabits: FixedRate): PacketLink => ({
  sort: "packets",
  name: `HDMI 2.1 at ${gigabits} Gb/s`,
  payload: (((gigabits * 1e9 * 16) / 18) * 502) / 510,
  floor: true,
  source: "hdmi-2.1-correction",
});

/** What no HDMI 2.1 link of this rate passes: the visible pixels alone against its rate less the coding. */
export const fixedRateMost = (gigabits: FixedRate): PacketLink => ({
  ...fixedRate(gigabits),
  payload: (gigabits * 1e9 * 16) / 18,
  visible: true,
  source: "hdmi-2.1",
});

const sdi = (name: string, megabits: number, source: SourceId): SerialLink => ({
  sort: "sdi",
  name,
  rate: megabits * 1e6,
  source,
});

/** Every link of a picture path we know the bounds of, by the name it has in parts. */
export const links = {
  dvi: tmds("single-link DVI", 165, false, "dvi-1.0"),
  // Two links of the same bound share the pixels.
  "dvi-dual": tmds("dual-link DVI", 330, false, "dvi-1.0-dual"),
  "hdmi-1.0": tmds("HDMI 1.0", 165, false, "hdmi-1.0"),
  "hdmi-1.1": tmds("HDMI 1.1", 165, false, "hdmi-1.0"),
  "hdmi-1.2": tmds("HDMI 1.2", 165, false, "hdmi-1.0"),
  "hdmi-1.3": tmds("HDMI 1.3", 340, true, "hdmi-1.3"),
  "hdmi-1.4": tmds("HDMI 1.4", 340, true, "hdmi-1.3"),
  "hdmi-2.0": tmds("HDMI 2.0", 600, true, "hdmi-2.0"),
  "displayport-1.2": { sort: "packets", name: "DisplayPort 1.2", payload: 17.28e9, source: "displayport-1.2" },
  "displayport-1.4": { sort: "packets", name: "DisplayPort 1.4", payload: 25.92e9, source: "displayport-1.4" },
  "sd-sdi": sdi("SD-SDI", 270, "smpte-st-259"),
  "hd-sdi": sdi("HD-SDI", 1485, "smpte-st-292"),
  "3g-sdi": sdi("3G-SDI", 2970, "smpte-st-424"),
  "6g-sdi": sdi("6G-SDI", 5940, "smpte-st-2081"),
  "12g-sdi": sdi("12G-SDI", 11_880, "smpte-st-2082"),
} as const satisfies Readonly<Record<string, Link>>;

export type LinkId = keyof typeof links;
