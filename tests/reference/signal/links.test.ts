import {
  carries,
  cvt,
  fixedRate,
  fixedRateMost,
  type LinkId,
  links,
  type PictureSignal,
  repetitionNeeded,
  sdiRate,
  TMDS_FLOOR,
  tmdsClock,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

const of = (width: number, height: number, rate = 60, depth = 8): PictureSignal => ({ width, height, rate, depth });
/** SMPTE lists its rasters at 10 bit 4:2:2. */
const over = (width: number, height: number, rate = 60): PictureSignal => ({
  ...of(width, height, rate),
  sampling: "4:2:2",
});
const hd = of(1920, 1080);
const uhd = of(3840, 2160);

const cases: readonly (readonly [LinkId, PictureSignal, boolean, string, "published" | "memory"])[] = [
  ["dvi", hd, true, "DVI 1.0: 148.5 of 165 MHz", "published"],
  ["dvi", of(2560, 1440), false, "DVI 1.0: 234.59 over 165 MHz", "published"],
  ["dvi", of(1920, 1080, 60, 10), false, "DVI 1.0: 8 bit", "memory"],
  [
    "dvi-dual",
    { ...of(2560, 1600), blanking: "reduced" },
    true,
    "VESA DMT 0x4C: 268.5 MHz; DVI 1.0: two links of 165 MHz",
    "memory",
  ],
  ["dvi-dual", of(2560, 1600), false, "VESA DMT 0x4D: 348.5 MHz with standard blanking, over 330", "memory"],
  ["dvi-dual", uhd, false, "DVI 1.0: two links of 165 MHz, 594 MHz (CTA-861)", "published"],
  ["hdmi-1.4", { ...of(1920, 1080, 60, 12), sampling: "4:2:2" }, true, "HDMI 1.3: 4:2:2 at 148.5 MHz", "memory"],
  ["hdmi-2.0", { ...of(3840, 2160, 60, 12), sampling: "4:2:2" }, true, "HDMI 2.0: 4:2:2 at 594 MHz", "memory"],
  ["dvi", { ...of(1920, 1200), blanking: "standard" }, false, "VESA DMT 0x45: 193.25 MHz over 165", "memory"],
  ["dvi", { ...of(1920, 1200), blanking: "reduced" }, true, "VESA DMT 0x44: 154 of 165 MHz", "memory"],
  ["hdmi-1.2", of(1920, 1080, 120), false, "HDMI 1.2: 297 over 165 MHz", "published"],
  ["hdmi-1.4", of(1920, 1080, 120), true, "HDMI 1.3: 297 of 340 MHz", "published"],
  ["hdmi-1.4", of(3840, 2160, 30), true, "HDMI 1.3: 297 of 340 MHz", "published"],
  ["hdmi-1.4", uhd, false, "HDMI 1.3: 594 over 340 MHz", "published"],
  ["hdmi-2.0", uhd, true, "HDMI 2.0: 594 of 600 MHz", "memory"],
  ["hdmi-2.0", of(3840, 2160, 60, 10), false, "HDMI 2.0: 594 × 1.25 = 742.5 over 600 MHz", "memory"],
  ["hdmi-2.0", { ...of(3840, 2160, 60, 10), sampling: "4:2:0" }, true, "HDMI 2.0: 594 × 0.5 × 1.25 = 371.25", "memory"],
  ["hdmi-1.4", of(640, 480), true, "DVI 1.0, CTA-861 format 1: 25.175 MHz", "published"],
  ["hdmi-1.4", of(768, 128), false, "HDMI 1.3: below 25 MHz", "published"],
  ["hdmi-1.4", of(1008, 168), false, "HDMI 1.3: below 25 MHz", "published"],
  ["hdmi-1.4", of(672, 168), false, "HDMI 1.3: below 25 MHz", "published"],
  ["hdmi-1.4", of(3072, 160), true, "HDMI 1.3: 33.096 MHz is above 25 MHz", "published"],
  ["displayport-1.2", uhd, true, "DisplayPort 1.2: 14.3 of 17.28 Gb/s", "memory"],
  ["displayport-1.2", of(3840, 2160, 120), false, "DisplayPort 1.2: 28.5 over 17.28 Gb/s", "memory"],
  ["hd-sdi", over(1920, 1080, 30), true, "SMPTE ST 292-1, ST 274", "published"],
  ["hd-sdi", over(1280, 720), true, "SMPTE ST 292-1, ST 296", "published"],
  ["hd-sdi", over(1920, 1080), false, "SMPTE ST 292-1: needs 2.97 Gb/s", "published"],
  ["3g-sdi", over(1920, 1080), true, "SMPTE ST 424", "published"],
  ["3g-sdi", over(1920, 1080, 59.94), true, "SMPTE ST 424", "published"],
  ["3g-sdi", over(3072, 160), false, "SMPTE ST 274: no such raster", "published"],
  ["12g-sdi", of(1920, 1080, 75), false, "SMPTE ST 274: no such rate", "published"],
  ["12g-sdi", over(3840, 2160), true, "SMPTE ST 2082", "published"],
  ["6g-sdi", over(3840, 2160), false, "SMPTE ST 2081", "memory"],
  ["6g-sdi", over(3840, 2160, 30), true, "SMPTE ST 2081", "memory"],
];

describe("what a link carries", () => {
  for (const [id, picture, carried, source, basis] of cases)
    reference({
      name: `${links[id].name}, ${picture.width} × ${picture.height} at ${picture.rate} Hz, ${picture.depth} bit`,
      source,
      basis,
      got: () => carries(links[id], picture).carried,
      printed: carried,
    });
  test("what is not carried says why and what to do instead", () => {
    for (const [id, picture, carried] of cases) {
      const verdict = carries(links[id], picture);
      expect(verdict.why).not.toBe("");
      expect(verdict.instead === undefined).toBe(carried);
    }
  });
  test("a raster too slow for the link is told the clock it lacks and the raster to send", () => {
    const verdict = carries(links["hdmi-1.4"], of(768, 128));
    expect(verdict.why).toContain("25 MHz");
    expect(verdict.instead).toContain("1920 × 1080");
    expect(verdict.sense).toBe("at least");
  });
});

describe("what is not told of a picture decides nothing", () => {
  const decides = (link: LinkId, picture: PictureSignal) => carries(links[link], picture).undecided ?? "told";
  reference({
    name: "1920 × 1200 over one link of DVI with blanking not told, reduced, standard",
    source: "VESA DMT 0x44 154 MHz, 0x45 193.25 MHz; DVI 1.0: 165 MHz",
    basis: "memory",
    got: () =>
      [
        decides("dvi", of(1920, 1200)),
        decides("dvi", { ...of(1920, 1200), blanking: "reduced" }),
        decides("dvi", { ...of(1920, 1200), blanking: "standard" }),
      ].join(", "),
    printed: "blanking, told, told",
  });
  reference({
    name: "1920 × 1080 at 60 Hz over 3G and 12G with sampling not told, and over 3G in full colour",
    source: "SMPTE ST 424: 2.97 Gb/s at 10 bit 4:2:2; ST 2082: 11.88 Gb/s",
    basis: "published",
    got: () =>
      [
        decides("3g-sdi", hd),
        carries(links["12g-sdi"], hd).carried,
        carries(links["3g-sdi"], { ...hd, sampling: "4:4:4" }).carried,
      ].join(", "),
    printed: "sampling, true, false",
  });
  reference({
    name: "clock shown of a raster whose blanking is not told: the greatest a source may choose",
    source: "VESA DMT 0x45: 193.25 MHz of the 340 MHz of HDMI 1.4",
    basis: "memory",
    got: () => {
      const { measured } = carries(links["hdmi-1.4"], of(1920, 1200));
      return measured?.known ? measured.value / 1e6 : 0;
    },
    printed: 193.25,
  });
});

describe("TMDS clock", () => {
  for (const [c, b, s, T] of [
    [148.5, 24, 1, 148.5],
    [148.5, 30, 1, 185.625],
    [148.5, 36, 1, 222.75],
    [594, 30, 1, 742.5],
    [594, 30, 0.5, 371.25],
  ] as const)
    reference({
      name: `${c} MHz, ${b} bit, × ${s}`,
      source: "HDMI 1.3: clock × bits ÷ 24; 4:2:0 counts half",
      basis: "published",
      got: () => tmdsClock.compute({ c: c * 1e6, b, s }) / 1e6,
      printed: T,
    });
  reference({
    name: "floor",
    source: "HDMI 1.3 overview: 25 MHz",
    basis: "published",
    got: () => TMDS_FLOOR / 1e6,
    printed: 25,
  });
  for (const [width, height, mode, times] of [
    [768, 128, "reduced-2", 4],
    [1008, 168, "reduced-2", 3],
    [672, 168, "reduced-2", 4],
    [640, 480, "standard", 2],
    [3072, 160, "reduced-2", 1],
  ] as const)
    reference({
      name: `repetition of ${width} × ${height}`,
      source: "ceil(25 MHz ÷ pixel clock)",
      basis: "arithmetic",
      got: () => repetitionNeeded(cvt(width, height, 60, mode).clock),
      printed: times,
    });
  reference({
    name: "just under and at the floor",
    source: "HDMI 1.3 overview",
    basis: "published",
    got: () => [repetitionNeeded(24.99e6), repetitionNeeded(25e6)],
    printed: [2, 1],
  });
});

test("SDI has 23.98 but no 24.975 Hz", () => {
  expect(sdiRate(1920, 1080, 23.976)).toBe(1.485e9);
  expect(sdiRate(1920, 1080, 25_000 / 1001)).toBeUndefined();
});

test("a picture that is none is not carried, and nothing throws", () => {
  for (const link of notEmpty(Object.values(links)))
    for (const [width, height, rate] of [
      [0, 0, 60],
      [4, 4, 60],
      [1920, 1080, 0],
      [1920.5, 1080, 60],
    ] as const)
      expect(carries(link, of(width, height, rate)).carried).toBe(false);
});

describe("HDMI 2.1 at a fixed rate", () => {
  const page = "cinemaconfig.com, Fixed Rate Link";
  reference({
    name: "48 Gb/s coded 16 in 18",
    source: page,
    basis: "published",
    got: () => fixedRateMost(48).payload / 1e9,
    printed: 42.6,
    within: 0.1,
    because: "42.67 is printed cut off as “approximately 42.6”",
  });
  const card = "techpowerup.com/forums 301355: a 48 Gb/s port without compression";
  for (const [rate, depth] of [
    [144, 10],
    [120, 12],
  ] as const)
    reference({
      name: `3840 × 2160 at ${rate} Hz, ${depth} bit is inside the bound of 48 Gb/s`,
      source: card,
      basis: "published",
      got: () => carries(fixedRateMost(48), of(3840, 2160, rate, depth)).carried,
      printed: true,
    });
  reference({
    name: "7680 × 4320 at 60 Hz in full colour needs compression",
    source: "cinemaconfig.com, Fixed Rate Link; 7680 × 4320 × 60 × 24 bit = 47.8 Gb/s",
    basis: "arithmetic",
    got: () => carries(fixedRateMost(48), of(7680, 4320)).carried,
    printed: false,
  });
  test("what is certain is never more than what nothing passes", () => {
    for (const rate of [18, 24, 32, 40, 48] as const)
      expect(fixedRate(rate).payload).toBeLessThan(fixedRateMost(rate).payload);
  });
});
