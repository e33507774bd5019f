import { formula } from "../formula/formula.js";

/** Voltage lost to the far end: every segment before it. */
export const farEndDrop = formula({
  id: "power.far-end-drop",
  title: "Voltage drop to the far end",
  symbol: "ΔV",
  kind: "voltage",
  inputs: { dv: { kind: "voltage", is: "drop of a segment", many: true, least: 0 } },
  expression: "Σ dv",
  source: "arithmetic",
  validity: "constant currents; supplies of constant power draw slightly more at the lower voltage",
  example: {
    given: { dv: [5, 4, 3] },
    gives: 12,
    within: 1e-9,
    from: "V. K. Mehta, Principles of Power System, Ex. 13.1: 300 − 288 V at E",
  },
  compute: ({ dv }) => dv.reduce((total, each) => total + each, 0),
});

/** Drop as a share of the supply voltage. */
export const dropShare = formula({
  id: "power.drop-share",
  title: "Voltage drop as a share",
  symbol: "d",
  kind: "ratio",
  inputs: {
    dv: { kind: "voltage", is: "voltage drop", least: 0 },
    V: { kind: "voltage", is: "supply voltage", above: 0 },
  },
  expression: "dv ÷ V",
  source: "arithmetic",
  validity: "the drop and the voltage both line to neutral, or both line to line",
  example: { given: { dv: 7.2, V: 230 }, gives: 0.0313, within: 0.00005, from: "6 mm², 32 A, 30 m (voltdropcalc.com)" },
  compute: ({ dv, V }) => dv / V,
});

/** Voltage that is left at the end. */
export const endVoltage = formula({
  id: "power.end-voltage",
  title: "Voltage at the end",
  symbol: "Ve",
  kind: "voltage",
  inputs: {
    V: { kind: "voltage", is: "supply voltage", above: 0 },
    dv: { kind: "voltage", is: "voltage drop", least: 0 },
  },
  expression: "V − dv",
  source: "arithmetic",
  validity: "drop below the supply voltage",
  example: {
    given: { V: 240, dv: 6.913 },
    gives: 233.1,
    within: 0.05,
    from: "240 V, 44 A, 160 ft of 6 AWG (sparkytoolbox.net)",
  },
  compute: ({ V, dv }) => V - dv,
});
