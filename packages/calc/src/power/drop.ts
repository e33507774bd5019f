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

/**
 * Voltage lost between two wires of a common three-phase supply line that also feeds loads on the other legs. A load on
 * another pair of lines shares one of the two wires, 60° away from them: it counts half of the same pair's, which for
 * three equal loads makes the √3 of balanced three phase. A load that joins one wire at 30° counts √3 ÷ 2. What other
 * legs would take off again is left out: they may be switched off.
 */
export const sharedLineDrop = formula({
  id: "power.shared-line-drop",
  title: "Voltage drop of a line shared by loads on several legs",
  symbol: "ΔV",
  kind: "voltage",
  inputs: {
    I: { kind: "current", is: "current of everything on the same two wires", least: 0 },
    J: { kind: "current", is: "current on the other two pairs of lines", least: 0 },
    K: { kind: "current", is: "current that joins one of the two wires at 30°", least: 0 },
    r: { kind: "resistance-per-length", is: "resistance per length of one conductor", least: 0 },
    L: { kind: "length", is: "length of the line", least: 0 },
  },
  expression: "(2 × I + J ÷ 2 + 0.866 × K) × r × L",
  source: "electrical-definition",
  validity: "loads of like power factor; reactance neglected; K is 0 where there is no such load",
  example: {
    // Three equal line-to-line loads: √3 × 24.249 A of line current is 42 A, as 2 × 14 + 28 ÷ 2 is.
    given: { I: 14, J: 28, K: 0, r: 1 / 42, L: 1 },
    gives: 1,
    within: 0.0005,
    from: "three equal 14 A line-to-line loads are 24.25 A a line (industrialmonitordirect.com); drop √3 × I × r × L",
  },
  compute: ({ I, J, K, r, L }) => (2 * I + J / 2 + (Math.sqrt(3) / 2) * K) * r * L,
  show: ({ I, J, K, r, L }, print) => {
    const others = [
      ...(J.value > 0 ? [`${print(J.value, "current")} ÷ 2`] : []),
      ...(K.value > 0 ? [`0.866 × ${print(K.value, "current")}`] : []),
    ];
    return `(${[`2 × ${print(I.value, "current")}`, ...others].join(" + ")}) × ${perThousand(r, L, print)}`;
  },
});
