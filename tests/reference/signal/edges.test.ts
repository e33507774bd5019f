import {
  carries,
  contrastRatio,
  ctaTiming,
  cvt,
  fixedRates,
  hdmiCopper,
  links,
  type PictureSignal,
  sdiRate,
} from "@plumbmark/calc";
import { describe } from "vitest";
import { reference } from "../check.js";

describe("shapes of small rasters", () => {
  // Lines of sync by shape: 4:3 4, 16:9 5, 16:10 6, 5:4 and 15:9 7, any other 10 (VESA CVT 1.1, table of sync widths).
  // So low, blanking is 3 + sync + 7 lines: 460 µs of 16.7 ms would be fewer.
  for (const [width, height, sync] of [
    [64, 48, 4],
    [160, 90, 5],
    [160, 100, 6],
    [80, 64, 7],
    [240, 144, 7],
    [80, 80, 10],
  ] as const)
    reference({
      name: `${width} × ${height}: ${sync} lines of sync`,
      source: "VESA CVT 1.1, vertical sync by shape",
      basis: "memory",
      got: () => cvt(width, height, 60, "reduced").totalHeight,
      printed: height + 3 + sync + 7,
      within: 0,
    });
  reference({
    name: "1092 lines: 460 × 1092 ÷ (16,666.67 − 460) = 30.995, so 31 blank lines",
    source: "VESA CVT 1.1, reduced blanking of at least 460 µs",
    basis: "arithmetic",
    got: () => cvt(1920, 1092, 60, "reduced").totalHeight,
    printed: 1123,
    within: 0,
  });
});

describe("rates divided by 1.001", () => {
  // Line period (16,683.33 − 550) ÷ 1083 = 14.8969 µs; porch ⌊550 ÷ 14.8969⌋ + 1 = 37; duty 30 − 0.3 × 14.8969 = 25.531 %,
  // 1920 × 25.531 ÷ 74.469 = 658.2, 656 in double cells; 2576 ÷ 14.8969 = 172.92 MHz, 172.75 in quarters.
  reference({
    name: "1920 × 1080 at 59.94 Hz with standard blanking",
    source: "VESA CVT 1.1, worked by hand",
    basis: "arithmetic",
    got: () => {
      const { totalWidth, totalHeight, clock } = cvt(1920, 1080, 59.94, "standard");
      return [totalWidth, totalHeight, clock];
    },
    printed: [2576, 1120, 172_750_000],
    within: 0,
  });
  // 460 × 1080 ÷ (16,683.33 − 460) = 30.6, so 31; 59.94006 × 2080 × 1111 = 138.52 MHz, 138.5 in quarters.
  reference({
    name: "1920 × 1080 at 59.94 Hz with reduced blanking",
    source: "VESA CVT 1.1, worked by hand",
    basis: "arithmetic",
    got: () => [cvt(1920, 1080, 59.94, "reduced").totalHeight, cvt(1920, 1080, 59.94, "reduced").clock],
    printed: [1111, 138_500_000],
    within: 0,
  });
  for (const [hertz, megahertz] of [
    [59.94, 148.35],
    [29.97, 74.18],
    [23.976, 74.18],
  ] as const)
    reference({
      name: `1920 × 1080 at ${hertz} Hz`,
      source: "CTA-861: 148.5 and 74.25 MHz divided by 1.001, printed as 148.35 and 74.18",
      basis: "published",
      got: () => (ctaTiming(1920, 1080, hertz)?.clock ?? 0) / 1e6,
      printed: megahertz,
      within: 0.005,
      because: "two decimals",
    });
});

describe("the dark end of the contrast curve", () => {
  // #0a0a0a: 10 ÷ 255 = 0.03922 is on the line, ÷ 12.92 = 0.0030353; 1.05 ÷ 0.0530353 = 19.798.
  // #0b0b0b: 0.04314 is on the curve, ((0.04314 + 0.055) ÷ 1.055)^2.4 = 0.0033465; 1.05 ÷ 0.0533465 = 19.6826.
  for (const [colour, ratio, within] of [
    ["#0a0a0a", 19.798, 0.0005],
    ["#0b0b0b", 19.6826, 0.0005],
  ] as const)
    reference({
      name: `${colour} on white`,
      source: "WCAG 2.2 relative luminance",
      basis: "arithmetic",
      got: () => contrastRatio(colour, "#ffffff"),
      printed: ratio,
      within,
      because: "the digits worked with",
    });
});

describe("between the rows", () => {
  reference({
    name: "passive copper at 74.25, 75, 148.5, 150, 600 and 620 MHz",
    source: "common practice by HDMI rate",
    basis: "practice",
    got: () => [74.25, 75, 148.5, 150, 600, 620].map((mhz) => hdmiCopper(mhz * 1e6)?.value ?? 0),
    printed: [15, 10, 10, 5, 5, 0],
  });
  reference({
    name: "rates of HDMI 2.1 in Gb/s",
    source: "HDMI 2.1: three lanes of 3 and 6, four of 6, 8, 10 and 12, from 18 up",
    basis: "memory",
    got: () => [...fixedRates],
    printed: [18, 24, 32, 40, 48],
  });
  const wide: PictureSignal = { width: 2560, height: 1600, rate: 60, depth: 8, blanking: "standard" };
  reference({
    name: "2560 × 1600 with standard blanking, 348.5 MHz, over two links of 165 MHz",
    source: "VESA DMT 0x4D; DVI 1.0",
    basis: "memory",
    got: () => carries(links["dvi-dual"], wide).carried,
    printed: false,
  });
  const uhd: PictureSignal = { width: 3840, height: 2160, rate: 60, depth: 8 };
  const needs = (link: keyof typeof links, picture: PictureSignal): number => {
    const { measured } = carries(links[link], picture);
    return measured?.known ? measured.value : 0;
  };
  reference({
    name: "3840 × 2160 at 60 Hz in full colour, 4:2:2 and 4:2:0: 24, 16 and 12 bit a pixel",
    source: "CTA-861: 4400 × 2250 × 60 = 594 Mpx/s; components of each sampling, ITU-R BT.2020",
    basis: "arithmetic",
    got: () =>
      (["4:4:4", "4:2:2", "4:2:0"] as const).map((sampling) => needs("displayport-1.2", { ...uhd, sampling }) / 1e9),
    printed: [14.256, 9.504, 7.128],
    within: 1e-6,
  });
  reference({
    name: "3840 × 2160 at 60 Hz, 10 bit 4:2:0: 594 × 0.5 × 1.25 MHz",
    source: "HDMI 2.0",
    basis: "memory",
    got: () => needs("hdmi-2.0", { ...uhd, depth: 10, sampling: "4:2:0" }) / 1e6,
    printed: 371.25,
    within: 1e-6,
  });
  reference({
    name: "1920 × 1080 at 30 and 50 Hz in SDI",
    source: "SMPTE ST 274, ST 292-1, ST 424",
    basis: "published",
    got: () => [sdiRate(1920, 1080, 30) ?? 0, sdiRate(1920, 1080, 50) ?? 0, sdiRate(1920, 1080, 33) ?? 0],
    printed: [1.485e9, 2.97e9, 0],
  });
});
