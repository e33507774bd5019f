import {
  awgArea,
  awgNumber,
  columnOf,
  cordAmpacity,
  cordUse,
  given,
  type Known,
  type Value,
  type WireMarks,
  wireAmpacity,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const gauge = (awg: string) => given(awgArea(awgNumber(awg) as number), "conductor");
const amperes = (value: Value) => (value.known ? (value as Known).value : Number.NaN);
const wire = (awg: string, marks: WireMarks) => amperes(wireAmpacity(gauge(awg), marks));

describe("building wire is derated in its own column and capped by its terminals", () => {
  const from = "NEC 110.14(C), Tables 310.16, 310.15(B)(1) and 310.15(C)(1)";
  // E-9, E-10: every row is a product of printed figures; half a unit of the last printed digit.
  for (const [name, awg, marks, printed] of [
    ["12 AWG of 90 °C, 6 together, 40 °C, terminals of 60 °C", "12", [90, 60, 6, 40], 20],
    ["the same between terminals of 75 °C", "12", [90, 75, 6, 40], 21.84],
    ["10 AWG of 90 °C, terminals of 60 °C", "10", [90, 60, 6, 40], 29.12],
    ["10 AWG of 90 °C, terminals of 75 °C", "10", [90, 75, 6, 40], 29.12],
    ["12 AWG of 90 °C, 9 together, 40 °C, terminals of 75 °C", "12", [90, 75, 9, 40], 19.11],
    ["8 AWG of 90 °C, 6 together, 45 °C, terminals of 60 °C", "8", [90, 60, 6, 45], 38.28],
  ] as const)
    reference({
      name,
      source: from,
      basis: "arithmetic",
      got: () =>
        wire(awg, { insulation: marks[0], terminals: marks[1], conductors: marks[2], ambient: marks[3] } as WireMarks),
      printed,
      within: 0.005,
    });
  reference({
    name: "without marks both are 60 °C: 12 AWG, 30 °C",
    source: "NEC Table 310.16 (2023), 60 °C column; 110.14(C)(1)",
    basis: "published",
    got: () => wire("12", {}),
    printed: 20,
  });
  // The trap of E-9: heat counted twice comes to 13.12 A, which refuses a sound circuit of 15 A.
  test("the 60 °C column is not derated for wire of 90 °C", () => {
    const marked = wire("12", { insulation: 90, terminals: 60, conductors: 6, ambient: 40 });
    const wrong = wire("12", { insulation: 60, terminals: 60, conductors: 6, ambient: 40 });
    expect(wrong).toBeCloseTo(13.12, 2);
    expect(marked).toBeGreaterThan(wrong);
  });
  test("terminals of 75 °C do not raise wire of 60 °C", () =>
    expect(wire("12", { insulation: 60, terminals: 75 })).toBe(20));
  test("nothing is known of 50 °C, nor of a temperature below every column", () => {
    expect(wire("12", { insulation: 90, ambient: 50 })).toBeNaN();
    expect(columnOf(59)).toBeUndefined();
  });
  test.each([
    [60, 60],
    [70, 60],
    [75, 75],
    [89, 75],
    [90, 90],
    [105, 90],
  ])("%i °C is read in the column of %i °C", (celsius, column) => expect(columnOf(celsius)).toBe(column));
});

describe("a cord's temperature mark softens the ambient factor and nothing else", () => {
  const cord = (column: 60 | 90, ambient: number) =>
    amperes(cordAmpacity(gauge("12"), { conductors: 3, ambient, column }));
  reference({
    name: "12 AWG, three conductors, 40 °C: a cord of 60 °C and one of 90 °C",
    source: "NEC 400.5(A): factor of the cord's own rating; 20 A × 0.82 and 20 A × 0.91 (20 A from memory)",
    basis: "arithmetic",
    got: () => [cord(60, 40), cord(90, 40)],
    printed: [16.4, 18.2],
    within: 1e-9,
  });
  test("at 30 °C both carry the same: there is no 90 °C column for S and SJ cords", () =>
    expect(cord(90, 30)).toBe(cord(60, 30)));
});

describe("what cord types are made for", () => {
  const handbook = "McGraw-Hill's NEC 2014 Handbook, 400.3: SJ hard usage, S or SO extra-hard usage";
  for (const [type, use] of [
    ["S", "extra-hard"],
    ["SO", "extra-hard"],
    ["SJ", "hard"],
  ] as const)
    reference({
      name: type,
      source: handbook,
      basis: "published",
      got: () => cordUse(type)?.use ?? "none",
      printed: use,
    });
  reference({
    name: "SOOW",
    source: "NEC Table 400.4 as nassaunationalcable.com restates it: extra-hard usage",
    basis: "published",
    got: () => cordUse("soow")?.use ?? "none",
    printed: "extra-hard",
  });
  for (const [type, use] of [
    ["SJTW", "hard"],
    ["SJOOW", "hard"],
    ["STOOW", "extra-hard"],
    ["SEOOW", "extra-hard"],
    ["SVT", "light"],
    ["SPT-2", "light"],
    ["SC", "extra-hard"],
    ["W", "extra-hard"],
  ] as const)
    reference({
      name: type,
      source: "NEC Table 400.4",
      basis: "memory",
      got: () => cordUse(type)?.use ?? "none",
      printed: use,
    });
  reference({
    name: "H07RN-F",
    source: "CENELEC H07RN-F for events (en.wikipedia.org, Tough rubber-sheathed cable)",
    basis: "published",
    got: () => cordUse("H07RN-F")?.use ?? "none",
    printed: "heavy",
  });
  test.each(["", "rubber", "to be confirmed", "THHN", "SOX", "H08RN-F", "SJOOOW"])("%s is no type of a table", (type) =>
    expect(cordUse(type)).toBeUndefined(),
  );
  test("what is only known from memory says so", () => {
    expect(cordUse("SVT")?.source).toBe("nec-400.4-memory");
    expect(cordUse("SJOOW")?.source).toBe("nec-400.4");
  });
});
