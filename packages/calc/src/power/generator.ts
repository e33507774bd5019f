import { formula } from "../formula/formula.js";

/** What a generator gives to loads whose power factor is not looked at: its active power, read as volt-amperes. */
export const generatorGives = formula({
  id: "power.generator-gives",
  title: "What a generator gives",
  symbol: "Sg",
  kind: "apparent-power",
  inputs: {
    Sr: { kind: "apparent-power", is: "rated apparent power", above: 0 },
    pf: { kind: "factor", is: "rated power factor", above: 0, most: 1 },
  },
  expression: "Sr × pf",
  source: "electrical-definition",
  validity:
    "loads of any power factor up to 1: the engine gives Sr × pf in watts, and no load takes more watts than volt-amperes",
  example: {
    given: { Sr: 60_000, pf: 0.8 },
    gives: 48_000,
    within: 1e-9,
    from: "rating plates: a set of 60 kVA at 0.8 is one of 48 kW",
  },
  compute: ({ Sr, pf }) => Sr * pf,
  show: ({ Sr, pf }, print) => `${print(Sr.value, Sr.kind)} × ${print(pf.value, "factor")}`,
});

/** What one leg of a generator gives when its legs share alike. */
export const generatorLeg = formula({
  id: "power.generator-leg",
  title: "Current a leg of a generator gives",
  symbol: "Ig",
  kind: "current",
  inputs: {
    Sg: { kind: "apparent-power", is: "what the generator gives", above: 0 },
    n: { kind: "count", is: "legs", least: 1, most: 3 },
    V: { kind: "voltage", is: "voltage between a leg and neutral", above: 0 },
  },
  expression: "Sg ÷ (n × V)",
  source: "electrical-definition",
  validity: "windings alike on one, two or three legs",
  example: {
    given: { Sg: 48_000, n: 3, V: 400 / Math.sqrt(3) },
    gives: 69.282,
    within: 1e-3,
    from: "48 kVA ÷ (√3 × 400 V) = 69.28 A, as tables of three-phase currents print it (69 A)",
  },
  compute: ({ Sg, n, V }) => Sg / (n * V),
});
