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
