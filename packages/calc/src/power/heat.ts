import { formula } from "../formula/formula.js";
import { showSum } from "../formula/substitution.js";
import { fromKept, unitByCode } from "../quantity/units.js";

/** Btu(IT)/h of one ton of refrigeration (NIST SP 811 B.8). */
export const BTU_PER_TON = 12_000;

const btu = unitByCode("heat-rate", "[Btu_IT]/h");

/** All the power a panel draws ends as heat in the room. */
export const heat = formula({
  id: "power.heat",
  title: "Heat into the room",
  symbol: "Q",
  kind: "heat-rate",
  inputs: { P: { kind: "power", is: "power drawn", many: true, least: 0 } },
  expression: "Σ P",
  source: "nist-sp811",
  validity: "steady state; the light that leaves the room is neglected",
  example: { given: { P: [500, 254] }, gives: 754, within: 1e-9, from: "by hand" },
  compute: ({ P }) => P.reduce((total, each) => total + each, 0),
  show: ({ P }, print) => {
    const watts = showSum(P, print);
    return print(1, "heat-rate").endsWith(btu.print) ? `(${watts}) × 3.412 ${btu.print} per W` : watts;
  },
});

/** W → Btu(IT)/h. */
export const wattsToBtu = (watts: number): number => fromKept(watts, btu);

/** Cooling in tons of refrigeration. */
export const coolingTons = formula({
  id: "power.cooling-tons",
  title: "Cooling needed, in tons of refrigeration",
  symbol: "T",
  kind: "factor",
  inputs: { Q: { kind: "heat-rate", is: "heat rate", least: 0 } },
  expression: "Q ÷ 12,000 BTU/h",
  source: "nist-sp811",
  validity: "any heat rate",
  example: { given: { Q: 3517 }, gives: 1, within: 0.0002, from: "1 ton = 3.517 kW in print (NIST SP 811 B.8)" },
  compute: ({ Q }) => wattsToBtu(Q) / BTU_PER_TON,
  show: ({ Q }, print) => `${print(Q.value, "heat-rate", btu)} ÷ 12,000 BTU/h`,
});
