import {
  adaCharacterHeight,
  CHANNEL,
  CHARACTER_ANGLE,
  CORD_MOST,
  californiaCharacterHeight,
  canBeTimed,
  carries,
  ctaTiming,
  FRAME_BYTES,
  FRAME_OVERHEAD,
  FRAME_PAYLOAD,
  isInside,
  links,
  overlap,
  peakUse,
  pitchAgrees,
  RG6_LENGTHS,
  rateOf,
  SDI_LOSS,
  STATED_AT,
  sdiRate,
  TMDS_FLOOR,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const INCH = 0.0254;
const FOOT = 0.3048;

describe("formats by raster and rate", () => {
  for (const [vic, width, height, hertz, totalWidth, totalHeight, megahertz] of [
    [1, 640, 480, 60, 800, 525, 25.175],
    [3, 720, 480, 60, 858, 525, 27],
    [18, 720, 576, 50, 864, 625, 27],
    [4, 1280, 720, 60, 1650, 750, 74.25],
    [19, 1280, 720, 50, 1980, 750, 74.25],
    [16, 1920, 1080, 60, 2200, 1125, 148.5],
    [31, 1920, 1080, 50, 2640, 1125, 148.5],
    [34, 1920, 1080, 30, 2200, 1125, 74.25],
    [33, 1920, 1080, 25, 2640, 1125, 74.25],
    [32, 1920, 1080, 24, 2750, 1125, 74.25],
    [63, 1920, 1080, 120, 2200, 1125, 297],
    [64, 1920, 1080, 100, 2640, 1125, 297],
    [97, 3840, 2160, 60, 4400, 2250, 594],
    [96, 3840, 2160, 50, 5280, 2250, 594],
    [95, 3840, 2160, 30, 4400, 2250, 297],
    [94, 3840, 2160, 25, 5280, 2250, 297],
    [93, 3840, 2160, 24, 5500, 2250, 297],
  ] as const)
    reference({
      name: `${width} × ${height} at ${hertz} Hz is format ${vic}`,
      source: "CTA-861",
      basis: "published",
      got: () => {
        const timing = ctaTiming(width, height, hertz);
        return `${timing?.name} ${timing?.totalWidth} ${timing?.totalHeight} ${(timing?.clock ?? 0) / 1e6}`;
      },
      printed: `CTA-861 format ${vic} ${totalWidth} ${totalHeight} ${megahertz}`,
    });
  reference({
    name: "rasters and rates it has no format for",
    source: "CTA-861",
    basis: "published",
    got: () => [ctaTiming(1920, 1080, 75), ctaTiming(1920, 1079, 60), ctaTiming(640, 480, 59)].every((each) => !each),
    printed: true,
  });
  reference({
    name: "23.98, 29.97 and 59.94 Hz are 1000/1001 rates; 59.5 Hz is in thousandths",
    source: "SMPTE ST 274, frame rates",
    basis: "published",
    got: () => [23.98, 29.97, 59.94, 59.5].map((hertz) => `${rateOf(hertz).over}/${rateOf(hertz).under}`).join(" "),
    printed: "24000/1001 30000/1001 60000/1001 59500/1000",
  });
});

describe("bounds of links", () => {
  const most = (id: "dvi" | "hdmi-1.0" | "hdmi-1.1" | "hdmi-1.2" | "hdmi-1.3" | "hdmi-1.4" | "hdmi-2.0") =>
    links[id].most / 1e6;
  reference({
    name: "DVI and HDMI 1.0 to 1.2: 165 MHz; 1.3 and 1.4: 340 MHz",
    source: "DVI 1.0; HDMI 1.0 to 1.3",
    basis: "published",
    got: () => [most("dvi"), most("hdmi-1.0"), most("hdmi-1.1"), most("hdmi-1.2"), most("hdmi-1.3"), most("hdmi-1.4")],
    printed: [165, 165, 165, 165, 340, 340],
  });
  reference({ name: "HDMI 2.0: 600", source: "HDMI 2.0", basis: "memory", got: () => most("hdmi-2.0"), printed: 600 });
  reference({
    name: "lowest clock 25 MHz",
    source: "DVI 1.0; HDMI 1.3",
    basis: "published",
    got: () => TMDS_FLOOR,
    printed: 25e6,
  });
  reference({
    name: "four lanes of 5.4 and 8.1 Gb/s, coded 8 in 10",
    source: "VESA DisplayPort 1.2, 1.4",
    basis: "memory",
    got: () => [links["displayport-1.2"].payload / 1e9, links["displayport-1.4"].payload / 1e9],
    printed: [(4 * 5.4 * 8) / 10, (4 * 8.1 * 8) / 10],
    within: 1e-9,
  });
  reference({
    name: "SD, HD, 3G and 12G",
    source: "SMPTE ST 259, ST 292-1, ST 424, ST 2082",
    basis: "published",
    got: () =>
      [links["sd-sdi"].rate, links["hd-sdi"].rate, links["3g-sdi"].rate, links["12g-sdi"].rate].map(
        (each) => each / 1e6,
      ),
    printed: [270, 1485, 2970, 11_880],
  });
  reference({
    name: "6G: 148.5 MHz × 40",
    source: "SMPTE ST 2081",
    basis: "memory",
    got: () => links["6g-sdi"].rate,
    printed: 148.5e6 * 40,
  });
  test("more bits than a link has are refused, and what it is sent at is named", () => {
    expect(
      carries(links["3g-sdi"], { width: 1920, height: 1080, rate: 60, depth: 10, sampling: "4:2:2" }).carried,
    ).toBe(true);
    expect(carries(links["3g-sdi"], { width: 1920, height: 1080, rate: 60, depth: 12 }).carried).toBe(false);
  });
});

describe("rasters of serial digital links", () => {
  for (const [width, height, hertz, rate, source, basis] of [
    [1280, 720, 24, 1.485e9, "SMPTE ST 296", "published"],
    [1280, 720, 60, 1.485e9, "SMPTE ST 296", "published"],
    [1920, 1080, 24, 1.485e9, "SMPTE ST 274, ST 292-1", "published"],
    [1920, 1080, 25, 1.485e9, "SMPTE ST 274, ST 292-1", "published"],
    [1920, 1080, 30, 1.485e9, "SMPTE ST 274, ST 292-1", "published"],
    [1920, 1080, 50, 2.97e9, "SMPTE ST 274, ST 424", "published"],
    [1920, 1080, 60, 2.97e9, "SMPTE ST 274, ST 424", "published"],
    [3840, 2160, 30, 5.94e9, "SMPTE ST 2081-10", "memory"],
    [3840, 2160, 50, 11.88e9, "SMPTE ST 2082-10", "memory"],
    [4096, 2160, 24, 5.94e9, "SMPTE ST 2081-10", "memory"],
    [4096, 2160, 60, 11.88e9, "SMPTE ST 2082-10", "memory"],
  ] as const)
    reference({
      name: `${width} × ${height} at ${hertz} Hz`,
      source,
      basis,
      got: () => sdiRate(width, height, hertz) ?? "no such raster",
      printed: rate,
    });
  reference({
    name: "no 50 ÷ 1.001, no 48 Hz, no raster of one line more",
    source: "SMPTE ST 274",
    basis: "published",
    got: () =>
      [sdiRate(1920, 1080, 50_000 / 1001), sdiRate(1920, 1080, 48), sdiRate(1920, 1081, 60)].every((each) => !each),
    printed: true,
  });
  reference({
    name: "loss a receiver is made for: 20 dB, and 40 dB for UHD; 113 m and 78 m of RG-6-class coax",
    source: "ANSI/SMPTE 292M-1996; ST 2081-1; S. Lampen, 12G-SDI (I)",
    basis: "published",
    got: () => [SDI_LOSS.hd, SDI_LOSS.uhd, RG6_LENGTHS["hd-sdi"], RG6_LENGTHS["3g-sdi"]],
    printed: [20, 40, 113, 78],
  });
});

describe("frames and channels", () => {
  reference({
    name: "a frame costs 8 + 14 + 4 + 12 bytes beside a payload of 1500; a tag 4; the least frame takes 84",
    source: "IEEE 802.3",
    basis: "published",
    got: () => [
      ...[FRAME_BYTES.preamble, FRAME_BYTES.header, FRAME_BYTES.check, FRAME_BYTES.gap, FRAME_BYTES.tag],
      ...[FRAME_BYTES.leastFrame, FRAME_OVERHEAD, FRAME_PAYLOAD],
    ],
    printed: [8, 14, 4, 12, 4, 84, 38, 1500],
  });
  reference({
    name: "100 m: 90 m fixed and 10 m of cords; work-area cords 22 m and 20 m",
    source: "ISO/IEC 11801; ANSI/TIA/EIA-568-B.1",
    basis: "published",
    got: () => [CHANNEL.all, CHANNEL.fixed, CHANNEL.cords, CORD_MOST.tia, CORD_MOST.iso],
    printed: [100, 90, 10, 22, 20],
  });
  reference({
    name: "a maker's pixel figure is for 60 Hz and 24 bit",
    source: "common practice, no source",
    basis: "practice",
    got: () => [STATED_AT.rate, STATED_AT.bitsPerPixel],
    printed: [60, 24],
  });
});

describe("letters: where a row ends", () => {
  const ada = (baseline: number, inches: number) => (adaCharacterHeight(baseline * INCH, inches * INCH) ?? 0) / INCH;
  reference({
    name: "baseline 40, 70, 71, 120, 121 in, seen from 6 ft",
    source: "2010 ADA Standards, Table 703.5.5",
    basis: "published",
    got: () => [40, 70, 71, 120, 121].map((baseline) => ada(baseline, 72)),
    printed: [0.625, 0.625, 2, 2, 3],
    within: 1e-6,
  });
  reference({
    name: "one foot beyond 72, 180 and 252 in: an eighth of an inch more, and none up to there",
    source: "2010 ADA Standards, Table 703.5.5",
    basis: "published",
    got: () => [ada(60, 72), ada(60, 84), ada(100, 180), ada(100, 192), ada(130, 252), ada(130, 264)],
    printed: [0.625, 0.75, 2, 2.125, 3, 3.125],
    within: 1e-6,
  });
  const california = (baseline: number, feet: number) =>
    (californiaCharacterHeight(baseline * INCH, feet * FOOT) ?? 0) / INCH;
  reference({
    name: "message signs: baseline 40, 70, 71, 120, 121 in, seen from 10 ft",
    source: "California Building Code 2013, 11B-703.8.4",
    basis: "published",
    got: () => [40, 70, 71, 120, 121].map((baseline) => california(baseline, 10)),
    printed: [2, 2, 3, 3, 4],
    within: 1e-6,
  });
  reference({
    name: "message signs: one foot beyond 10, 15 and 20 ft: a fifth of an inch more",
    source: "California Building Code 2013, 11B-703.8.4",
    basis: "published",
    got: () => [california(60, 10), california(60, 11), california(100, 16), california(130, 21)],
    printed: [2, 2.2, 3.2, 4.2],
    within: 1e-6,
  });
  test("below 40 in, and behind the sign, both say nothing", () => {
    for (const height of [adaCharacterHeight, californiaCharacterHeight])
      expect([height(39.9 * INCH, 3), height(60 * INCH, -0.1)]).toEqual([undefined, undefined]);
    expect(adaCharacterHeight(60 * INCH, 0)).toBeCloseTo(0.625 * INCH, 9);
  });
  reference({
    name: "characters fill 16′ at least, 20′ by preference, 24′ at most for reading on",
    source: "NUREG-0700 rev. 2, 1.3.1-4",
    basis: "published",
    got: () => [CHARACTER_ANGLE.least, CHARACTER_ANGLE.preferred, CHARACTER_ANGLE.most].map((degrees) => degrees * 60),
    printed: [16, 20, 24],
    within: 1e-9,
  });
});

describe("rectangles, pitches and stays", () => {
  const raster = { width: 1920, height: 1080 };
  test("a rectangle may touch every edge of its raster and pass none", () => {
    expect(isInside({ x: 0, y: 0, ...raster }, raster)).toBe(true);
    for (const off of [{ x: -1 }, { y: -1 }, { x: 1 }, { y: 1 }])
      expect(isInside({ x: 0, y: 0, ...raster, ...off }, raster), JSON.stringify(off)).toBe(false);
  });
  test("rectangles that touch share nothing; one pixel is shared when one lies on the other", () => {
    const one = { x: 0, y: 0, width: 10, height: 10 };
    expect(overlap(one, { ...one, x: 10 })).toBeUndefined();
    expect(overlap(one, { ...one, y: 10 })).toBeUndefined();
    expect(overlap(one, { ...one, x: 9, y: 9 })).toEqual({ x: 9, y: 9, width: 1, height: 1 });
    expect(overlap({ ...one, x: 3, y: 4 }, { x: 0, y: 0, width: 5, height: 20 })).toEqual({
      x: 3,
      y: 4,
      width: 2,
      height: 10,
    });
  });
  // 500 mm ÷ 168 = 2.976190 mm: half a unit of the third decimal is 0.0005, of the first 0.05; makers cut off as well.
  reference({
    name: "2.976 and 2.98 agree with 500 ÷ 168, 2.97 does not; 2.9 does with one decimal, 2.8 does not",
    source: "500 mm ÷ 168; nominal pitches are cut or rounded, common practice",
    basis: "practice",
    got: () =>
      [
        pitchAgrees(0.5 / 168, 0.002976, 3),
        pitchAgrees(0.5 / 168, 0.00298, 2),
        pitchAgrees(0.5 / 168, 0.00297, 2),
        pitchAgrees(0.5 / 168, 0.0029, 1),
        pitchAgrees(0.5 / 168, 0.0028, 1),
      ].join(),
    printed: "true,true,false,true,false",
  });
  test("a raster is timed from 8 pixels and one line on, at 1 to 1000 Hz", () => {
    expect([canBeTimed(8, 1, 1), canBeTimed(65_536, 65_536, 1000)]).toEqual([true, true]);
    const none = [
      canBeTimed(7, 1, 60),
      canBeTimed(8, 0, 60),
      canBeTimed(8, 1.5, 60),
      canBeTimed(8, 1, 0.9),
      canBeTimed(8, 1, 1000.1),
      canBeTimed(65_537, 1, 60),
    ];
    expect(none).toEqual(none.map(() => false));
  });
  const stay = (count: number, from: string, to?: string) => ({
    lot: "A",
    build: "b",
    count,
    from,
    ...(to ? { to } : {}),
  });
  test("on one day panels leave before others are back; a stay without an end goes on", () => {
    expect(peakUse([stay(2, "2027-03-01", "2027-03-02"), stay(3, "2027-03-02", "2027-03-03")])).toMatchObject([
      { count: 5, day: "2027-03-02" },
    ]);
    expect(peakUse([stay(3, "2027-03-02", "2027-03-03"), stay(2, "2027-03-01", "2027-03-02")])).toMatchObject([
      { count: 5, day: "2027-03-02" },
    ]);
    expect(peakUse([stay(2, "2027-03-01", "2027-03-02"), stay(3, "2027-03-03")])).toMatchObject([
      { count: 3, day: "2027-03-03" },
    ]);
    expect(peakUse([stay(4, "2027-01-01"), stay(1, "2028-01-01", "2028-01-01")])).toMatchObject([
      { count: 5, day: "2028-01-01" },
    ]);
  });
  test("a day that is none and a stay that ends before it begins are refused", () => {
    for (const bad of [
      stay(1, "2027-02-30"),
      stay(1, "2027-2-3"),
      stay(1, "soon"),
      stay(1, "2027-03-02", "2027-03-01"),
    ])
      expect(() => peakUse([bad])).toThrow();
    expect(() => peakUse([stay(1, "2027-03-02", "2027-03-02")])).not.toThrow();
  });
});
