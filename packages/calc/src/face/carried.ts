import { formula } from "../formula/formula.js";

/** Mass of a cable or bar from its mass per length. */
export const lineMass = formula({
  id: "face.line-mass",
  title: "Mass of a cable or bar",
  symbol: "m",
  kind: "mass",
  inputs: {
    ρ: { kind: "mass-per-length", is: "mass per length", least: 0 },
    L: { kind: "length", is: "length", least: 0 },
    n: { kind: "count", is: "number of pieces", least: 0 },
  },
  expression: "n × ρ × L",
  source: "geometry",
  validity: "the same mass all along",
  example: {
    given: { ρ: 2.72 * 1.488163944, L: 21 * 0.3048, n: 1 },
    gives: 57.12 * 0.45359237,
    within: 1e-6,
    from: "ASME B36.10M, NPS 1-1/2 Std 2.72 lb/ft, 21 ft stock length: 57.12 lb",
  },
  compute: ({ ρ, L, n }) => n * ρ * L,
});

/** Mass of several pieces of one part. */
export const partsMass = formula({
  id: "face.parts-mass",
  title: "Mass of several pieces of one part",
  symbol: "m",
  kind: "mass",
  inputs: {
    n: { kind: "count", is: "number of pieces", least: 0 },
    p: { kind: "mass", is: "mass of a piece", least: 0 },
  },
  expression: "n × p",
  source: "arithmetic",
  validity: "pieces alike",
  example: { given: { n: 6, p: 2.4 }, gives: 14.4, within: 1e-9, from: "by hand" },
  compute: ({ n, p }) => n * p,
});
