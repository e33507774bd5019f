import { formula } from "../../formula/formula.js";
import { unitByCode } from "../../quantity/units.js";
import { consistent } from "../consistent.js";
import { GRAVITY } from "../gravity.js";

/** The strongest grade of rope that is drawn, N/mm²: from memory, so that nothing but advice rests on it. */
export const ROPE_GRADE = 2160;

/** A rod of solid steel: no rope of its diameter has more metal in it. */
export const SOLID = Math.PI / 4;

/**
 * Factors C of the metallic area by construction, of several cores the greatest: with a steel core 6x7 0.432, 6x19 0.449,
 * 6x36 0.46, 8x36 0.468; with a strand as core 6x7 and 6x19M 0.432 and 0.418, which are named 7x7 and 7x19 as well. One
 * strand of 19 wires is by geometry: 19 wires of a fifth of its diameter.
 */
export const ropeAreas: Readonly<Record<string, number>> = {
  "6x7": 0.432,
  "7x7": 0.432,
  "6x19": 0.449,
  "7x19": 0.418,
  "6x36": 0.46,
  "8x36": 0.468,
  "1x19": (19 / 25) * SOLID,
};

/** The least factor there is: what breaks no later than this needs no construction to be told. */
export const LEAST_ROPE_AREA = Math.min(...Object.values(ropeAreas));

export const ropeStrengthMost = formula({
  id: "rigging.rope-strength-most",
  title: "Most that the steel of a rope can bear",
  symbol: "F",
  kind: "mass",
  inputs: {
    d: { kind: "length", is: "diameter of the rope", above: 0 },
    C: { kind: "factor", is: "metallic area ÷ d², by construction", above: 0, most: 1 },
    R: { kind: "stress", is: "grade of the wires", above: 0 },
  },
  expression: "C × d² × R ÷ g",
  source: "rope-factors",
  validity:
    "round wires, nominal diameter; before the loss of laying them up, so no rope breaks later; g = 9.80665 m/s²",
  example: {
    given: { d: 0.008, C: 0.46, R: 1770 },
    gives: (0.46 * 8 * 8 * 1770) / 9.80665,
    within: 1e-6,
    from: "6x36 with steel core, 8 mm, 1770 N/mm²: 0.46 × 64 × 1,770 N (arithmetic)",
  },
  compute: ({ d, C, R }) => (C * d * d * R * 1e6) / GRAVITY,
  // mm² × N/mm² are newtons, in² × ksi thousands of pounds.
  show: ({ d, C, R }, print) => {
    const { us } = consistent(print);
    const across = print(d.value, "length", unitByCode("length", us ? "[in_i]" : "mm"));
    return `${print(C.value, "factor")} × (${across})² × ${print(R.value, "stress")}${us ? " × 1,000" : " ÷ 9.80665"}`;
  },
});
