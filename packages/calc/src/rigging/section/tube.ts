import { formula } from "../../formula/formula.js";

/** Section properties of a round tube, plain numbers in metres: A m², I m⁴, S (elastic) m³, Z (plastic) m³, r m. */
export interface TubeProperties {
  readonly area: number;
  readonly secondMoment: number;
  readonly elastic: number;
  readonly plastic: number;
  readonly gyration: number;
}

/** @throws RangeError when the wall is not thinner than half the diameter. Source: geometry of a ring. */
export function tubeProperties(outside: number, wall: number): TubeProperties {
  if (!(outside > 0 && wall > 0 && wall < outside / 2))
    throw new RangeError("a tube's wall has to be above zero and below half its diameter");
  const inside = outside - 2 * wall;
  const area = (Math.PI * (outside ** 2 - inside ** 2)) / 4;
  const secondMoment = (Math.PI * (outside ** 4 - inside ** 4)) / 64;
  return {
    area,
    secondMoment,
    elastic: (2 * secondMoment) / outside,
    plastic: (outside ** 3 - inside ** 3) / 6,
    gyration: Math.sqrt(secondMoment / area),
  };
}

export const tubePlasticModulus = formula({
  id: "rigging.tube-plastic-modulus",
  title: "Plastic modulus of a round tube",
  symbol: "Z",
  kind: "section-modulus",
  inputs: {
    D: { kind: "length", is: "outside diameter", above: 0 },
    t: { kind: "length", is: "wall", above: 0 },
  },
  expression: "(D³ − (D − 2 × t)³) ÷ 6",
  source: "tube-formula",
  validity: "round tube with a wall thinner than half its diameter",
  example: {
    given: { D: 0.0483, t: 0.004 },
    gives: 7.87e-6,
    within: 0.005e-6,
    from: "EN 39 type 4, 48.3 × 4.0 mm: W_pl 7.87 cm³ (data sheets to TG20)",
  },
  // A wall that does not fit is a slip in a part, which is told; it must not stop the inspection.
  compute: ({ D, t }) => (2 * t < D ? tubeProperties(D, t).plastic : Number.NaN),
});
