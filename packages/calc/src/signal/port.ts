import { formula } from "../formula/formula.js";
import { printNumber } from "../quantity/print.js";

/** The rate and depth a maker's pixel figure is given at, in the trade. */
export const STATED_AT = { rate: 60, bitsPerPixel: 24 } as const;

/** The same floor on every machine: a quotient that is whole but for rounding counts as whole. */
const wholeBelow = (value: number): number => Math.floor(value * (1 + 1e-13));

/** Bits of a pixel: red, green and blue at the depth of one component. */
export const bitsPerPixel = formula({
  id: "signal.bits-per-pixel",
  title: "Bits of a pixel",
  symbol: "b",
  kind: "colour-depth",
  inputs: { d: { kind: "colour-depth", is: "bits of a colour component", above: 0 } },
  expression: "3 × d",
  source: "arithmetic",
  validity: "red, green and blue in full (4:4:4)",
  example: { given: { d: 10 }, gives: 30, within: 0, from: "three components of 10 bit" },
  compute: ({ d }) => 3 * d,
});

/** A maker's pixel figure of a port, given at one rate and depth, at another. */
export const portCapacity = formula({
  id: "signal.port-capacity",
  title: "Pixels a port drives at this rate and depth",
  symbol: "N",
  kind: "pixels",
  inputs: {
    n: { kind: "pixels", is: "maker's pixels of a port at rate f0 and b0", above: 0 },
    b0: { kind: "colour-depth", is: "bits of a pixel the figure is stated for", above: 0 },
    f0: { kind: "frequency", is: "frame rate the figure is stated for", above: 0 },
    b: { kind: "colour-depth", is: "bits of a pixel", above: 0 },
    f: { kind: "frequency", is: "frame rate", above: 0 },
  },
  expression: "floor(n × (b0 × f0) ÷ (b × f))",
  source: "practice",
  also: ["part"],
  validity:
    "that a port's load goes with bits a second is an assumption; upward, beyond the figure stated, only the maker's own figure for that rate and depth is relied on",
  example: {
    given: { n: 512_000, b0: 24, f0: 60, b: 30, f: 60 },
    gives: 409_600,
    within: 0,
    from: "512 000 × 24 ÷ 30",
  },
  compute: ({ n, b0, f0, b, f }) => wholeBelow((n * b0 * f0) / (b * f)),
});

/** What a link of this rate can carry whatever the maker says. */
export const portBound = formula({
  id: "signal.port-bound",
  title: "Pixels a link can carry at most",
  symbol: "N",
  kind: "pixels",
  inputs: {
    r: { kind: "data-rate", is: "rate of the link", above: 0 },
    η: { kind: "ratio", is: "share of the rate left for payload", above: 0, most: 1 },
    b: { kind: "colour-depth", is: "bits of a pixel", above: 0 },
    f: { kind: "frequency", is: "frame rate", above: 0 },
  },
  expression: "floor(r × η ÷ (b × f))",
  source: "ieee-802.3",
  validity: "every pixel sent in every frame, uncompressed",
  example: {
    given: { r: 1e9, η: 1500 / 1538, b: 24, f: 60 },
    gives: 677_286,
    within: 0,
    from: "1 Gb/s × 1500 ÷ 1538 ÷ (24 × 60)",
  },
  compute: ({ r, η, b, f }) => wholeBelow((r * η) / (b * f)),
  // The share to nine digits: with four the whole pixels would not come out.
  show: ({ r, η, b, f }, print) =>
    `floor(${print(r.value, r.kind)} × ${printNumber(η.value, 9)} ÷ (${print(b.value, b.kind)} × ${print(f.value, f.kind)}))`,
});

/** Whole panels a port can drive. */
export const panelsPerPort = formula({
  id: "signal.panels-per-port",
  title: "Panels a port drives",
  symbol: "k",
  kind: "count",
  inputs: {
    n: { kind: "pixels", is: "pixels of a port", least: 0 },
    x: { kind: "pixels", is: "pixels of a panel across", least: 1 },
    y: { kind: "pixels", is: "pixels of a panel down", least: 1 },
  },
  expression: "floor(n ÷ (x × y))",
  source: "arithmetic",
  validity: "panels of one kind; a panel is never shared between ports",
  example: { given: { n: 512_000, x: 160, y: 160 }, gives: 20, within: 0, from: "20 × 25 600 = 512 000 exactly" },
  compute: ({ n, x, y }) => wholeBelow(n / (x * y)),
});

/** Data rate in bit/s of a raster's visible pixels. */
export const activeRate = formula({
  id: "signal.active-rate",
  title: "Data rate of the visible pixels",
  symbol: "R",
  kind: "data-rate",
  inputs: {
    n: { kind: "pixels", is: "pixels", least: 0 },
    b: { kind: "colour-depth", is: "bits of a pixel", above: 0 },
    f: { kind: "frequency", is: "frame rate", above: 0 },
  },
  expression: "n × b × f",
  source: "arithmetic",
  validity: "uncompressed, blanking left out",
  example: { given: { n: 2_073_600, b: 24, f: 60 }, gives: 2_985_984_000, within: 0, from: "1920 × 1080 × 24 × 60" },
  compute: ({ n, b, f }) => n * b * f,
});
