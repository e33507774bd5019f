import { formula } from "../formula/formula.js";

/** Apparent power a panel or circuit draws: VA from W and power factor. */
export const apparentPower = formula({
  id: "power.apparent",
  title: "Apparent power",
  symbol: "S",
  kind: "apparent-power",
  inputs: {
    P: { kind: "power", is: "power", least: 0 },
    pf: { kind: "factor", is: "power factor", above: 0, most: 1 },
  },
  expression: "P ÷ pf",
  source: "electrical-definition",
  validity: "any supply; power factor above 0 and at most 1",
  example: { given: { P: 100, pf: 0.8 }, gives: 125, within: 1e-9, from: "by hand" },
  compute: ({ P, pf }) => P / pf,
  show: ({ P, pf }, print) => `${print(P.value, P.kind)} ÷ ${Number(pf.value.toPrecision(4))}`,
});

/** Load of a circuit: everything on it, each in VA. */
export const circuitLoad = formula({
  id: "power.circuit-load",
  title: "Load of a circuit",
  symbol: "S",
  kind: "apparent-power",
  inputs: { s: { kind: "apparent-power", is: "load", many: true, least: 0 } },
  expression: "Σ s",
  source: "arithmetic",
  validity: "loads of like power factor; the plain sum is never below the vector sum",
  example: { given: { s: [500, 250, 150] }, gives: 900, within: 1e-9, from: "by hand" },
  compute: ({ s }) => s.reduce((total, each) => total + each, 0),
});

/** Panels that a circuit carries beside what else is on it. */
export const panelsThatFit = formula({
  id: "power.panels-that-fit",
  title: "Panels a circuit carries",
  symbol: "k",
  kind: "count",
  inputs: {
    Ic: { kind: "current", is: "continuous rating of the circuit", least: 0 },
    V: { kind: "voltage", is: "voltage across the load", above: 0 },
    So: { kind: "apparent-power", is: "everything else on the circuit", least: 0 },
    s: { kind: "apparent-power", is: "load of one panel", above: 0 },
  },
  expression: "floor((Ic × V − So) ÷ s)",
  source: "arithmetic",
  validity: "two-wire supplies; panels of one kind; none where the rest is more than the circuit carries",
  example: {
    given: { Ic: 16, V: 120, So: 0, s: 240 },
    gives: 8,
    within: 0,
    from: "80 % table, 20 A at 120 V = 1920 VA (NEC 210.20(A)); 8 × 240 VA",
  },
  // 16 A × 120 V ÷ 240 VA is 8 but for rounding.
  compute: ({ Ic, V, So, s }) => Math.max(0, Math.floor(((Ic * V - So) / s) * (1 + 1e-12))),
});

/** Current of a single-phase or line-to-line load. */
export const loadCurrent = formula({
  id: "power.current",
  title: "Current",
  symbol: "I",
  kind: "current",
  inputs: {
    S: { kind: "apparent-power", is: "apparent power", least: 0 },
    V: { kind: "voltage", is: "voltage across the load", above: 0 },
  },
  expression: "S ÷ V",
  source: "electrical-definition",
  validity: "two-wire supplies: line to neutral, line to line, or DC",
  example: {
    given: { S: 3840, V: 240 },
    gives: 16,
    within: 1e-9,
    from: "80 % table, 20 A at 240 V = 3840 VA (NEC 210.20(A))",
  },
  compute: ({ S, V }) => S / V,
});

/** Line current of a balanced three-phase load. */
export const threePhaseCurrent = formula({
  id: "power.current-three-phase",
  title: "Line current, balanced three phase",
  symbol: "I",
  kind: "current",
  inputs: {
    S: { kind: "apparent-power", is: "apparent power", least: 0 },
    V: { kind: "voltage", is: "line-to-line voltage", above: 0 },
  },
  expression: "S ÷ (√3 × V)",
  source: "electrical-definition",
  validity: "the same load on every leg",
  example: {
    given: { S: 8736, V: 208 },
    gives: 24.249,
    within: 0.005,
    from: "three equal 14 A line-to-line loads, industrialmonitordirect.com (3-phase wye leg currents)",
  },
  compute: ({ S, V }) => S / (Math.sqrt(3) * V),
});
