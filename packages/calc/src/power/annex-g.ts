import { formula } from "../formula/formula.js";
import { printNumber } from "../quantity/print.js";

/** Limits of IEC 60364-5-52:2009 Table G.52.1 as shares of nominal. */
export const annexGLimits = {
  public: { lighting: 0.03, other: 0.05 },
  private: { lighting: 0.06, other: 0.08 },
} as const;

/** Limit for a main wiring longer than 100 m: 0.005 % more for each metre beyond, at most 0.5 %. `metres` m. */
export const annexGLimit = (supply: keyof typeof annexGLimits, use: "lighting" | "other", metres = 0): number =>
  annexGLimits[supply][use] + Math.min(0.005, Math.max(0, metres - 100) * 0.00005);

/** Reactance per length of a conductor, Ω/m (from memory). */
export const REACTANCE = 0.08e-3;

/** Resistivity in service: 1.25 × that at 20 °C, Ω·mm²/m. */
export const RESISTIVITY = { copper: 0.0225, aluminium: 0.036 } as const;

/** Voltage drop of IEC 60364-5-52 Annex G; b = 2 single phase, 1 three phase (then line to neutral). */
export const annexGDrop = formula({
  id: "power.annex-g-drop",
  title: "Voltage drop, IEC Annex G",
  symbol: "u",
  kind: "voltage",
  inputs: {
    b: { kind: "factor", is: "2 for single phase, 1 for three phase", least: 1, most: 2 },
    L: { kind: "length", is: "length", least: 0 },
    A: { kind: "conductor", is: "cross-section", above: 0 },
    I: { kind: "current", is: "design current", least: 0 },
    pf: { kind: "factor", is: "power factor", above: 0, most: 1 },
    x: { kind: "resistance-per-length", is: "reactance per length", least: 0 },
  },
  expression: "b × (0.0225 × L ÷ A × pf + x × L × √(1 − pf²)) × I",
  source: "iec-60364-5-52-g",
  validity: "copper; three phase is line to neutral: compare with 230 V, not 400 V",
  example: {
    given: { b: 2, L: 30, A: 6, I: 32, pf: 1, x: 0 },
    gives: 7.2,
    within: 0.005,
    from: "6 mm², 32 A, 30 m, 230 V (voltdropcalc.com)",
  },
  compute: ({ b, L, A, I, pf, x }) => b * ((RESISTIVITY.copper * L * pf) / A + x * L * Math.sqrt(1 - pf * pf)) * I,
  show: ({ b, L, A, I, pf, x }) => {
    const [n, metres, area, amperes, cos, ohms] = [b, L, A, I, pf, x].map((each) => printNumber(each.value));
    const real = `0.0225 Ω·mm²/m × ${metres} m ÷ ${area} mm² × ${cos}`;
    return `${n} × (${real} + ${ohms} Ω/m × ${metres} m × √(1 − ${cos}²)) × ${amperes} A`;
  },
});

/** BS 7671 Appendix 4: tabulated mV per ampere and metre; volts. */
export const dropByMillivolts = (millivolts: number, amperes: number, metres: number): number =>
  (millivolts * amperes * metres) / 1000;
