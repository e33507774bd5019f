import { formula } from "../../formula/formula.js";
import type { Known } from "../../formula/value.js";
import { consistent } from "../consistent.js";
import { GRAVITY } from "../gravity.js";

/** Moment about the floor per metre of width under a band of pressure q1 up to `change` metres and q2 above it. */
export const notionalMoment = formula({
  id: "rigging.notional-push",
  title: "Overturning moment of the notional push",
  symbol: "M_o",
  kind: "moment",
  inputs: {
    b: { kind: "length", is: "width of the face", above: 0 },
    h: { kind: "length", is: "height of its top above the floor", above: 0 },
    c: { kind: "length", is: "height where the push changes", above: 0 },
    q1: { kind: "areal-load", is: "push below that height", above: 0 },
    q2: { kind: "areal-load", is: "push above that height", least: 0 },
  },
  expression: "b × (q1 × min(h, c)² ÷ 2 + q2 × (max(h, c)² − c²) ÷ 2)",
  source: "messe-stand-building",
  validity: "indoors, face standing on the floor; a face that begins higher is on the safe side",
  example: {
    given: { b: 1, h: 5, c: 4, q1: 125, q2: 63 },
    gives: 1283.5,
    within: 0.05,
    from: "stand-building rules, 5 m: 1.2835 kN·m per metre (arithmetic)",
  },
  compute: ({ b, h, c, q1, q2 }) => (b * (q1 * Math.min(h, c) ** 2 + q2 * (Math.max(h, c) ** 2 - c ** 2))) / 2,
  show: ({ b, h, c, q1, q2 }, print) => {
    const { us, length } = consistent(print);
    const low = `${print(q1.value, "areal-load")} × min(${length(h)}, ${length(c)})² ÷ 2`;
    const high = `${print(q2.value, "areal-load")} × (max(${length(h)}, ${length(c)})² − (${length(c)})²) ÷ 2`;
    // kPa × m³ are kN·m.
    return `${length(b)} × (${low} + ${high})${us ? "" : " × 1,000"}`;
  },
});

export const notionalForce = formula({
  id: "rigging.notional-force",
  title: "Notional push on the whole face",
  symbol: "F",
  kind: "force",
  inputs: {
    b: { kind: "length", is: "width of the face", above: 0 },
    h: { kind: "length", is: "height of its top above the floor", above: 0 },
    c: { kind: "length", is: "height where the push changes", above: 0 },
    q1: { kind: "areal-load", is: "push below that height", above: 0 },
    q2: { kind: "areal-load", is: "push above that height", least: 0 },
  },
  expression: "b × (q1 × min(h, c) + q2 × (max(h, c) − c))",
  source: "messe-stand-building",
  validity: "indoors, face standing on the floor; a face that begins higher is on the safe side",
  example: {
    given: { b: 1, h: 5, c: 4, q1: 125, q2: 63 },
    gives: 563,
    within: 1e-9,
    from: "stand-building rules, 5 m: 125 × 4 + 63 × 1 = 563 N per metre (arithmetic)",
  },
  compute: ({ b, h, c, q1, q2 }) => b * (q1 * Math.min(h, c) + q2 * (Math.max(h, c) - c)),
  show: ({ b, h, c, q1, q2 }, print) => {
    const { us, length } = consistent(print);
    const low = `${print(q1.value, "areal-load")} × min(${length(h)}, ${length(c)})`;
    const high = `${print(q2.value, "areal-load")} × (max(${length(h)}, ${length(c)}) − ${length(c)})`;
    // kPa × m² are kN.
    return `${length(b)} × (${low} + ${high})${us ? "" : " × 1,000"}`;
  },
});

export const slidingFactor = formula({
  id: "rigging.sliding-factor",
  title: "Factor against sliding",
  symbol: "γ",
  kind: "factor",
  inputs: {
    μ: { kind: "factor", is: "friction of the feet on the floor", above: 0 },
    m: { kind: "mass", is: "mass standing on it", least: 0 },
    F: { kind: "force", is: "push", above: 0 },
  },
  expression: "μ × m × g ÷ F",
  source: "statics",
  validity: "a level floor; friction as measured on it; g = 9.80665 m/s²",
  example: {
    given: { μ: 0.4, m: 300, F: 563 },
    gives: 2.0902,
    within: 5e-5,
    from: "300 kg at 0.4 against 563 N: 0.4 × 300 × 9.80665 ÷ 563 (arithmetic)",
  },
  compute: ({ μ, m, F }) => (μ * m * GRAVITY) / F,
  show: ({ μ, m, F }, print) => {
    const { g } = consistent(print);
    return `${print(μ.value, "factor")} × ${print(m.value, "mass")}${g} ÷ ${print(F.value, "force")}`;
  },
});

export const restoringMoment = formula({
  id: "rigging.restoring-moment",
  title: "Restoring moment about an edge of the base",
  symbol: "M_r",
  kind: "moment",
  inputs: {
    m: { kind: "mass", is: "panels and what they carry", least: 0 },
    x: { kind: "length", is: "edge to the middle of the panels", least: 0 },
    ms: { kind: "mass", is: "the base itself", least: 0 },
    xs: { kind: "length", is: "edge to the middle of the base, half its depth", least: 0 },
    mb: { kind: "mass", is: "ballast", least: 0 },
    xb: { kind: "length", is: "edge to the ballast", least: 0 },
  },
  expression: "(m × x + ms × xs + mb × xb) × g",
  source: "statics",
  validity: "the edge is the one it would tip over; g = 9.80665 m/s²",
  example: {
    given: { m: 200, x: 0.6, ms: 40, xs: 0.6, mb: 0, xb: 1.1 },
    gives: 1412.64,
    within: 7,
    from: "wall of 240 kg with its base, 0.60 m: 1.41264 kN·m with g 9.81 (arithmetic, 0.5 %)",
  },
  compute: ({ m, x, ms, xs, mb, xb }) => (m * x + ms * xs + mb * xb) * GRAVITY,
  show: ({ m, x, ms, xs, mb, xb }, print) => {
    const { g, length } = consistent(print);
    const term = (mass: Known, arm: Known): string => `${print(mass.value, "mass")} × ${length(arm)}`;
    return `(${term(m, x)} + ${term(ms, xs)} + ${term(mb, xb)})${g}`;
  },
});

/** The arm of the same weight about the other edge of the base. */
export const armBehind = formula({
  id: "rigging.arm-behind",
  title: "Distance from the edge behind",
  symbol: "x'",
  kind: "length",
  inputs: {
    d: { kind: "length", is: "depth of the base", above: 0 },
    x: { kind: "length", is: "distance from the toe", least: 0 },
  },
  expression: "d − x",
  source: "geometry",
  validity: "the weight stands on the base, between its two edges",
  example: { given: { d: 1.2, x: 0.5 }, gives: 0.7, within: 1e-12, from: "by hand" },
  compute: ({ d, x }) => d - x,
});

export const overturningFactor = formula({
  id: "rigging.overturning-factor",
  title: "Factor against overturning",
  symbol: "γ",
  kind: "factor",
  inputs: {
    Mr: { kind: "moment", is: "restoring moment", least: 0 },
    Mo: { kind: "moment", is: "overturning moment", above: 0 },
  },
  expression: "Mr ÷ Mo",
  source: "overturning-1.5",
  validity: "rigid body on a level floor",
  example: {
    given: { Mr: 1412.64, Mo: 1171.875 },
    gives: 1.205,
    within: 0.0005,
    from: "3.0 m × 2.5 m wall, 0.125 kN/m²: 1.205 (arithmetic)",
  },
  compute: ({ Mr, Mo }) => Mr / Mo,
});

export const ballastNeeded = formula({
  id: "rigging.ballast-needed",
  title: "Ballast needed",
  symbol: "mb",
  kind: "mass",
  inputs: {
    γ: { kind: "factor", is: "required factor", least: 1 },
    Mo: { kind: "moment", is: "overturning moment", least: 0 },
    Mr: { kind: "moment", is: "restoring moment without ballast", least: 0 },
    xb: { kind: "length", is: "edge to ballast", above: 0 },
  },
  expression: "max(0, γ × Mo − Mr) ÷ (g × xb)",
  source: "overturning-1.5",
  validity: "rigid body on a level floor; g = 9.80665 m/s²",
  example: {
    given: { γ: 1.5, Mo: 1171.875, Mr: 1412.64, xb: 1.1 },
    gives: 31.99,
    within: 0.16,
    from: "same wall, arm 1.10 m: 31.99 kg with g 9.81 (arithmetic, 0.5 %)",
  },
  compute: ({ γ, Mo, Mr, xb }) => Math.max(0, γ * Mo - Mr) / (GRAVITY * xb),
  show: ({ γ, Mo, Mr, xb }, print) => {
    const { us, length } = consistent(print);
    const lacking = `max(0, ${γ.value} × ${print(Mo.value, "moment")} − ${print(Mr.value, "moment")})`;
    return us ? `${lacking} ÷ ${length(xb)}` : `${lacking} ÷ (9.80665 × ${length(xb)})`;
  },
});
