import { formula } from "../../formula/formula.js";

export const loadConstant = { us: 51 * 0.45359237, metric: 23 } as const;

const CM = 0.01;
const IN = 0.0254;

/** The equation is published in inches and in centimetres; the two are not exact conversions of each other. */
export type NioshForm = "us" | "metric";

/** Multipliers of the revised NIOSH equation, lengths in metres; outside their range they are 0: no weight is right. */
export const horizontalMultiplier = (h: number, form: NioshForm = "metric"): number =>
  h > 25.0001 * IN ? 0 : Math.min(1, (form === "us" ? 10 * IN : 25 * CM) / h);

export function verticalMultiplier(v: number, form: NioshForm = "metric"): number {
  if (v < 0 || v > (form === "us" ? 70 * IN : 175 * CM)) return 0;
  return form === "us" ? 1 - 0.0075 * Math.abs(v / IN - 30) : 1 - 0.003 * Math.abs(v / CM - 75);
}

export function distanceMultiplier(d: number, form: NioshForm = "metric"): number {
  if (d > (form === "us" ? 70 * IN : 175 * CM)) return 0;
  return Math.min(1, 0.82 + (form === "us" ? 1.8 / (d / IN) : 4.5 / (d / CM)));
}

export const asymmetryMultiplier = (degrees: number): number =>
  degrees < 0 || degrees > 135 ? 0 : 1 - 0.0032 * degrees;

export type Coupling = "good" | "fair" | "poor";

/** Table 7; the break is at 75 cm. */
export function couplingMultiplier(coupling: Coupling, v: number): number {
  if (coupling === "poor") return 0.9;
  return coupling === "fair" && v < 0.75 ? 0.95 : 1;
}

const share = (is: string) => ({ kind: "factor", is, least: 0, most: 1 }) as const;

export const recommendedWeight = formula({
  id: "rigging.recommended-weight-limit",
  title: "recommended weight limit",
  symbol: "RWL",
  kind: "mass",
  inputs: {
    LC: { kind: "mass", is: "load constant", above: 0 },
    HM: share("horizontal multiplier"),
    VM: share("vertical multiplier"),
    DM: share("distance multiplier"),
    AM: share("asymmetry multiplier"),
    FM: share("frequency multiplier"),
    CM: share("coupling multiplier"),
  },
  expression: "LC × HM × VM × DM × AM × FM × CM",
  source: "niosh-94-110",
  validity: "two-handed lifting by one person, standing, good footing",
  example: {
    given: { LC: 51, HM: 1, VM: 0.94, DM: 0.87, AM: 1, FM: 0.88, CM: 0.95 },
    gives: 34.9,
    within: 0.05,
    from: "NIOSH 94-110, Example 4, pp. 44–46, origin: 34.9 lb",
  },
  compute: ({ LC, HM, VM, DM, AM, FM, CM: coupling }) => LC * HM * VM * DM * AM * FM * coupling,
});

/**
 * People needed so that nobody carries more than the limit, shared evenly; undefined when the limit is zero.
 * An even split is common practice, not part of the equation, which is for one person.
 */
export const peopleNeeded = (mass: number, limit: number): number | undefined =>
  limit > 0 ? Math.max(1, Math.ceil(mass / limit - 1e-9)) : undefined;
