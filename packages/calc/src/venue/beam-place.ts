import { formula } from "../formula/formula.js";

/** Place along a structure that lies across the hall, in metres from its first end, from the distance to the side. */
export const placeAlong = formula({
  id: "venue.place-along",
  title: "Place along a structure from the distance to the side",
  symbol: "s",
  kind: "length",
  inputs: {
    Δr: { kind: "length", is: "distance to the side from its first end" },
    L: { kind: "length", is: "length of the structure", above: 0 },
    D: { kind: "length", is: "distance to the side from end to end" },
  },
  expression: "Δr × L ÷ D",
  source: "geometry",
  validity: "a straight structure that does not run up and down the stage",
  example: { given: { Δr: 3, L: 10, D: 6 }, gives: 5, within: 1e-12, from: "similar triangles: 3 ÷ 6 of 10" },
  compute: ({ Δr, L, D }) => (Δr * L) / D,
});

/** Place on a bar, in metres from its left end, from a place of it that is known and where both are along the structure. */
export const placeOnBar = formula({
  id: "venue.place-on-bar",
  title: "Place on a bar of what hangs from a point of the structure",
  symbol: "a",
  kind: "length",
  inputs: {
    a0: { kind: "length", is: "place on the bar that is known" },
    Δs: { kind: "length", is: "distance along the structure from there, to the right" },
  },
  expression: "a0 + Δs",
  source: "geometry",
  validity: "the bar hangs along the structure, and its hangs are plumb",
  example: { given: { a0: 1.5, Δs: -0.5 }, gives: 1, within: 1e-12, from: "by hand" },
  compute: ({ a0, Δs }) => a0 + Δs,
});
