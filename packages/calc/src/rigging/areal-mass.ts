import { formula } from "../formula/formula.js";
import { GRAVITY } from "./gravity.js";

/** Mass of something flat by its size. */
export const arealMass = formula({
  id: "rigging.areal-mass",
  title: "Mass by size",
  symbol: "m",
  kind: "mass",
  inputs: {
    q: { kind: "areal-load", is: "weight of a unit of area", least: 0 },
    w: { kind: "length", is: "width", least: 0 },
    h: { kind: "length", is: "height", least: 0 },
  },
  expression: "q × w × h ÷ g",
  source: "arithmetic",
  validity: "anything whose weight is spread over its face",
  example: {
    given: { q: 7850 * 0.003 * 9.80665, w: 2, h: 1 },
    gives: 47.1,
    within: 1e-9,
    from: "steel sheet of 3 mm, 7,850 kg/m³ (EN 1991-1-1 Table A.4): 23.55 kg/m²; 2 m² of it",
  },
  compute: ({ q, w, h }) => (q * w * h) / GRAVITY,
  show: ({ q, w, h }, print) =>
    `${print(q.value / GRAVITY, "factor")} kg/m² × ${print(w.value, "factor")} m × ${print(h.value, "factor")} m`,
});
