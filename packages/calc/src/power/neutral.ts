import { formula } from "../formula/formula.js";

/**
 * The most a neutral can carry. Of a load of power factor λ no more than √(1 − λ²) of its current is distortion, and
 * third harmonics, which add up in the neutral from all legs, are at most all of that. The rest is a vector sum, which
 * is at most as large as that of the whole currents: its square is (A + B + C)² − 3 × (A × B + B × C + C × A), and that
 * of the third harmonics (1 − λ²) × (A + B + C)².
 */
export const neutralMost = formula({
  id: "power.neutral-most",
  title: "Most that the neutral of a three-phase circuit carries",
  symbol: "I",
  kind: "current",
  inputs: {
    A: { kind: "current", is: "current of the loads on leg A and neutral", least: 0 },
    B: { kind: "current", is: "the same on leg B", least: 0 },
    C: { kind: "current", is: "the same on leg C", least: 0 },
    λ: { kind: "factor", is: "least power factor of the loads", above: 0, most: 1 },
  },
  expression: "√((2 − λ²) × (A + B + C)² − 3 × (A × B + B × C + C × A))",
  source: "electrical-definition",
  validity: "loads of like displacement on all legs; all distortion counted as third harmonic, the safe side",
  example: {
    given: { A: 10, B: 10, C: 10, λ: 0.8 },
    gives: 18,
    within: 1e-9,
    from: "three alike at 0.8: nothing but 0.6 of 30 A (arithmetic)",
  },
  compute: ({ A, B, C, λ }) => Math.sqrt(Math.max(0, (2 - λ * λ) * (A + B + C) ** 2 - 3 * (A * B + B * C + C * A))),
  show: ({ A, B, C, λ }, print) => {
    const [a, b, c] = [A, B, C].map((each) => print(each.value, "current"));
    return `√((2 − ${print(λ.value, "factor")}²) × (${a} + ${b} + ${c})² − 3 × (${a} × ${b} + ${b} × ${c} + ${c} × ${a}))`;
  },
});
