import { formula } from "../../formula/formula.js";

/** Kip-inch, the moment US tables print. */
const KIP_IN = 112.9848290276167;

export const allowableMoment = formula({
  id: "rigging.allowable-moment",
  title: "Allowable bending moment of a compact round section",
  symbol: "M_a",
  kind: "moment",
  inputs: {
    Fy: { kind: "stress", is: "yield stress", above: 0 },
    Z: { kind: "section-modulus", is: "plastic modulus", above: 0 },
    Ω: { kind: "factor", is: "safety factor", least: 1 },
  },
  expression: "Fy × Z ÷ Ω",
  source: "aisc-360-f8",
  validity: "round pipe with D ÷ t at most 0.07 E ÷ Fy",
  example: {
    given: { Fy: 241.31650526, Z: 0.421 * 0.0254 ** 3, Ω: 1.67 },
    gives: 8.83 * KIP_IN,
    within: 0.044 * KIP_IN,
    from: "AISC 360-22 F8 with Pipe1-1/2STD of the AISC Shapes Database v16.0: 8.83 kip-in (arithmetic, 0.5 %: Z printed to three digits)",
  },
  compute: ({ Fy, Z, Ω }) => (Fy * 1e6 * Z) / Ω,
  // ksi × in³ are kip-inches; × 1000 ÷ 12 makes them lb·ft. MPa × cm³ are N·m as they stand.
  show: ({ Fy, Z, Ω }, print) =>
    `${print(Fy.value, "stress")} × ${print(Z.value, "section-modulus")} ÷ ${Ω.value}${/in³/u.test(print(Z.value, "section-modulus")) && /ksi/u.test(print(Fy.value, "stress")) ? " × 1,000 ÷ 12" : ""}`,
});

export const allowableMomentElastic = formula({
  id: "rigging.allowable-moment-elastic",
  title: "Allowable bending moment on the elastic modulus",
  symbol: "M_a",
  kind: "moment",
  inputs: {
    Fy: { kind: "stress", is: "yield stress", above: 0 },
    S: { kind: "section-modulus", is: "elastic modulus", above: 0 },
  },
  expression: "0.66 × Fy × S",
  source: "aisc-asd-f3",
  validity: "compact round section; the older ASD, lower than F8",
  example: {
    given: { Fy: 241.31650526, S: 0.309 * 0.0254 ** 3 },
    gives: 7.13 * KIP_IN,
    within: 0.0357 * KIP_IN,
    from: "0.66 Fy on S, Pipe1-1/2STD: 7.13 kip-in (arithmetic, 0.5 %)",
  },
  compute: ({ Fy, S }) => 0.66 * Fy * 1e6 * S,
  show: ({ Fy, S }, print) =>
    `0.66 × ${print(Fy.value, "stress")} × ${print(S.value, "section-modulus")}${/ksi/u.test(print(Fy.value, "stress")) ? " × 1,000 ÷ 12" : ""}`,
});

/** Whether F8's full plastic moment holds: D ÷ t ≤ 0.07 E ÷ Fy (AISC 360-22 Table B4.1b case 20). */
export const isCompact = (outside: number, wall: number, modulus: number, yieldStress: number): boolean =>
  outside / wall <= (0.07 * modulus) / yieldStress;

/** Deflection in metres from EI × deflection in N·m³, E in MPa and I in m⁴. */
export const deflectionFrom = (flexed: number, modulus: number, secondMoment: number): number =>
  flexed / (modulus * 1e6 * secondMoment);
