import {
  awgArea,
  buildingAmpacity,
  CORD_LEAKAGE,
  classATime,
  continuousShare,
  given,
  type Known,
  receptacleAllowed,
  receptacleLoad,
} from "@plumbmark/calc";
import { describe } from "vitest";
import { reference } from "../check.js";

const wire = (conductors: number, ambient: number): number =>
  (buildingAmpacity(given(awgArea(12), "conductor"), 60, { conductors, ambient }) as Known).value;

describe("edges of electrical limits", () => {
  reference({
    name: "12 AWG wire, 60 °C: 3 and 4 conductors at 30 °C, 3 at 31 °C, 4 at 31 °C",
    source: "NEC Tables 310.16, 310.15(C)(1), 310.15(B)(1): 20; × 0.80; × 0.91; × both",
    basis: "arithmetic",
    got: () => [wire(3, 30), wire(4, 30), wire(3, 31), wire(4, 31)],
    printed: [20, 16, 18.2, 14.56],
    within: 1e-9,
  });
  reference({
    name: "trip time at 6, 30 and 264 mA; below and above the formula says nothing",
    source: "UL 943: (20 ÷ I)^1.43",
    basis: "published",
    got: () => [6, 30, 264].map((milliamperes) => classATime(milliamperes) ?? Number.NaN),
    printed: [5.59, 0.56, 0.025],
    within: 0.005,
  });
  reference({
    name: "5.9 and 265 mA lie outside",
    source: "UL 943",
    basis: "published",
    got: () => [classATime(5.9), classATime(265)].every((each) => each === undefined),
    printed: true,
  });
  reference({
    name: "cord-connected Class I equipment leaks 3.5 mA at most",
    source: "IEC/EN 60950-1 5.1",
    basis: "published",
    got: () => CORD_LEAKAGE * 1000,
    printed: 3.5,
    within: 1e-9,
  });
  reference({
    name: "several receptacles: 15 A on 20 A; 40 or 50 A on 40 A; only 50 A on 50 A; nothing smaller on 40 A",
    source: "NEC Table 210.21(B)(3)",
    basis: "published",
    got: () =>
      [
        [20, 15],
        [40, 40],
        [40, 50],
        [50, 50],
        [50, 40],
        [40, 30],
      ]
        .map(([circuit, receptacle]) => receptacleAllowed(circuit as number, receptacle as number, false))
        .join(),
    printed: "true,true,true,true,false,false",
  });
  reference({
    name: "30 A receptacle on a 30 A circuit: allowed, 24 A",
    source: "NEC Tables 210.21(B)(2), 210.21(B)(3)",
    basis: "memory",
    got: () => [Number(receptacleAllowed(30, 30, false)), receptacleLoad(30, 30) ?? Number.NaN],
    printed: [1, 24],
  });
  reference({
    name: "iec practice: the design current may be all of the device's rating",
    source: "IEC 60364-4-43 433.1",
    basis: "memory",
    got: () => continuousShare("iec").value,
    printed: 1,
  });
});
