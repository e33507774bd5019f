import {
  awgArea,
  conductorResistance,
  correctionTo20,
  dropByK,
  gaugeAt,
  gaugeRow,
  gaugeRows,
  given,
  metricAt,
  metricRow,
  metricRows,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

const table8 = "NEC Chapter 9 Table 8";
const perKilometre = (mm2: number, celsius?: number) => {
  const found = conductorResistance(given(mm2, "conductor"), "stranded", celsius);
  return found.known ? found.value * 1000 : Number.NaN;
};
const total = (numbers: readonly number[]) => numbers.reduce((sum, each) => sum + each, 0);
const falls = (numbers: readonly number[]) =>
  numbers.every((each, index) => index === 0 || each < (numbers[index - 1] as number));

describe("NEC Table 8", () => {
  reference({
    name: "checksum of the stranded column, summed apart from the code",
    source: table8,
    basis: "arithmetic",
    got: () => total(gaugeRows.map((row) => row.stranded)),
    printed: 21.8261,
    within: 1e-6,
  });
  reference({
    name: "checksum of the solid column, summed apart from the code",
    source: table8,
    basis: "arithmetic",
    got: () => total(gaugeRows.flatMap((row) => row.solid ?? [])),
    printed: 19.634,
    within: 1e-6,
  });
  reference({
    name: "checksum of the coated column, summed apart from the code",
    source: table8,
    basis: "arithmetic",
    got: () => total(gaugeRows.flatMap((row) => row.coated ?? [])),
    printed: 21.659,
    within: 1e-6,
  });
  reference({
    name: "checksum of the circular mils, summed apart from the code",
    source: table8,
    basis: "arithmetic",
    got: () => total(gaugeRows.map((row) => row.circularMils)),
    printed: 930480,
  });
  for (const column of ["stranded", "solid", "coated"] as const)
    test(`${column} resistance falls as the conductor grows`, () =>
      expect(falls(gaugeRows.flatMap((row) => row[column] ?? []))).toBe(true));
  test("resistance × area is one resistivity: no row is out of line by more than 2 %", () => {
    for (const row of notEmpty(gaugeRows))
      expect(Math.abs((row.stranded * row.circularMils) / 1000 / 12.9 - 1)).toBeLessThan(0.02);
  });
  test("coated is above stranded is above solid", () => {
    for (const row of notEmpty(gaugeRows)) {
      if (row.coated) expect(row.coated).toBeGreaterThan(row.stranded);
      if (row.solid) expect(row.stranded).toBeGreaterThan(row.solid);
    }
  });
  const metric: readonly (readonly [number, number])[] = [
    [12, 6.5],
    [10, 4.07],
    [8, 2.551],
    [6, 1.608],
    [0, 0.399],
    [-3, 0.1996],
  ];
  for (const [gauge, printed] of metric)
    reference({
      name: `gauge ${gauge}, the book's own Ω/km column`,
      source: table8,
      basis: "memory",
      got: () => perKilometre(awgArea(gauge)),
      printed,
      within: printed * 0.005,
      because: "the book rounds that column separately",
    });
  reference({
    name: "14 AWG solid at 20 °C",
    source: `${table8} note 2`,
    basis: "arithmetic",
    got: () => gaugeAt(3.07, 20),
    printed: 2.525,
    within: 0.001,
  });
  reference({
    name: "20 °C over 75 °C, copper",
    source: `${table8} note 2`,
    basis: "published",
    got: () => gaugeAt(1, 20),
    printed: 0.82,
    within: 0.005,
  });
  reference({
    name: "8 AWG near 25 °C is not the 75 °C value",
    source: "TxDOT Highway Illumination Manual, loop 1.308 Ω/kft",
    basis: "published",
    got: () => gaugeAt(0.778, 25),
    printed: 0.654,
    within: 0.0025,
    because: "the manual's own rounding; 75 °C would be 0.778",
  });
  reference({
    name: "cords are stranded: 12 AWG is 1.98, not the solid 1.93",
    source: table8,
    basis: "published",
    got: () => perKilometre(awgArea(12)) * 0.3048,
    printed: 1.98,
    within: 1e-9,
  });
  test("a gauge without a row is missing, not zero", () => {
    const found = conductorResistance(given(awgArea(22), "conductor"));
    expect(found.known).toBe(false);
    if (!found.known) expect(found.gaps[0]?.because).toContain("22 AWG");
  });
  reference({
    name: "K of 12 AWG stranded and solid",
    source: "K = R × cmil ÷ 1000",
    basis: "arithmetic",
    got: () => [1.98, 1.93].map((each) => (each * (gaugeRow("12")?.circularMils ?? 0)) / 1000),
    printed: [12.93, 12.6],
    within: 0.005,
  });
  reference({
    name: "K of copper by the handbook, 1 A, 1 ft, 1 cmil, there and back",
    source: "NEC Chapter 9 Table 8, handbook form",
    basis: "published",
    got: () => dropByK(1, 1, 1),
    printed: 25.8,
    within: 1e-9,
  });
});

describe("IEC 60228", () => {
  const sums = { class5: 78.93, class5Tinned: 81.075, class1or2: 73.507 } as const;
  for (const [column, printed] of Object.entries(sums) as [keyof typeof sums, number][]) {
    reference({
      name: `checksum of ${column}, summed apart from the code`,
      source: "IEC 60228",
      basis: "arithmetic",
      got: () => total(metricRows.map((row) => row[column])),
      printed,
      within: 1e-6,
    });
    test(`${column} falls as the conductor grows`, () =>
      expect(falls(metricRows.map((row) => row[column]))).toBe(true));
  }
  const kt = [
    [5, 1.064],
    [10, 1.042],
    [20, 1],
    [25, 0.98],
    [30, 0.962],
    [40, 0.926],
    [60, 0.862],
    [75, 0.82],
    [90, 0.781],
    [100, 0.758],
  ] as const;
  for (const [celsius, printed] of kt)
    reference({
      name: `kt at ${celsius} °C`,
      source: "IEC 60228",
      basis: "published",
      got: () => correctionTo20(celsius),
      printed,
      within: 0.00051,
      because: "three printed decimals",
    });
  reference({
    name: "2.5 mm² class 5 at 70 °C",
    source: "R20 × 1.1965",
    basis: "arithmetic",
    got: () => perKilometre(2.5),
    printed: 9.55,
    within: 0.005,
  });
  reference({
    name: "9-E3: 2.5 mm² cord, 16 A, 18 m",
    source: "7.98 Ω/km × 1.1965",
    basis: "arithmetic",
    got: () => (2 * 16 * 18 * metricAt(metricRow(2.5)?.class5 ?? 0, 70)) / 1000,
    printed: 5.5,
    within: 0.01,
  });
  test("2.5 mm² reads IEC 60228 and 12 AWG reads Table 8", () => {
    const of = (mm2: number) => conductorResistance(given(mm2, "conductor"));
    expect(of(2.5)).toMatchObject({ origin: { source: "iec-60228" } });
    expect(of(awgArea(12))).toMatchObject({ origin: { source: "nec-ch9-t8" } });
  });
});
