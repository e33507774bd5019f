import {
  ambientFactor,
  awgArea,
  buildingAmpacity,
  countFactor,
  FIELD_ASSEMBLED_LEAST,
  given,
  type Known,
  portableAmpacity,
  type Value,
} from "@plumbmark/calc";
import { describe } from "vitest";
import { reference } from "../check.js";

const value = (each: Value) => (each.known ? (each as Known).value : "no row");
const gauge = (number: number) => given(awgArea(number), "conductor");

describe("rows of a table begin where the row before them ends", () => {
  const factors = "NEC Table 310.15(B)(1)";
  // Rows are 26–30, 31–35, 36–40 and 41–45 °C.
  for (const [column, printed] of [
    [60, [1, 0.91, 0.91, 0.82, 0.82, 0.71, 0.71]],
    [75, [1, 0.94, 0.94, 0.88, 0.88, 0.82, 0.82]],
    [90, [1, 0.96, 0.96, 0.91, 0.91, 0.87, 0.87]],
  ] as const)
    reference({
      name: `${column} °C column at 30, 31, 35, 36, 40, 41, 45 °C`,
      source: factors,
      basis: "published",
      got: () => [30, 31, 35, 36, 40, 41, 45].map((celsius) => ambientFactor(celsius, column) ?? Number.NaN),
      printed,
    });
  reference({
    name: "46 °C lies beyond the rows at hand",
    source: factors,
    basis: "published",
    got: () => ambientFactor(46) ?? "no row",
    printed: "no row",
  });
  reference({
    name: "3, 4, 6, 7, 9, 10, 20, 21, 30, 31, 40 and 41 conductors",
    source: "NEC Table 400.5(A)(3)",
    basis: "published",
    got: () => [3, 4, 6, 7, 9, 10, 20, 21, 30, 31, 40, 41].map(countFactor),
    printed: [1, 0.8, 0.8, 0.7, 0.7, 0.5, 0.5, 0.45, 0.45, 0.4, 0.4, 0.35],
  });
  reference({
    name: "field-assembled extension cord: 16 AWG on a 20 A circuit",
    source: "NEC 240.5(B)(4)",
    basis: "published",
    got: () => `${FIELD_ASSEMBLED_LEAST.awg} AWG, ${FIELD_ASSEMBLED_LEAST.breaker} A`,
    printed: "16 AWG, 20 A",
  });
});

describe("what stands when nothing is written", () => {
  reference({
    name: "building wire is read in the 60 °C column",
    source: "NEC Table 310.16; 110.14(C)(1)(a) from memory",
    basis: "memory",
    got: () => value(buildingAmpacity(gauge(10))),
    printed: 30,
  });
  reference({
    name: "12 AWG building wire, 20 A: as it stands, four together, at 31 °C, at 40 °C, and four at 40 °C",
    source: "NEC Tables 310.16, 310.15(B)(1), 310.15(C)(1): 20 × 0.80, × 0.91, × 0.82, × 0.80 × 0.82",
    basis: "arithmetic",
    got: () =>
      [
        { conductors: 3, ambient: 30 },
        { conductors: 4 },
        { ambient: 31 },
        { ambient: 40 },
        { conductors: 4, ambient: 40 },
      ].map((service) => value(buildingAmpacity(gauge(12), 60, service)) as number),
    printed: [20, 16, 18.2, 16.4, 13.12],
  });
  reference({
    name: "portable cable is read in the 60 °C column, and 8 AWG has no row there",
    source: "NEC Table 400.5(A)(2); cords are 60 °C unless marked: EC&M Code Q&A, 19 Aug 2015",
    basis: "published",
    got: () => [2, 8].map((awg) => value(portableAmpacity(gauge(awg), { conductors: 3 }))).join(", "),
    printed: "112, no row",
  });
  reference({
    name: "portable cable, one, two and three conductors of 4/0 at 75 °C",
    source: "NEC Table 400.5(A)(2)",
    basis: "published",
    got: () => [1, 2, 3].map((conductors) => value(portableAmpacity(gauge(-3), { conductors, column: 75 })) as number),
    printed: [360, 317, 277],
  });
  reference({
    name: "portable cable, four conductors of 4/0 at 75 °C: the three-conductor value with its factor",
    source: "NEC Tables 400.5(A)(2), 400.5(A)(3): 277 × 0.80",
    basis: "arithmetic",
    got: () => value(portableAmpacity(gauge(-3), { conductors: 4, column: 75 })) as number,
    printed: 221.6,
  });
});
