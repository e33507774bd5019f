import { formula } from "../formula/formula.js";

/** Straight line between two places, in metres: no cable between them is shorter. */
export const straightLine = formula({
  id: "venue.straight-line",
  title: "Straight line between two places",
  symbol: "L",
  kind: "length",
  inputs: {
    Δr: { kind: "length", least: 0, is: "distance to the side" },
    Δs: { kind: "length", least: 0, is: "distance upstage" },
    Δh: { kind: "length", least: 0, is: "difference in height" },
  },
  expression: "√(Δr² + Δs² + Δh²)",
  source: "geometry",
  validity: "nothing in between: it is the least a cable can be, never what it has to be",
  example: { given: { Δr: 2, Δs: 3, Δh: 6 }, gives: 7, within: 1e-12, from: "4 + 9 + 36 = 49 = 7²" },
  compute: ({ Δr, Δs, Δh }) => Math.hypot(Δr, Δs, Δh),
});

/** Length of a way led by places, in metres: straight from each to the next. */
export const ledWay = formula({
  id: "venue.led-way",
  title: "Way led by places",
  symbol: "L",
  kind: "length",
  inputs: { l: { kind: "length", is: "straight piece of the way", many: true, least: 0 } },
  expression: "Σ l",
  source: "geometry",
  validity: "the places are where the cable turns; somebody looked at the way",
  example: { given: { l: [3, 4, 5] }, gives: 12, within: 1e-12, from: "by hand" },
  compute: ({ l }) => l.reduce((sum, each) => sum + each, 0),
});

/** What a cable needs over its way where the house sets nothing: a share for bends and ties, and metres for both ends. */
export const CABLE_ALLOWANCE = { share: 0.05, ends: 1 } as const;

/** Length a cable has to have for a way, in metres: the way and what the house allows for ends, ties and slack. */
export const cableForWay = formula({
  id: "venue.cable-for-way",
  title: "Cable for a way",
  symbol: "C",
  kind: "length",
  inputs: {
    L: { kind: "length", is: "length of the way", least: 0 },
    a: { kind: "ratio", is: "allowance as a share of the way", least: 0 },
    e: { kind: "length", is: "allowance for both ends", least: 0 },
  },
  expression: "L × (1 + a) + e",
  source: "house",
  validity: "a way that was measured or led by places",
  example: { given: { L: 40, a: 0.05, e: 2 }, gives: 44, within: 1e-12, from: "40 × 1.05 + 2" },
  compute: ({ L, a, e }) => L * (1 + a) + e,
});
