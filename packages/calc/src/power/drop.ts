import { formula } from "../formula/formula.js";
import type { Known } from "../formula/value.js";
import type { Print } from "../quantity/print.js";
import { unitByCode } from "../quantity/units.js";

const kilofoot = unitByCode("resistance-per-length", "Ohm/k[ft_i]");

/** Ω/kft × ft needs ÷ 1000 to come out in volts; so does Ω/km × m. The unit shown decides which of the two is used. */
function perThousand(r: Known, L: Known, print: Print): string {
  const us = print(1, "resistance-per-length").endsWith(kilofoot.print);
  const length = print(L.value, "length", unitByCode("length", us ? "[ft_i]" : "m"));
  const rate = print(r.value, "resistance-per-length", us ? kilofoot : unitByCode("resistance-per-length", "Ohm/km"));
  return `${rate} × ${length} ÷ 1,000`;
}

/** Voltage lost along one segment of a two-wire circuit, there and back. */
export const segmentDrop = formula({
  id: "power.segment-drop",
  title: "Voltage drop of a segment",
  symbol: "ΔV",
  kind: "voltage",
  inputs: {
    I: { kind: "current", is: "current in the segment", least: 0 },
    r: { kind: "resistance-per-length", is: "resistance per length of one conductor", least: 0 },
    L: { kind: "length", is: "length of the segment", least: 0 },
  },
  expression: "2 × I × r × L",
  source: "electrical-definition",
  validity: "single phase, line to line or DC; reactance neglected, which holds to about 1/0 AWG",
  example: {
    given: { I: 44, r: 0.491 / 304.8, L: 160 * 0.3048 },
    gives: 6.9,
    within: 0.05,
    from: "240 V, 44 A, 160 ft of 6 AWG (sparkytoolbox.net)",
  },
  compute: ({ I, r, L }) => 2 * I * r * L,
  show: ({ I, r, L }, print) => `2 × ${print(I.value, "current")} × ${perThousand(r, L, print)}`,
});

/** Line-to-line voltage lost along one segment of a balanced three-phase circuit. */
export const segmentDropThreePhase = formula({
  id: "power.segment-drop-three-phase",
  title: "Voltage drop of a segment, three phase",
  symbol: "ΔV",
  kind: "voltage",
  inputs: {
    I: { kind: "current", is: "line current in the segment", least: 0 },
    r: { kind: "resistance-per-length", is: "resistance per length of one conductor", least: 0 },
    L: { kind: "length", is: "length of the segment", least: 0 },
  },
  expression: "√3 × I × r × L",
  source: "electrical-definition",
  validity: "balanced three phase; the result is line to line and is compared with the line-to-line voltage",
  example: {
    given: { I: 100, r: 12.9 / 83690 / 0.3048, L: 200 * 0.3048 },
    gives: 5.3,
    within: 0.05,
    from: "480 V, 100 A, 200 ft of 1 AWG by K = 12.9 (course text Feeders, Feeder Taps & Voltage Drop, NEC 2023)",
  },
  compute: ({ I, r, L }) => Math.sqrt(3) * I * r * L,
  show: ({ I, r, L }, print) => `√3 × ${print(I.value, "current")} × ${perThousand(r, L, print)}`,
});

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
