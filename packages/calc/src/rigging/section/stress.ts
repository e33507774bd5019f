import { formula } from "../../formula/formula.js";

/** Kip-inch and ksi, the units US tables print. */
const KIP_IN = 112.9848290276167;
const KSI = 6.894757293168;

/** Bending stress at the outermost fibre, MPa. */
export const bendingStress = formula({
  id: "rigging.bending-stress",
  title: "Bending stress",
  symbol: "σ",
  kind: "stress",
  inputs: {
    M: { kind: "moment", is: "bending moment", least: 0 },
    S: { kind: "section-modulus", is: "elastic modulus", above: 0 },
  },
  expression: "M ÷ S",
  source: "statics",
  validity: "elastic bending about an axis of symmetry",
  example: {
    given: { M: 7.13 * KIP_IN, S: 0.309 * 0.0254 ** 3 },
    gives: 0.66 * 35 * KSI,
    within: 0.05 * KSI,
    from: "0.66 × 35 ksi on S of Pipe1-1/2STD is 7.13 kip-in (AISC Shapes Database v16.0, ASD F3); both printed to three digits",
  },
  compute: ({ M, S }) => M / S / 1e6,
  // lb·ft ÷ in³ × 12 ÷ 1,000 are ksi; N·m ÷ cm³ are MPa as they stand.
  show: ({ M, S }, print) => {
    const us = /lb/u.test(print(M.value, "moment"));
    return `${print(M.value, "moment")} ÷ ${print(S.value, "section-modulus")}${us ? " × 12 ÷ 1,000" : ""}`;
  },
});

/** Elastic modulus of a section that is symmetrical about its middle, from its second moment and its depth. */
export const elasticModulus = formula({
  id: "rigging.elastic-modulus",
  title: "Elastic modulus",
  symbol: "S",
  kind: "section-modulus",
  inputs: {
    I: { kind: "second-moment", is: "second moment of area", above: 0 },
    D: { kind: "length", is: "outside diameter", above: 0 },
  },
  expression: "I ÷ (D ÷ 2)",
  source: "tube-formula",
  validity: "symmetrical about its middle",
  example: {
    given: { I: 0.293 * 0.0254 ** 4, D: 1.9 * 0.0254 },
    gives: 0.309 * 0.0254 ** 3,
    within: 0.001 * 0.0254 ** 3,
    from: "Pipe1-1/2STD: I 0.293 in⁴, D 1.90 in, S 0.309 in³ (AISC Shapes Database v16.0), printed to three digits",
  },
  compute: ({ I, D }) => I / (D / 2),
  // The diameter in the unit the second moment is in.
  show: ({ I, D }, print) => {
    const text = print(I.value, "second-moment");
    const us = /in⁴/u.test(text);
    const size = us
      ? `${Number((D.value / 0.0254).toPrecision(4))} in`
      : `${Number((D.value * 100).toPrecision(4))} cm`;
    return `${text} ÷ (${size} ÷ 2)`;
  },
});
