import {
  annexGDrop,
  annexGLimit,
  awgArea,
  dropByK,
  gaugeAt,
  gaugeOf,
  iecAmbient,
  isContinuous,
  K,
  metricRow,
  nextBreaker,
  portableRows,
  RESISTIVITY,
  standardBreakers,
} from "@plumbmark/calc";
import { describe } from "vitest";
import { reference } from "../check.js";

describe("portable power cable, two current-carrying conductors", () => {
  const handbook = "NEC Table 400.5(A)(2), by Set Lighting Technician's Handbook, 4th ed., Table D.1";
  const two = (column: "at60" | "at75" | "at90") => () => portableRows.flatMap((row) => row[column]?.[1] ?? []);
  reference({
    name: "60 °C, 4 to 4/0 AWG",
    source: handbook,
    basis: "published",
    got: two("at60"),
    printed: [96, 128, 173, 199, 230, 265],
  });
  reference({
    name: "75 °C, 8 to 4/0 AWG",
    source: handbook,
    basis: "published",
    got: two("at75"),
    printed: [65, 88, 115, 152, 207, 238, 275, 317],
  });
  reference({
    name: "90 °C, 8 to 4/0 AWG",
    source: handbook,
    basis: "published",
    got: two("at90"),
    printed: [74, 99, 130, 174, 234, 271, 313, 361],
  });
});

describe("standard ratings of overcurrent devices", () => {
  reference({
    name: "15 to 100 A, and 175 A",
    source: "NEC 240.6(A)",
    basis: "published",
    got: () => standardBreakers.flatMap(({ amperes, source }) => (source === "nec-240.6a" ? [amperes] : [])),
    printed: [15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 175],
  });
  reference({
    name: "110 to 225 A",
    source: "NEC 240.6(A)",
    basis: "memory",
    got: () => standardBreakers.flatMap(({ amperes, source }) => (source === "nec-240.6a-memory" ? [amperes] : [])),
    printed: [110, 125, 150, 200, 225],
  });
  reference({
    name: "a load exactly at a rating needs no larger one; beyond the last there is none",
    source: "NEC 240.6(A)",
    basis: "published",
    got: () => [20, 20.01, 100, 100.01].map((amperes) => nextBreaker(amperes) ?? Number.NaN),
    printed: [20, 25, 100, 110],
  });
});

describe("IEC 60228: every size has its row", () => {
  for (const [mm2, class5] of [
    [0.75, 26],
    [1, 19.5],
    [1.5, 13.3],
    [2.5, 7.98],
    [4, 4.95],
    [6, 3.3],
    [10, 1.91],
    [16, 1.21],
    [25, 0.78],
  ] as const)
    reference({
      name: `${mm2} mm², class 5`,
      source: "IEC 60228",
      basis: "published",
      got: () => metricRow(mm2)?.class5 ?? "no row",
      printed: class5,
    });
  reference({
    name: "a size between two is no size",
    source: "IEC 60228",
    basis: "published",
    got: () => (metricRow(3) ? "a row" : "no row"),
    printed: "no row",
  });
});

describe("ambient factors of iec practice begin where the row before them ends", () => {
  const wiring = (celsius: number) => iecAmbient(celsius, "wiring")?.factor ?? Number.NaN;
  const cord = (celsius: number) => iecAmbient(celsius, "cord")?.factor ?? Number.NaN;
  reference({
    name: "PVC at 30, 36, 40, 41, 45, 46, 50, 51 and 55 °C",
    source: "IEC 60364-5-52:2009 Table B.52.14",
    basis: "published",
    got: () => [30, 36, 40, 41, 45, 46, 50, 51, 55].map(wiring),
    printed: [1, 0.87, 0.87, 0.79, 0.79, 0.71, 0.71, 0.61, 0.61],
  });
  reference({
    name: "PVC at 31 and 35 °C",
    source: "IEC 60364-5-52:2009 Table B.52.14",
    basis: "memory",
    got: () => [31, 35].map(wiring),
    printed: [0.94, 0.94],
  });
  // √((60 − θ) ÷ 30), which is what such factors are made of: 0.913, 0.816, 0.707, printed to two places.
  reference({
    name: "60 °C cords at 30, 31, 35, 36, 40, 41, 45 °C",
    source: "√((60 − θ) ÷ 30); NEC Table 310.15(B)(1), 60 °C column",
    basis: "published",
    got: () => [30, 31, 35, 36, 40, 41, 45].map(cord),
    printed: [1, 0.91, 0.91, 0.82, 0.82, 0.71, 0.71],
  });
  reference({
    name: "beyond the last row there is none",
    source: "IEC 60364-5-52:2009 Annex B",
    basis: "published",
    got: () => [iecAmbient(56, "wiring"), iecAmbient(46, "cord")].every((each) => each === undefined),
    printed: true,
  });
});

describe("Annex G with a power factor", () => {
  const g = "IEC 60364-5-52:2009 Annex G, Table G.52.1 and formula";
  reference({
    name: "10 A, 100 m, 25 mm², cos φ 0.8: 2 × (0.0225 × 100 ÷ 25 × 0.8 + 0.00008 × 100 × 0.6) × 10",
    source: g,
    basis: "arithmetic",
    got: () => annexGDrop.compute({ b: 2, L: 100, A: 25, I: 10, pf: 0.8, x: 0.08e-3 }),
    printed: 1.536,
    within: 1e-9,
    because: "by hand: 2 × (0.072 + 0.0048) × 10",
  });
  reference({
    name: "resistivity of aluminium in service",
    source: g,
    basis: "published",
    got: () => RESISTIVITY.aluminium,
    printed: 0.036,
  });
  reference({
    name: "limit of other loads at 0, 100, 150, 200 and 300 m",
    source: g,
    basis: "published",
    got: () => [0, 100, 150, 200, 300].map((metres) => annexGLimit("public", "other", metres)),
    printed: [0.05, 0.05, 0.0525, 0.055, 0.055],
    within: 1e-12,
  });
  reference({
    name: "a length that is not told adds nothing",
    source: g,
    basis: "published",
    got: () => [annexGLimit("private", "lighting"), annexGLimit("private", "other")],
    printed: [0.06, 0.08],
  });
});

describe("aluminium", () => {
  reference({
    name: "coefficient 0.00330 on a base of 75 °C: 1 Ω/kft is 0.8185 at 20 °C",
    source: "NEC Chapter 9 Table 8 note 2",
    basis: "published",
    got: () => gaugeAt(1, 20, "aluminium"),
    printed: 0.8185,
    within: 1e-9,
    because: "1 − 0.0033 × 55",
  });
  reference({
    name: "K = 21.2: 20 A, 100 ft, 16510 cmil, two wires",
    source: "handbook form of NEC Chapter 9 Table 8",
    basis: "published",
    got: () => [K.aluminium, dropByK(20, 100, 16510, false, "aluminium")],
    printed: [21.2, 5.136],
    within: 0.0005,
    because: "2 × 21.2 × 2000 ÷ 16510",
  });
});

describe("gauges and times", () => {
  reference({
    name: "gauges are 4/0 to 40; thicker and finer ones are no gauges here",
    source: "ASTM B258",
    basis: "published",
    got: () => [-4, -3, 0, 1, 40, 41].map((gauge) => gaugeOf(awgArea(gauge)) ?? "none").join(", "),
    printed: "none, 4/0, 1/0, 1, 40, none",
  });
  reference({
    name: "2.99 h is not continuous, 3.0 h is",
    source: "NEC Art. 100",
    basis: "published",
    got: () => [2.99, 3].map((hours) => isContinuous(hours * 3600)).join(", "),
    printed: "false, true",
  });
});
