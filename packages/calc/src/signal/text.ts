import { fromMillimetres, inMillimetres } from "../face/millimetres.js";
import { formula } from "../formula/formula.js";
import { unitByCode } from "../quantity/units.js";

const MINUTE = unitByCode("angle", "'");

/** Least and preferred character height, in degrees of the angle it fills at the eye (ISO 9241-303, NUREG-0700). */
export const CHARACTER_ANGLE = { least: 16 / 60, preferred: 20 / 60, most: 24 / 60 } as const;

/**
 * Width of a character in heights of a capital, the space beside it and spaces between words among them: bold sans-serif
 * capitals come to 0.842 on average over English text (widths as published, shares of letters from memory). A definite
 * text is narrower or wider, all W up to 1.43.
 */
export const CHARACTER_ADVANCE = 0.85;

/** Capital height in pixels: the share of the line pitch, the face's height divided between the lines. */
export const capPixels = formula({
  id: "viewing.cap-pixels",
  title: "Pixels of a capital",
  symbol: "N",
  kind: "pixels",
  inputs: {
    y: { kind: "pixels", is: "pixels of the face down", least: 1 },
    l: { kind: "count", is: "lines of text", least: 1 },
    c: { kind: "ratio", is: "capital height as a share of the line pitch", above: 0, most: 1 },
  },
  expression: "floor(y ÷ l × c)",
  source: "arithmetic",
  validity: "lines share the height of the face evenly; a part of a pixel is not shown",
  example: { given: { y: 168, l: 2, c: 0.7 }, gives: 58, within: 0, from: "84 pixels a line × 0.7 = 58.8" },
  // 100 × 0.7 is 70 but for rounding.
  compute: ({ y, l, c }) => Math.floor((y / l) * c + 1e-9),
});

/** Capital height in metres. */
export const capHeight = formula({
  id: "viewing.cap-height",
  title: "Height of a capital",
  symbol: "h",
  kind: "length",
  inputs: {
    n: { kind: "pixels", is: "pixels of a capital", least: 0 },
    p: { kind: "length", is: "pixel pitch", above: 0 },
  },
  expression: "n × p",
  source: "geometry",
  validity: "upright pixels of the same pitch",
  example: { given: { n: 64, p: 0.00390625 }, gives: 0.25, within: 1e-12, from: "64 of 128 pixels of 500 mm" },
  compute: ({ n, p }) => n * p,
  show: ({ n, p }, print) =>
    `${print(n.value, n.kind)} × ${inMillimetres(p, print)}${fromMillimetres(n.value * p.value, print)}`,
});

/** Characters that go onto a line; an estimate, for a definite text is measured. */
export const lineCharacters = formula({
  id: "viewing.line-characters",
  title: "Characters of a line",
  symbol: "C",
  kind: "count",
  inputs: {
    x: { kind: "pixels", is: "pixels of the face across", least: 1 },
    k: { kind: "factor", is: "width of a character in heights of a capital", above: 0 },
    n: { kind: "pixels", is: "pixels of a capital", least: 1 },
  },
  expression: "floor(x ÷ (k × n))",
  source: "core-font-metrics",
  also: ["practice"],
  validity: "text of usual letters; one of wide letters takes up to 1.43 of a capital for each",
  example: {
    given: { x: 1008, k: 0.833, n: 40 },
    gives: 30,
    within: 0,
    from: "capitals of a sans serif, 0.833 of their height on average: 1008 ÷ 33.3 = 30.3",
  },
  compute: ({ x, k, n }) => Math.floor(x / (k * n) + 1e-9),
});

/** Character height in metres that fills an angle at a distance. */
export const characterHeight = formula({
  id: "viewing.character-height",
  title: "Character height for an angle",
  symbol: "h",
  kind: "length",
  inputs: {
    d: { kind: "length", is: "viewing distance", above: 0 },
    a: { kind: "angle", is: "angle at the eye", above: 0, most: 5 },
  },
  expression: "6.283 × d × a ÷ 21600′",
  source: "nureg-0700",
  validity: "small angles, looking straight on",
  example: { given: { d: 10, a: 16 / 60 }, gives: 0.0465, within: 0.00005, from: "10 m, 16′: 46.5 mm" },
  compute: ({ d, a }) => (6.283 * d * a * 60) / 21_600,
  show: ({ d, a }, print) => `6.283 × ${print(d.value, "length")} × ${print(a.value, "angle", MINUTE)} ÷ 21600′`,
});

/** Angle in degrees a character fills at the eye. */
export const characterAngle = formula({
  id: "viewing.character-angle",
  title: "Angle a character fills",
  symbol: "a",
  kind: "angle",
  inputs: {
    h: { kind: "length", is: "character height", least: 0 },
    d: { kind: "length", is: "viewing distance", above: 0 },
  },
  expression: "h × 21600′ ÷ (6.283 × d)",
  source: "nureg-0700",
  validity: "small angles, looking straight on",
  example: {
    given: { h: 0.05, d: 10 },
    gives: 17.19 / 60,
    within: 0.005 / 60,
    from: "1/200 of the distance is 17.19′",
  },
  compute: ({ h, d }) => (h * 21_600) / (6.283 * d) / 60,
});
