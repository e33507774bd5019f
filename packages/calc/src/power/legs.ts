import { formula } from "../formula/formula.js";
import type { Value } from "../formula/value.js";

/**
 * Current of one leg of a three-phase supply that carries two line-to-line loads (I, J) of equal power factor:
 * they stand 60° apart in the leg, so the vector sum is below the plain one.
 */
export const legCurrent = formula({
  id: "power.leg-current",
  title: "Leg current from line-to-line loads",
  symbol: "Ileg",
  kind: "current",
  inputs: {
    I: { kind: "current", is: "current of one line-to-line load", least: 0 },
    J: { kind: "current", is: "current of the other line-to-line load", least: 0 },
  },
  expression: "√(I² + J² + I × J)",
  source: "electrical-definition",
  validity: "loads of equal power factor",
  example: {
    given: { I: 105, J: 33 },
    gives: 124.8,
    within: 0.05,
    from: "industrialmonitordirect.com, Delta unbalanced load current",
  },
  compute: ({ I, J }) => Math.sqrt(I * I + J * J + I * J),
  show: ({ I, J }, print) => {
    const [i, j] = [print(I.value, "current"), print(J.value, "current")];
    return `√((${i})² + (${j})² + ${i} × ${j})`;
  },
});

export interface LineToLine {
  readonly AB: Value;
  readonly BC: Value;
  readonly CA: Value;
}

/** Current of each leg; a load whose current is missing leaves its two legs missing, not the third. */
export const legCurrents = ({
  AB,
  BC,
  CA,
}: LineToLine): { readonly A: Value<"current">; readonly B: Value<"current">; readonly C: Value<"current"> } => ({
  A: legCurrent.of({ I: AB, J: CA }),
  B: legCurrent.of({ I: BC, J: AB }),
  C: legCurrent.of({ I: CA, J: BC }),
});

/** How far the legs of a supply are apart, as a share of the most loaded leg. */
export const legImbalance = formula({
  id: "power.leg-imbalance",
  title: "Leg imbalance",
  symbol: "u",
  kind: "ratio",
  inputs: {
    I: { kind: "current", is: "current of each leg; Imax the greatest of them, Imin the least", many: true, least: 0 },
  },
  expression: "(Imax − Imin) ÷ Imax",
  source: "practice",
  validity: "all legs of one supply",
  example: { given: { I: [20, 15, 18] }, gives: 0.25, within: 1e-9, from: "by hand" },
  compute: ({ I }) => {
    const most = Math.max(...I);
    return most === 0 ? 0 : (most - Math.min(...I)) / most;
  },
  show: ({ I }, print) => {
    const amperes = I.map((each) => each.value);
    const [most, least] = [print(Math.max(...amperes), "current"), print(Math.min(...amperes), "current")];
    return `(${most} − ${least}) ÷ ${most}`;
  },
});

/** Phasor of a current: amperes and degrees. */
export interface Phasor {
  readonly amperes: number;
  readonly degrees: number;
}

/** Vector difference of two phasors, for loads whose power factors differ (Kirchhoff's current law at a leg). */
export function phasorDifference(a: Phasor, b: Phasor): Phasor {
  const radians = Math.PI / 180;
  const x = a.amperes * Math.cos(a.degrees * radians) - b.amperes * Math.cos(b.degrees * radians);
  const y = a.amperes * Math.sin(a.degrees * radians) - b.amperes * Math.sin(b.degrees * radians);
  return { amperes: Math.hypot(x, y), degrees: Math.atan2(y, x) / radians };
}
