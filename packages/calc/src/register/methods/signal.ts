import { beats } from "../../signal/camera.js";
import { carries } from "../../signal/carry.js";
import { timingClock, timingsOf } from "../../signal/clock.js";
import { contrastRatio } from "../../signal/contrast.js";
import { hdmiCopper } from "../../signal/copper-video.js";
import { copperHop, cordBudgets } from "../../signal/cords.js";
import { ctaTiming } from "../../signal/cta.js";
import { canBeTimed, cvt } from "../../signal/cvt.js";
import { frameCost } from "../../signal/frame.js";
import { fixedRate, fixedRateMost, links } from "../../signal/links.js";
import { californiaCharacterHeight } from "../../signal/message-signs.js";
import { isInside, overlap } from "../../signal/placement.js";
import { sdiGross, sdiRate } from "../../signal/sdi.js";
import { adaCharacterHeight } from "../../signal/signs.js";
import { frameRate, rateOf, wholeQuotient } from "../../signal/timing.js";
import { repetitionNeeded } from "../../signal/tmds.js";
import { widened, withTotals } from "../../signal/widened.js";
import { type Method, numberOf } from "../method.js";

const INCH = 0.0254;

export const signalMethods: readonly Method[] = [
  {
    name: "carries",
    title: "Whether a link carries a picture",
    of: carries,
    units: "pixels, Hz, bit → yes or no, and why",
    sources: ["dvi-1.0", "hdmi-1.3", "smpte-st-292"],
    validity: "progressive pictures",
    example: {
      asks: "1920 × 1080 at 60 Hz over HD-SDI",
      got: () => carries(links["hd-sdi"], { width: 1920, height: 1080, rate: 60, depth: 10 }).carried,
      gives: false,
      from: "1080p60 needs 2.97 Gb/s (SMPTE ST 424)",
    },
  },
  {
    name: "widened",
    title: "A small raster with its blanking widened to the least clock",
    of: widened,
    units: "pixels, Hz → totals in pixels and lines, clock in Hz",
    sources: ["dvi-1.0", "detailed-timing", "vesa-cvt-1.2"],
    validity: "rasters that source and receiver both take with custom totals; no timing of VESA CVT",
    example: {
      asks: "960 × 160 at 60 Hz: pixels of a line, lines of a frame, clock in kHz",
      got: () => {
        const timing = widened(960, 160, 60);
        return timing ? [timing.totalWidth, timing.totalHeight, timing.clock / 1000] : [];
      },
      gives: [1112, 375, 25_020],
      from: "1112 × 375 × 60 Hz = 25.02 MHz: the least multiple of 10 kHz over 25 MHz that divides so, by hand",
    },
  },
  {
    name: "withTotals",
    title: "A raster with totals as they are written",
    of: withTotals,
    units: "pixels, Hz → clock in Hz",
    sources: ["detailed-timing"],
    validity: "totals that leave 1 to 4095 of blanking each way",
    example: {
      asks: "1920 × 1080 in 2200 × 1125 at 60 Hz, in MHz",
      got: () => (withTotals(1920, 1080, 60, { width: 2200, height: 1125 })?.clock ?? 0) / 1e6,
      gives: 148.5,
      from: "CTA-861 format 16",
    },
  },
  {
    name: "beats",
    title: "Whether two rates beat",
    of: beats,
    units: "Hz, Hz → yes or no",
    sources: ["camera-practice"],
    validity: "rates above 0",
    example: { asks: "60 Hz and 25 Hz", got: () => beats(60, 25), gives: true, from: "60 ÷ 25 = 2.4, by hand" },
  },
  {
    name: "timingClock",
    title: "Pixel clock of a timing",
    of: timingClock,
    units: "timing → Hz",
    sources: ["cta-861", "vesa-cvt-1.1", "vesa-cvt-1.2"],
    validity: "the timings of the tables and of VESA CVT",
    example: {
      asks: "2560 × 1600 at 60 Hz with reduced blanking, in MHz",
      got: () => timingClock(cvt(2560, 1600, 60, "reduced")).value / 1e6,
      gives: 268.5,
      from: "VESA DMT 0x4C, from memory",
    },
  },
  {
    name: "fixedRate",
    title: "An HDMI 2.1 link by its fixed rate",
    of: fixedRate,
    units: "Gb/s → bit/s of payload",
    sources: ["hdmi-2.1", "hdmi-2.1-correction"],
    validity: "the rates of the table",
    example: {
      asks: "48 Gb/s, in Gb/s",
      got: () => fixedRate(48).payload / 1e9,
      gives: 42,
      within: 0.05,
      from: "42.6 Gb/s × (1 − 8 ÷ 510)",
    },
  },
  {
    name: "fixedRateMost",
    title: "What no HDMI 2.1 link of a rate passes",
    of: fixedRateMost,
    units: "Gb/s → bit/s",
    sources: ["hdmi-2.1"],
    validity: "the rates of the table",
    example: {
      asks: "48 Gb/s, in Gb/s",
      got: () => fixedRateMost(48).payload / 1e9,
      gives: 42.6,
      // Printed cut off after the first decimal, not rounded.
      within: 0.1,
      from: "42.6 Gb/s of 48 in print",
    },
  },
  {
    name: "ctaTiming",
    title: "Standard timing of a raster",
    of: ctaTiming,
    units: "pixels, Hz → Hz",
    sources: ["cta-861"],
    validity: "rasters of the table and their 1000/1001 rates",
    example: {
      asks: "1280 × 720 at 60 Hz",
      got: () => ctaTiming(1280, 720, 60)?.clock,
      gives: 74.25e6,
      from: "CTA-861 format 4",
    },
  },
  {
    name: "timingsOf",
    title: "Timings a source may choose for a raster",
    of: timingsOf,
    units: "pixels, Hz → timings",
    sources: ["cta-861", "vesa-cvt-1.1", "vesa-cvt-1.2"],
    validity: "sides of whole pixels",
    example: {
      asks: "1920 × 1080 at 50 Hz",
      got: () => timingsOf(1920, 1080, 50).map((each) => each.totalWidth),
      gives: [2640],
      from: "CTA-861 format 31",
    },
  },
  {
    name: "canBeTimed",
    title: "Whether a raster can be timed at all",
    of: canBeTimed,
    units: "pixels, Hz → yes or no",
    sources: ["vesa-cvt-1.1"],
    validity: "any numbers",
    example: { asks: "half a pixel", got: () => canBeTimed(0.5, 480, 60), gives: false, from: "cells of 8 pixels" },
  },
  {
    name: "cvt",
    title: "Coordinated video timing",
    of: cvt,
    units: "pixels, Hz → Hz",
    sources: ["vesa-cvt-1.1", "vesa-cvt-1.2"],
    validity: "8 to 65,536 pixels, 1 to 1000 Hz",
    example: {
      asks: "1920 × 1080 at 60 Hz, standard blanking",
      got: () => cvt(1920, 1080, 60, "standard").clock,
      gives: 173e6,
      from: "common mode line 173.00 MHz, 2576 × 1120",
    },
  },
  {
    name: "frameRate",
    title: "Frame rate from a clock",
    of: frameRate,
    units: "Hz, pixels → Hz",
    sources: ["cta-861"],
    validity: "progressive timings",
    example: {
      asks: "148.5 MHz, 2200 × 1125",
      got: () => frameRate(148.5e6, 2200, 1125),
      gives: 60,
      from: "CTA-861 format 16",
    },
  },
  {
    name: "rateOf",
    title: "A rate as a fraction",
    of: rateOf,
    units: "Hz → whole numbers",
    sources: ["cta-861"],
    validity: "whole rates, 1000/1001 rates, thousandths of a hertz",
    example: {
      asks: "59.94 Hz",
      got: () => [rateOf(59.94).over, rateOf(59.94).under],
      gives: [60_000, 1001],
      from: "60 × 1000 ÷ 1001",
    },
  },
  {
    name: "wholeQuotient",
    title: "Whole part of a quotient of products",
    of: wholeQuotient,
    units: "whole numbers",
    sources: ["arithmetic"],
    validity: "above zero",
    example: { asks: "7 × 3 ÷ 4", got: () => wholeQuotient([7, 3], [4]), gives: 5, from: "by hand" },
  },
  {
    name: "repetitionNeeded",
    title: "How often each pixel would have to be sent",
    of: repetitionNeeded,
    units: "Hz → times",
    sources: ["hdmi-1.3"],
    validity: "TMDS links",
    example: {
      asks: "13.5 MHz",
      got: () => repetitionNeeded(13.5e6),
      gives: 2,
      from: "480i is sent with its pixels doubled, 27 MHz",
    },
  },
  {
    name: "hdmiCopper",
    title: "Length of passive copper HDMI",
    of: hdmiCopper,
    units: "Hz → m",
    sources: ["practice"],
    validity: "up to 600 MHz",
    example: {
      asks: "148.5 MHz",
      got: () => hdmiCopper(148.5e6)?.value,
      gives: 10,
      from: "common practice, no source",
    },
  },
  {
    name: "copperHop",
    title: "Longest unbroken run of twisted-pair copper",
    of: copperHop,
    units: "→ m",
    sources: ["iec-11801", "tia-568-b.1", "iec-11801-2002"],
    validity: "stranded runs lie outside the tabulated range",
    example: {
      asks: "24 AWG stranded",
      got: () => numberOf(copperHop(cordBudgets["24 AWG"]).limit),
      gives: 85,
      from: "102 ÷ 1.2",
    },
  },
  {
    name: "frameCost",
    title: "Bytes a frame costs on the wire",
    of: frameCost,
    units: "bytes → bytes",
    sources: ["ieee-802.3"],
    validity: "payloads of 46 bytes or more",
    example: {
      asks: "1500 bytes with a tag",
      got: () => frameCost(1500, true),
      gives: 1542,
      from: "wiki.creatica.org",
    },
  },
  {
    name: "sdiRate",
    title: "Least SDI rate that carries a raster",
    of: sdiRate,
    units: "pixels, Hz → bit/s",
    sources: ["smpte-st-274", "smpte-st-296", "smpte-st-424"],
    validity: "10 bit 4:2:2, progressive",
    example: { asks: "1920 × 1080 at 60 Hz", got: () => sdiRate(1920, 1080, 60), gives: 2.97e9, from: "SMPTE ST 424" },
  },
  {
    name: "sdiGross",
    title: "Gross SDI rate",
    of: sdiGross,
    units: "pixels, Hz → bit/s",
    sources: ["smpte-st-259", "smpte-st-292"],
    validity: "two 10-bit words a pixel",
    example: {
      asks: "864 × 625 at 25 Hz",
      got: () => sdiGross(864, 625, 25),
      gives: 270e6,
      from: "SMPTE ST 259 level C",
    },
  },
  {
    name: "isInside",
    title: "Whether a rectangle lies on a raster",
    of: isInside,
    units: "pixels → yes or no",
    sources: ["geometry"],
    validity: "upright rectangles",
    example: {
      asks: "1008 wide at 913 on 1920",
      got: () => isInside({ x: 913, y: 0, width: 1008, height: 168 }, { width: 1920, height: 1080 }),
      gives: false,
      from: "913 + 1008 = 1921",
    },
  },
  {
    name: "overlap",
    title: "Part two rectangles share",
    of: overlap,
    units: "pixels → pixels",
    sources: ["geometry"],
    validity: "upright rectangles",
    example: {
      asks: "two of 10 × 10, 7 apart sideways",
      got: () => overlap({ x: 0, y: 0, width: 10, height: 10 }, { x: 7, y: 0, width: 10, height: 10 })?.width,
      gives: 3,
      from: "10 − 7",
    },
  },
  {
    name: "contrastRatio",
    title: "Contrast of two colours",
    of: contrastRatio,
    units: "#rrggbb → 1 to 21",
    sources: ["wcag-2.2"],
    validity: "opaque colours",
    example: {
      asks: "#767676 on #ffffff",
      got: () => contrastRatio("#767676", "#ffffff"),
      gives: 4.54,
      within: 0.005,
      from: "4.54 in print",
    },
  },
  {
    name: "adaCharacterHeight",
    title: "Least character height of a fixed sign",
    of: adaCharacterHeight,
    units: "m, m → m",
    sources: ["ada-703.5.5"],
    validity: "baseline 40 in and more above the floor",
    example: {
      asks: "60 in up, 21 ft away, in inches",
      got: () => (adaCharacterHeight(60 * INCH, 252 * INCH) ?? 0) / INCH,
      gives: 2.5,
      within: 0.001,
      from: "2010 ADA Standards, Table 703.5.5, worked answer 2.5 in",
    },
  },
  {
    name: "californiaCharacterHeight",
    title: "Least character height of a low-resolution message sign",
    of: californiaCharacterHeight,
    units: "m, m → m",
    sources: ["california-11b-703.8.4"],
    validity: "baseline 40 in and more above the floor",
    example: {
      asks: "100 in up, 30 ft away, in inches",
      got: () => (californiaCharacterHeight(100 * INCH, 360 * INCH) ?? 0) / INCH,
      gives: 6,
      within: 0.001,
      from: "3 + (30 − 15) ÷ 5",
    },
  },
];
