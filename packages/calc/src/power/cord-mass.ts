import { formula } from "../formula/formula.js";
import { type Known, tabled } from "../formula/value.js";
import { cordUse } from "./ampacity/cord-use.js";

/** Density of annealed copper at 20 °C, kg/m³ (IEC 60028). */
export const COPPER_DENSITY = 8890;

/**
 * Copper there is at least in a conductor, as a share of its cross-section: IEC 60228 knows a conductor by its greatest
 * resistance, and 2.5 mm² of class 5 at 7.98 Ω/km is 2.16 mm² of copper of 17.24 Ω·mm²/km.
 */
export const LEAST_COPPER = 0.85;

/** What flexible cords of a conductor weigh at most. */
export interface CordMassRow {
  readonly mm2: number;
  /** Of two and three conductors, kg/m; of more, so much for each three of them. */
  readonly most: number;
}

/** By conductor, the next larger where a cross-section is in none; wider than any figure that was seen in print. */
export const cordMassRows: readonly CordMassRow[] = [
  { mm2: 1, most: 0.18 },
  { mm2: 1.5, most: 0.22 },
  { mm2: 2.5, most: 0.32 },
  { mm2: 4, most: 0.44 },
  { mm2: 6, most: 0.58 },
  { mm2: 10, most: 1 },
  { mm2: 16, most: 1.4 },
  { mm2: 25, most: 2.1 },
];

/** Conductors of a cord the rows are for. */
export const CORD_CORES: readonly [least: number, most: number] = [2, 5];

export const copperMass = formula({
  id: "power.copper-mass",
  title: "Least copper in a cord",
  symbol: "m′",
  kind: "mass-per-length",
  inputs: {
    n: { kind: "count", is: "number of conductors", least: 1 },
    A: { kind: "conductor", is: "cross-section of a conductor", above: 0 },
  },
  expression: "n × A × 0.85 × 0.00889",
  source: "iec-60028",
  also: ["iec-60228"],
  validity: "copper, 0.00889 kg for each m and mm²; a cord is never lighter than the copper in it",
  example: {
    given: { n: 1, A: 1 },
    gives: 0.85 * 0.00889,
    within: 1e-9,
    from: "IEC 60028: 8.89 g/cm³, so that a metre of 1 mm² weighs 8.89 g; IEC 60228: 85 % of it at least",
  },
  compute: ({ n, A }) => n * A * 1e-6 * LEAST_COPPER * COPPER_DENSITY,
});

/** Types of several conductors under one jacket; SC, G, W and PPE are cables of other builds. */
const CORD = /^(?:H0[35]|H07(?:RN|BQ|ZZ)|S(?!C))/u;

/**
 * What a flexible cord weighs for each metre, from least to most; undefined for what no table is at hand of.
 * @param type as it stands on the jacket: `SOOW`, `H07RN-F`
 * @param mm2 cross-section of a conductor
 */
export function cordMass(
  type: string,
  mm2: number,
  conductors: number,
): readonly [least: Known<"mass-per-length">, most: Known<"mass-per-length">] | undefined {
  const letters = type.trim().toUpperCase();
  const row = cordMassRows.find((each) => each.mm2 >= mm2 - 1e-9);
  const [fewest, greatest] = CORD_CORES;
  const isCord = CORD.test(letters) && cordUse(letters) !== undefined;
  if (!isCord || !row || !Number.isInteger(conductors) || conductors < fewest || conductors > greatest)
    return undefined;
  const least = copperMass.of({
    n: tabled(conductors, "count", "part", "number of conductors"),
    A: tabled(mm2, "conductor", "part", "conductor"),
  });
  const most = row.most * Math.max(1, conductors / 3);
  return least.known ? [least, tabled(most, "mass-per-length", "cord-mass", "greatest mass of a cord")] : undefined;
}
