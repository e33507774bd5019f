import { formula } from "../../formula/formula.js";
import { consistent } from "../consistent.js";
import { GRAVITY } from "../gravity.js";

/** Mean pressure under a base, or under feet when their whole bearing area is given. */
export const deckPressure = formula({
  id: "rigging.deck-pressure",
  title: "Pressure on the deck",
  symbol: "p",
  kind: "areal-load",
  inputs: {
    m: { kind: "mass", is: "mass standing on it", least: 0 },
    A: { kind: "area", is: "bearing area", above: 0 },
  },
  expression: "m × g ÷ A",
  source: "statics",
  validity: "load spread evenly; feet are checked apart; g = 9.80665 m/s²",
  example: {
    given: { m: 600, A: 3.6 },
    gives: 1634,
    within: 0.5,
    from: "600 kg on 1.2 × 3.0 m: 1.634 kPa (arithmetic)",
  },
  compute: ({ m, A }) => (m * GRAVITY) / A,
  // kg × g ÷ m² are pascals.
  show: ({ m, A }, print) => {
    const { us, g } = consistent(print);
    return `${print(m.value, "mass")}${g} ÷ ${print(A.value, "area")}${us ? "" : " ÷ 1,000"}`;
  },
});

/** Where the weight of a standing face has its centre, from the edge its moment is taken about. */
export const centreOfWeight = formula({
  id: "rigging.centre-of-weight",
  title: "Distance of the weight's centre from the toe",
  symbol: "x",
  kind: "length",
  inputs: {
    Mr: { kind: "moment", is: "restoring moment about the toe", least: 0 },
    m: { kind: "mass", is: "mass standing on it", above: 0 },
  },
  expression: "Mr ÷ (m × g)",
  source: "statics",
  validity: "g = 9.80665 m/s²",
  example: {
    given: { Mr: 1412.1576, m: 240 },
    gives: 0.6,
    within: 1e-6,
    from: "240 kg at 0.60 m have 240 × 9.80665 × 0.60 N·m (arithmetic)",
  },
  compute: ({ Mr, m }) => Mr / (m * GRAVITY),
  show: ({ Mr, m }, print) => {
    const { us, g } = consistent(print);
    return `${print(Mr.value, "moment")} ÷ (${print(m.value, "mass")}${g})${us ? "" : " × 1,000"}`;
  },
});

/** The heaviest foot under a push: the fuller row's share of the weight and the couple the push adds to it. */
export const footLoad = formula({
  id: "rigging.foot-load",
  title: "Load of the heaviest foot",
  symbol: "P",
  kind: "force",
  inputs: {
    m: { kind: "mass", is: "mass standing on it", least: 0 },
    n: { kind: "count", is: "number of feet", least: 2 },
    Mo: { kind: "moment", is: "overturning moment", least: 0 },
    d: { kind: "length", is: "distance between the two rows of feet", above: 0 },
    e: { kind: "length", is: "distance of the weight's centre from the farther row", least: 0 },
  },
  expression: "(m × g × e ÷ d + Mo ÷ d) ÷ (n ÷ 2)",
  source: "statics",
  validity: "two rows of as many feet, alike along each row, all feet down; g = 9.80665 m/s²",
  example: {
    given: { m: 600, n: 4, Mo: 0, d: 1, e: 0.5 },
    gives: 1471,
    within: 0.5,
    from: "600 kg midway between four feet: 147 kPa on 100 × 100 mm (arithmetic)",
  },
  compute: ({ m, n, Mo, d, e }) => ((m * GRAVITY * e) / d + Mo / d) / (n / 2),
  show: ({ m, n, Mo, d, e }, print) => {
    const { g, length } = consistent(print);
    return `(${print(m.value, "mass")}${g} × ${length(e)} ÷ ${length(d)} + ${print(Mo.value, "moment")} ÷ ${length(d)}) ÷ (${n.value} ÷ 2)`;
  },
});
