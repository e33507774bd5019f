import { awgArea, awgDiameter, fromKept, type Kind, toKept, unitByCode, units } from "@plumbmark/calc";
import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

// kind, UCUM code, unit in mathjs, kept unit in mathjs.
const pairs: readonly (readonly [Kind, string, string, string])[] = [
  ["length", "[in_i]", "inch", "m"],
  ["length", "[ft_i]", "foot", "m"],
  ["length", "[yd_i]", "yard", "m"],
  ["length", "mm", "mm", "m"],
  ["area", "[sft_i]", "sqft", "m2"],
  ["mass", "[lb_av]", "lbm", "kg"],
  ["mass", "[oz_av]", "oz", "kg"],
  ["mass", "[ston_av]", "ton", "kg"],
  ["mass", "t", "tonne", "kg"],
  ["force", "[lbf_av]", "lbf", "N"],
  ["force", "kN", "kN", "N"],
  ["mass-per-length", "[lb_av]/[ft_i]", "lbm/ft", "kg/m"],
  ["areal-load", "[lbf_av]/[sft_i]", "lbf/ft^2", "Pa"],
  ["areal-load", "kN/m2", "kN/m^2", "Pa"],
  ["stress", "[psi]", "psi", "MPa"],
  ["stress", "k[psi]", "1000 psi", "MPa"],
  ["moment", "[lbf_av].[ft_i]", "lbf ft", "N m"],
  ["moment", "[lbf_av].[in_i]", "lbf inch", "N m"],
  ["second-moment", "[in_i]4", "inch^4", "m^4"],
  ["section-modulus", "[in_i]3", "inch^3", "m^3"],
  ["heat-rate", "[Btu_IT]/h", "BTU/h", "W"],
  ["resistance-per-length", "Ohm/k[ft_i]", "ohm/(1000 ft)", "ohm/m"],
  ["angle", "'", "arcmin", "deg"],
  ["time", "h", "hour", "s"],
];

describe("factors of units", () => {
  for (const [kind, code, theirs, kept] of pairs) {
    const text = /^\d/.test(theirs) ? theirs : `1 ${theirs}`;
    const printed = evaluate(`number(${text}, ${kept})`) as number;
    reference({
      name: `${kind} ${code}`,
      source: "mathjs 15 units",
      basis: "published",
      got: () => toKept(1, unitByCode(kind, code)),
      printed,
      within: Math.abs(printed) * 2e-9,
      because: "mathjs carries some factors to ten digits",
    });
  }
  for (const [kind, code, factor, within] of [
    ["areal-load", "[lbf_av]/[sft_i]", 47.88025898, 5e-9],
    ["force", "[lbf_av]", 4.4482216152605, 5e-14],
    ["mass-per-length", "[lb_av]/[ft_i]", 1.488163944, 5e-10],
    ["heat-rate", "[Btu_IT]/h", 0.293071070172, 5e-13],
    ["moment", "[lbf_av].[ft_i]", 1.3558179483314, 5e-14],
    ["illuminance", "[ft_i]-c", 10.763910417, 5e-10],
  ] as const)
    reference({
      name: `${kind} ${code}`,
      source: "UCUM 2.2, GNU units 2.22",
      basis: "published",
      got: () => toKept(1, unitByCode(kind, code)),
      printed: factor,
      within: within + 1e-15,
      because: "half a unit in the last printed digit",
    });
  reference({
    name: "boiling and freezing water",
    source: "definition of °F",
    basis: "published",
    got: () => [212, 32].map((f) => toKept(f, unitByCode("temperature", "[degF]"))),
    printed: [100, 0],
  });
  test("there and back is the same in every unit", () => {
    fc.assert(
      fc.property(fc.constantFrom(...units), fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (unit, x) => {
        expect(Math.abs(fromKept(toKept(x, unit), unit) / x - 1)).toBeLessThan(unit.offset ? 1e-7 : 1e-12);
      }),
    );
  });
});

describe("wire gauge", () => {
  for (const [gauge, inches, millimetres, area] of [
    [10, 0.1019, 2.588, 5.261],
    [12, 0.0808, 2.053, 3.309],
    [14, 0.0641, 1.628, 2.081],
    [16, 0.0508, 1.291, 1.309],
    [24, 0.0201, 0.511, 0.205],
    [26, 0.0159, 0.405, 0.129],
  ] as const)
    for (const [what, got, printed, within] of [
      ["diameter in inches", awgDiameter(gauge) / 0.0254, inches, 0.0001],
      ["diameter in millimetres", awgDiameter(gauge) * 1e3, millimetres, 0.0005],
      ["area in mm²", awgArea(gauge), area, 0.001],
    ] as const)
      reference({
        name: `${gauge} AWG, ${what}`,
        source: "ASTM B258; 10 AWG also bit1024.com",
        basis: "published",
        got: () => got,
        printed,
        within,
        because: "a unit in the last printed digit",
      });
  reference({
    name: "4/0 and 36 AWG",
    source: "ASTM B258, by definition 0.46 in and 0.005 in",
    basis: "published",
    got: () => [awgDiameter(-3) / 0.0254, awgDiameter(36) / 0.0254],
    printed: [0.46, 0.005],
    within: 1e-12,
  });
  test("12 AWG is not 12 of the British gauge, 2.6416 mm", () =>
    expect(awgDiameter(12) * 1000).not.toBeCloseTo(2.6416, 2));
});
