import { formula } from "../../formula/formula.js";

const leg = { kind: "length", above: 0 } as const;

/** Tension in the first leg of a two-leg bridle with legs of any rise V and run H. */
export const bridleTension = formula({
  id: "rigging.bridle-tension",
  title: "Tension in a bridle leg",
  symbol: "T",
  kind: "mass",
  inputs: {
    W: { kind: "mass", is: "load on the bridle", least: 0 },
    V1: { ...leg, is: "rise of this leg" },
    H1: { kind: "length", is: "run of this leg", least: 0 },
    V2: { ...leg, is: "rise of the other leg" },
    H2: { ...leg, is: "run of the other leg" },
  },
  expression: "W × √(V1² + H1²) × H2 ÷ (V1 × H2 + V2 × H1)",
  source: "hall-bridles",
  validity: "two legs in one plane, apex below both anchors",
  example: {
    given: { W: 500, V1: 4, H1: 3, V2: 3, H2: 6 },
    gives: 454.5,
    within: 0.5,
    from: "D. Hall, lesson 4, inputs; T1 454.5 lb (arithmetic)",
  },
  compute: ({ W, V1, H1, V2, H2 }) => (W * Math.hypot(V1, H1) * H2) / (V1 * H2 + V2 * H1),
});

/** The same horizontal pull on both anchors. */
export const bridlePull = formula({
  id: "rigging.bridle-pull",
  title: "Horizontal pull of a bridle",
  symbol: "F",
  kind: "mass",
  inputs: {
    W: { kind: "mass", is: "load on the bridle", least: 0 },
    V1: { ...leg, is: "rise of one leg" },
    H1: { ...leg, is: "run of one leg" },
    V2: { ...leg, is: "rise of the other leg" },
    H2: { ...leg, is: "run of the other leg" },
  },
  expression: "W × H1 × H2 ÷ (V1 × H2 + V2 × H1)",
  source: "hall-bridles",
  validity: "two legs in one plane, apex below both anchors",
  example: {
    given: { W: 500, V1: 4, H1: 3, V2: 3, H2: 6 },
    gives: 272.7,
    within: 0.05,
    from: "D. Hall, lesson 4, inputs; 272.7 lb on both (arithmetic)",
  },
  compute: ({ W, V1, H1, V2, H2 }) => (W * H1 * H2) / (V1 * H2 + V2 * H1),
});

export const legAngle = formula({
  id: "rigging.leg-angle",
  title: "Angle of a leg from horizontal",
  symbol: "α",
  kind: "angle",
  inputs: { V: { kind: "length", is: "rise", least: 0 }, H: { kind: "length", is: "run", above: 0 } },
  expression: "arctan(V ÷ H)",
  source: "geometry",
  validity: "a straight leg",
  example: { given: { V: 10, H: 4 }, gives: 68.2, within: 0.05, from: "D. Hall, lesson 3: 21.8° from vertical" },
  compute: ({ V, H }) => (Math.atan2(V, H) * 180) / Math.PI,
});

export const bridleLegLength = formula({
  id: "rigging.leg-length",
  title: "Length of a straight leg",
  symbol: "L",
  kind: "length",
  inputs: {
    V: { kind: "length", is: "rise", least: 0 },
    H: { kind: "length", is: "run", least: 0 },
  },
  expression: "√(V² + H²)",
  source: "geometry",
  validity: "a straight leg",
  example: {
    given: { V: 10, H: 4 },
    gives: 10.77,
    within: 0.005,
    from: "D. Hall, lesson 6: rise 10 ft, run 4 ft, 10.77 ft",
  },
  compute: ({ V, H }) => Math.hypot(V, H),
});

export const dropOf = formula({
  id: "rigging.drop",
  title: "Drop of a bar below what its hangs bear on",
  symbol: "d",
  kind: "length",
  inputs: {
    up: { kind: "length", is: "height of what the hangs bear on", least: 0 },
    h: { kind: "length", is: "height of the middle of the bar", least: 0 },
  },
  expression: "up − h",
  source: "geometry",
  validity: "both heights above the same floor",
  example: { given: { up: 5.5, h: 4 }, gives: 1.5, within: 1e-12, from: "by hand" },
  compute: ({ up, h }) => up - h,
});

export const slingLegLoad = formula({
  id: "rigging.sling-leg-load",
  title: "Load in each of n equal sling legs",
  symbol: "T",
  kind: "mass",
  inputs: {
    W: { kind: "mass", is: "load", least: 0 },
    n: { kind: "count", is: "number of legs", least: 1 },
    α: { kind: "angle", is: "angle from horizontal", above: 0, most: 90 },
  },
  expression: "W ÷ (n × sin α)",
  source: "asme-b30.9",
  validity: "equal legs sharing the load; no flatter than 30° from horizontal",
  example: {
    given: { W: 2000, n: 2, α: 60 },
    gives: 1154.7,
    within: 0.05,
    from: "2,000 lb on two legs at 60° from horizontal: 1,154.7 lb (arithmetic)",
  },
  compute: ({ W, n, α }) => W / (n * Math.sin((α * Math.PI) / 180)),
});
