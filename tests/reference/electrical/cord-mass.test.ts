import { awgArea, COPPER_DENSITY, cordMass, cordMassRows, LEAST_COPPER, metricRows } from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

const LB_PER_1000_FT = 0.45359237 / 304.8;
const ends = (type: string, mm2: number, conductors: number): readonly [number, number] => {
  const found = cordMass(type, mm2, conductors);
  if (!found) throw new Error(`no mass of ${type} ${conductors} × ${mm2}`);
  return [found[0].value, found[1].value];
};

describe("copper", () => {
  reference({
    name: "12 AWG solid, lb for 1,000 ft",
    source: "ASTM B258 and tables of solid copper wire: 19.77 lb for 1,000 ft",
    basis: "published",
    got: () => (awgArea(12) * 1e-6 * COPPER_DENSITY) / LB_PER_1000_FT,
    printed: 19.77,
    within: 0.01,
  });
  test("a conductor of the greatest resistance of IEC 60228 has no less copper than is counted", () => {
    // Annealed copper, IEC 60028: 17.241 Ω·mm²/km at 20 °C. Stranding makes the wire longer, and so the copper more.
    for (const { mm2, class5 } of notEmpty(metricRows.filter(({ mm2: size }) => size >= 1)))
      expect(17.241 / class5 / mm2, String(mm2)).toBeGreaterThan(LEAST_COPPER);
  });
});

/** Mass of a cord that is filled with copper and a heavy rubber compound over its whole cross-section, kg/m. */
const filled = (diameter: number, mm2: number, conductors: number): number => {
  const copper = mm2 * conductors;
  return (copper * 8.89 + ((Math.PI / 4) * diameter ** 2 - copper) * 1.6) / 1000;
};

describe("cords", () => {
  test("one of heavy rubber weighs what the trade prints of it", () => {
    // SOOW, 16 AWG, three conductors: 94 lb for 1,000 ft in a printed table of such cords.
    const [least, most] = ends("SOOW", awgArea(16), 3);
    expect(94 * LB_PER_1000_FT).toBeGreaterThan(least);
    expect(94 * LB_PER_1000_FT).toBeLessThan(most);
  });
  test("H07RN-F of 3 × 1 mm² filled to its greatest diameter, 10.7 mm (HD 22.4, as restated), is not heavier", () => {
    expect(filled(10.7, 1, 3)).toBeLessThanOrEqual(ends("H07RN-F", 1, 3)[1]);
  });
  // IEC 60245-4, type 66 (H07RN-F), three conductors: greatest mean overall diameters, mm. From memory, but for the first,
  // which is in print (above); they hold the envelope to what such cords are.
  const H07RN_F = [
    [1, 10.7],
    [1.5, 11.9],
    [2.5, 14],
    [4, 16.2],
    [6, 18],
    [10, 24.2],
    [16, 27.6],
    [25, 33],
  ] as const;
  test.each(H07RN_F)(
    "the greatest mass of 3 × %d mm² is that of one filled to %d mm, and less than a seventh more",
    (mm2, diameter) => {
      const [, most] = ends("H07RN-F", mm2, 3);
      expect(most).toBeGreaterThan(filled(diameter, mm2, 3));
      expect(most).toBeLessThan((8 / 7) * filled(diameter, mm2, 3));
    },
  );
  test("a conductor between two sizes counts as the larger one", () => {
    for (const [index, [mm2, diameter]] of notEmpty(H07RN_F.entries())) {
      const smaller = H07RN_F[index - 1]?.[0];
      if (smaller !== undefined)
        expect(ends("H07RN-F", smaller * 1.02, 3)[1]).toBeGreaterThan(filled(diameter, mm2, 3));
    }
  });
  // IEC 60227-5, Table 13, type 60227 IEC 57 (H05VV-F): greatest mean overall diameters, mm.
  test.each([
    [2, 0.75, 7.2],
    [2, 1, 7.5],
    [2, 1.5, 8.6],
    [2, 2.5, 10.6],
    [3, 0.75, 7.6],
    [3, 1, 8],
    [3, 1.5, 9.4],
    [3, 2.5, 11.4],
    [4, 0.75, 8.3],
    [4, 1, 9],
    [4, 1.5, 10.5],
    [4, 2.5, 12.5],
    [5, 0.75, 9.3],
    [5, 1, 9.8],
    [5, 1.5, 11.6],
    [5, 2.5, 13.9],
  ])("H05VV-F of %d × %d mm², filled to %d mm, is within", (conductors, mm2, diameter) => {
    const [least, most] = ends("H05VV-F", mm2, conductors);
    expect(filled(diameter, mm2, conductors)).toBeLessThan(most);
    expect(filled(diameter, mm2, conductors)).toBeGreaterThan(least);
  });
  test("the rows rise, and each is heavier than the copper of three conductors", () => {
    for (const [index, row] of notEmpty(cordMassRows.entries())) {
      const before = cordMassRows[index - 1];
      if (before) expect(row.most).toBeGreaterThan(before.most);
      expect(row.most).toBeGreaterThan(3 * row.mm2 * 8.89e-3);
    }
  });
  test.each([
    ["a type in no table", "CABLE", 2.5, 3],
    ["a single conductor", "SC", 33.6, 2],
    ["single wires", "H07V-K", 2.5, 3],
    ["more conductors than the table has", "SOOW", 2.5, 6],
    ["one conductor", "SOOW", 2.5, 1],
    ["a conductor larger than the table has", "H07RN-F", 25.5, 3],
  ])("of %s nothing is told", (_, type, mm2, conductors) => {
    expect(cordMass(type, mm2, conductors)).toBeUndefined();
  });
});
