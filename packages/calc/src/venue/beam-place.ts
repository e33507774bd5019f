import { formula } from "../formula/formula.js";

/** Place along a structure that lies across the hall, in metres from its first end, from the distance to the side. */
export const placeAlong = formula({
  id: "venue.place-along",
  title: "Place along a structure from the distance to the side",
  symbol: "s",
  kind: "length",
  inputs: {
    Δr: { kind: "length", is: "distance to the side from its first end", least: 0 },
    L: { kind: "length", is: "length of the structure", above: 0 },
    D: { kind: "length", is: "distance to the side from end to end", above: 0 },
  },
  expression: "Δr × L ÷ D",
  source: "geometry",
  validity: "a straight structure that does not run up and down the stage",
  example: { given: { Δr: 3, L: 10, D: 6 }, gives: 5, within: 1e-12, from: "similar triangles: 3 ÷ 6 of 10" },
  compute: ({ Δr, L, D }) => (Δr * L) / D,
});
