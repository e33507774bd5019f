import {
  ambientFactor,
  awgArea,
  awgNumber,
  buildingAmpacity,
  buildingRows,
  cordAmpacity,
  cordRows,
  countFactor,
  given,
  iecAmbient,
  iecGrouping,
  iecRows,
  iecWireAmpacity,
  type Known,
  metricCordAmpacity,
  metricCordRows,
  portableAmpacity,
  portableRows,
  smallConductorBreaker,
  type Value,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

const gauge = (awg: string) => given(awgArea(awgNumber(awg) as number), "conductor");
const amperes = (value: Value) => (value.known ? (value as Known).value : Number.NaN);
const total = (numbers: readonly number[]) => numbers.reduce((sum, each) => sum + each, 0);
const rises = (numbers: readonly number[]) =>
  numbers.every((each, index) => index === 0 || each > (numbers[index - 1] as number));

describe("flexible cords", () => {
  const table = "NEC Table 400.5(A)(1)";
  const cord = (awg: string, conductors: number, ambient?: number) =>
    amperes(cordAmpacity(gauge(awg), ambient === undefined ? { conductors } : { conductors, ambient }));
  reference({
    name: "two conductors, 18, 17, 16, 14, 12 AWG",
    source: table,
    basis: "published",
    got: () => ["18", "17", "16", "14", "12"].map((awg) => cord(awg, 2)),
    printed: [10, 12, 13, 18, 25],
  });
  reference({
    name: "three conductors, 18 and 16 AWG",
    source: table,
    basis: "published",
    got: () => ["18", "16"].map((awg) => cord(awg, 3)),
    printed: [7, 10],
  });
  reference({
    name: "three conductors, 14 to 2 AWG",
    source: table,
    basis: "memory",
    got: () => ["14", "12", "10", "8", "6", "4", "2"].map((awg) => cord(awg, 3)),
    printed: [15, 20, 25, 35, 45, 60, 80],
  });
  reference({
    name: "two conductors, 10 to 2 AWG",
    source: table,
    basis: "memory",
    got: () => ["10", "8", "6", "4", "2"].map((awg) => cord(awg, 2)),
    printed: [30, 40, 55, 70, 95],
  });
  reference({
    name: "checksums of both columns, summed apart from the code",
    source: table,
    basis: "arithmetic",
    got: () => [total(cordRows.flatMap((row) => row.three ?? [])), total(cordRows.map((row) => row.two))],
    printed: [297, 368],
  });
  reference({
    name: "12 AWG, 4 conductors",
    source: "NEC Table 400.5(A)(3); EC&M Code Q&A, 19 Aug 2015",
    basis: "published",
    got: () => cord("12", 4),
    printed: 16,
    within: 1e-9,
  });
  reference({
    name: "factors for 3, 6, 9, 20, 30, 40 and 41 conductors",
    source: "NEC Table 400.5(A)(3)",
    basis: "published",
    got: () => [3, 6, 9, 20, 30, 40, 41].map(countFactor),
    printed: [1, 0.8, 0.7, 0.5, 0.45, 0.4, 0.35],
  });
  reference({
    name: "25 A cord at 40 °C",
    source: "NEC Table 310.15(B)(1)",
    basis: "published",
    got: () => cord("12", 2, 40),
    printed: 20.5,
    within: 1e-9,
  });
  reference({
    name: "75 and 90 °C columns at 35, 40, 45 °C",
    source: "NEC Table 310.15(B)(1)",
    basis: "published",
    got: () => [35, 40, 45].flatMap((each) => [ambientFactor(each, 75) ?? 0, ambientFactor(each, 90) ?? 0]),
    printed: [0.94, 0.96, 0.88, 0.91, 0.82, 0.87],
  });
  test("both columns rise with size, and two conductors carry more than three", () => {
    expect(rises(cordRows.flatMap((row) => row.three ?? []))).toBe(true);
    expect(rises(cordRows.map((row) => row.two))).toBe(true);
    for (const row of cordRows) if (row.three) expect(row.two).toBeGreaterThan(row.three);
  });
  reference({
    name: "the cord-length table of cord sets (13 A for 14 AWG) is not this one",
    source: table,
    basis: "memory",
    got: () => cord("14", 3) === 13,
    printed: false,
  });
  test("a metric cord, a gauge off the table, and 50 °C are missing, not guessed", () => {
    expect(cordAmpacity(given(2.5, "conductor"), { conductors: 2 }).known).toBe(false);
    expect(cordAmpacity(gauge("1/0"), { conductors: 3 }).known).toBe(false);
    expect(cordAmpacity(gauge("12"), { conductors: 3, ambient: 50 }).known).toBe(false);
  });
  test("rows that were never seen in print say so in their working", () => {
    expect(cordRows.filter((row) => row.threeSource === "nec-400.5a1-memory").map((row) => row.awg)).toEqual([
      "14",
      "12",
      "10",
      "8",
      "6",
      "4",
      "2",
    ]);
  });
});

describe("portable power cable", () => {
  const table = "NEC Table 400.5(A)(2), Set Lighting Technician's Handbook, 4th ed., Table D.1";
  reference({
    name: "single 4/0 at 90 °C",
    source: table,
    basis: "published",
    got: () => amperes(portableAmpacity(gauge("4/0"), { conductors: 1, column: 90 })),
    printed: 405,
  });
  reference({
    name: "2 AWG, 3 conductors, 75 °C",
    source: table,
    basis: "published",
    got: () => amperes(portableAmpacity(gauge("2"), { conductors: 3, column: 75 })),
    printed: 133,
  });
  const sum = (column: "at60" | "at75" | "at90", index: number) =>
    total(portableRows.flatMap((row) => row[column]?.[index] ?? []));
  reference({
    name: "checksums of single conductors at 60, 75 and 90 °C, summed apart from the code",
    source: table,
    basis: "arithmetic",
    got: () => [sum("at60", 0), sum("at75", 0), sum("at90", 0)],
    printed: [1225, 1625, 1830],
  });
  reference({
    name: "checksums of three conductors at 60, 75 and 90 °C, summed apart from the code",
    source: table,
    basis: "arithmetic",
    got: () => [sum("at60", 2), sum("at75", 2), sum("at90", 2)],
    printed: [954, 1275, 1450],
  });
  test("rises with size and column, falls with conductors", () => {
    for (const column of ["at60", "at75", "at90"] as const)
      for (const index of [0, 1, 2])
        expect(rises(portableRows.flatMap((row) => row[column]?.[index] ?? []))).toBe(true);
    for (const row of portableRows)
      for (const cells of [row.at60, row.at75, row.at90]) if (cells) expect(rises([...cells].reverse())).toBe(true);
  });
  test("8 AWG at 60 °C is not at hand", () =>
    expect(portableAmpacity(gauge("8"), { conductors: 2 }).known).toBe(false));
});

describe("building wire", () => {
  const table = "NFPA 70-2023 Table 310.16; CEC Table 2 agrees";
  for (const [column, printed] of [
    [60, [15, 20, 30, 40, 55, 70]],
    [75, [20, 25, 35, 50, 65, 85]],
    [90, [25, 30, 40, 55, 75, 95]],
  ] as const)
    reference({
      name: `${column} °C, 14 to 4 AWG (the column before 2011 gave 20 and 25 A at 60 °C)`,
      source: table,
      basis: "published",
      got: () => buildingRows.map((row) => amperes(buildingAmpacity(gauge(row.awg), column))),
      printed,
    });
  reference({
    name: "checksums of the three columns, summed apart from the code",
    source: table,
    basis: "arithmetic",
    got: () => [
      total(buildingRows.map((row) => row.at60)),
      total(buildingRows.map((row) => row.at75)),
      total(buildingRows.map((row) => row.at90)),
    ],
    printed: [230, 280, 320],
  });
  test("every column rises with size", () => {
    for (const column of ["at60", "at75", "at90"] as const)
      expect(rises(buildingRows.map((row) => row[column]))).toBe(true);
  });
  reference({
    name: "greatest breaker on 14, 12, 10 AWG",
    source: "NEC 240.4(D)",
    basis: "published",
    got: () => ["14", "12", "10"].map((awg) => amperes(smallConductorBreaker(gauge(awg)))),
    printed: [15, 20, 30],
  });
});

describe("metric flexible cords", () => {
  const table = "BS 7671 Table 4F3A";
  const all = (threePhase: boolean) =>
    [0.75, 1, 1.5, 2.5, 4].map((mm2) => amperes(metricCordAmpacity(given(mm2, "conductor"), threePhase)));
  reference({
    name: "single phase, 0.75 to 4 mm²",
    source: table,
    basis: "memory",
    got: () => all(false),
    printed: [6, 10, 16, 25, 32],
  });
  reference({
    name: "three phase, 0.75 to 4 mm²",
    source: table,
    basis: "memory",
    got: () => all(true),
    printed: [6, 10, 16, 20, 25],
  });
  test("both columns rise with size and three phase is never above single phase", () => {
    expect(rises(metricCordRows.map((row) => row.single))).toBe(true);
    expect(rises(metricCordRows.map((row) => row.three))).toBe(true);
    for (const row of metricCordRows) expect(row.three).toBeLessThanOrEqual(row.single);
  });
  test("a size without a row is missing", () => expect(metricCordAmpacity(given(3, "conductor")).known).toBe(false));
});

describe("metric building wiring", () => {
  const sans = "SANS 10142-1:2019, Table 6.3(a), p. 99 (restates IEC 60364-5-52 Tables B.52.2 and B.52.4)";
  const book =
    "instruction book for air compressors 2920 7104 10, p. 90 (restates IEC 60364-5-52, three loaded conductors)";
  const sizes = [1.5, 2.5, 4, 6, 10, 16];
  const wire = (mm2: number, service: Parameters<typeof iecWireAmpacity>[1]) =>
    amperes(iecWireAmpacity(given(mm2, "conductor"), service));
  reference({
    name: "enclosed in an insulating wall, single phase",
    source: sans,
    basis: "published",
    got: () => sizes.map((mm2) => wire(mm2, { laid: "A2" })),
    printed: [14, 18.5, 25, 32, 43, 57],
  });
  reference({
    name: "in conduit on a wall, single phase",
    source: sans,
    basis: "published",
    got: () => sizes.map((mm2) => wire(mm2, { laid: "B2" })),
    printed: [16.5, 23, 30, 38, 52, 69],
  });
  reference({
    name: "clipped direct, single phase and three phase",
    source: sans,
    basis: "published",
    got: () => sizes.flatMap((mm2) => [wire(mm2, { laid: "C" }), wire(mm2, { laid: "C", threePhase: true })]),
    printed: [19.5, 17.5, 27, 24, 36, 32, 46, 41, 63, 57, 85, 76],
  });
  reference({
    name: "in conduit, three phase, at 30 °C",
    source: book,
    basis: "published",
    got: () => sizes.map((mm2) => wire(mm2, { laid: "B2", threePhase: true })),
    printed: [15, 20, 27, 34, 46, 62],
  });
  for (const [celsius, printed] of [
    [40, [13, 17, 23, 30, 40, 54]],
    [45, [12, 16, 21, 27, 36, 49]],
    [50, [11, 14, 19, 24, 33, 44]],
    [55, [9, 12, 16, 21, 28, 38]],
  ] as const)
    reference({
      name: `in conduit, three phase, at ${celsius} °C`,
      source: book,
      basis: "published",
      got: () => sizes.map((mm2) => wire(mm2, { laid: "B2", threePhase: true, ambient: celsius })),
      printed,
      within: 0.7,
      because: "printed in whole amperes, some of them rounded down",
    });
  reference({
    name: "ambient factor at 35 °C",
    source: "IEC 60364-5-52 Table B.52.14",
    basis: "memory",
    got: () => iecAmbient(35, "wiring")?.factor ?? 0,
    printed: 0.94,
  });
  reference({
    name: "ambient factors of cords of 60 °C at 35, 40, 45 °C",
    source: "NEC Table 310.15(B)(1)",
    basis: "published",
    got: () => [35, 40, 45].map((celsius) => iecAmbient(celsius, "cord")?.factor ?? 0),
    printed: [0.91, 0.82, 0.71],
  });
  reference({
    name: "factors for 1 to 9 circuits together",
    source: "IEC 60364-5-52 Table B.52.17 item 1",
    basis: "memory",
    got: () => [1, 2, 3, 4, 5, 6, 7, 8, 9].map((circuits) => iecGrouping(circuits) ?? 0),
    printed: [1, 0.8, 0.7, 0.65, 0.6, 0.57, 0.54, 0.52, 0.5],
  });
  test("the table has its sum and rises down every column", () => {
    const columns = (["A2", "B2", "C"] as const).flatMap((laid) =>
      [0, 1].map((loaded) => iecRows.map((row) => row[laid][loaded as 0 | 1])),
    );
    // Single phase 189.5, 228.5 and 276.5; three phase 173.5, 204 and 247.5: the printed columns added up.
    expect(total(columns.flat())).toBe(1319.5);
    expect(columns.every(rises)).toBe(true);
    for (const { A2, B2, C } of notEmpty(iecRows))
      for (const loaded of [0, 1] as const) expect(rises([A2[loaded], B2[loaded], C[loaded]])).toBe(true);
  });
  test("what the tables do not have is missing, never guessed", () => {
    for (const value of [
      iecWireAmpacity(given(25, "conductor"), {}),
      iecWireAmpacity(given(2.5, "conductor"), { ambient: 60 }),
      iecWireAmpacity(given(2.5, "conductor"), { together: 10 }),
    ])
      expect(value.known).toBe(false);
  });
  reference({
    name: "12 AWG wire with 6 conductors together at 40 °C, 60 °C column: 20 × 0.82 × 0.8",
    source: "NEC Tables 310.16, 310.15(B)(1), 310.15(C)(1)",
    basis: "published",
    got: () => amperes(buildingAmpacity(gauge("12"), 60, { conductors: 6, ambient: 40 })),
    printed: 13.12,
  });
});
