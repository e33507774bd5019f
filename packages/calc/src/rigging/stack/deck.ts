import { formula } from "../../formula/formula.js";
import { consistent } from "../consistent.js";
import { GRAVITY } from "../gravity.js";

/** Mean pressure under a base, or under feet when their whole bearing area is given. */
export const deckPressure = formula({
  id: "rigging.deck-pressure",
  title: "pressure on the deck",
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

/** The heaviest foot under a push: its share of the weight and the couple the push adds to the front row. */
export const footLoad = formula({
  id: "rigging.foot-load",
  title: "load of the heaviest foot",
  symbol: "P",
  kind: "force",
  inputs: {
    m: { kind: "mass", is: "mass standing on it", least: 0 },
    n: { kind: "count", is: "number of feet", least: 2 },
    Mo: { kind: "moment", is: "overturning moment", least: 0 },
    d: { kind: "length", is: "distance between the two rows of feet", above: 0 },
  },
  expression: "m × g ÷ n + Mo ÷ (d × n ÷ 2)",
  source: "statics",
  validity: "two equal rows of feet, weight midway between them, all feet down; g = 9.80665 m/s²",
  example: {
    given: { m: 600, n: 4, Mo: 0, d: 1 },
    gives: 1471,
    within: 0.5,
    from: "600 kg on four feet without a push: 147 kPa on 100 × 100 mm (arithmetic)",
  },
  compute: ({ m, n, Mo, d }) => (m * GRAVITY) / n + Mo / ((d * n) / 2),
  show: ({ m, n, Mo, d }, print) => {
    const { g, length } = consistent(print);
    return `${print(m.value, "mass")}${g} ÷ ${n.value} + ${print(Mo.value, "moment")} ÷ (${length(d)} × ${n.value} ÷ 2)`;
  },
});
