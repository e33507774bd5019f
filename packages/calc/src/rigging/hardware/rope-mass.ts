import { formula } from "../../formula/formula.js";

/**
 * Least length mass factor of a stranded steel rope, kg for each 100 m and mm²: EN 12385-4 has 0.327 for 8x7 with a fibre
 * core, and up to 0.417 for 8x36 with a steel one. They are nominal, so that a tenth less is left.
 */
export const LEAST_ROPE_MASS = 0.29;

export const ropeMassLeast = formula({
  id: "rigging.rope-mass-least",
  title: "Least mass of a steel rope without its ends",
  symbol: "m",
  kind: "mass",
  inputs: {
    W: { kind: "factor", is: "length mass factor, kg for each 100 m and mm²", above: 0 },
    d: { kind: "length", is: "diameter of the rope", above: 0 },
    L: { kind: "length", is: "length of the rope", least: 0 },
  },
  expression: "10,000 × W × d² × L",
  source: "rope-length-mass",
  validity: "stranded ropes of steel wire, d and L in m; ferrules, thimbles and what an eye takes come on top",
  example: {
    given: { W: 0.345, d: 0.012, L: 100 },
    gives: 49.7,
    within: 0.05,
    from: "API Specification 9A, Table C.1: class 6 × 7 with fibre core, 12 mm: 49.7 kg for 100 m",
  },
  compute: ({ W, d, L }) => ((W * (d * 1000) ** 2) / 100) * L,
  show: ({ W, d, L }, print) =>
    `${print(W.value, "factor")} × (${Number((d.value * 1000).toPrecision(4))} mm)² ÷ 100 × ${Number(L.value.toPrecision(4))} m`,
});
