import { formula } from "../../formula/formula.js";

export const loadConstant = { us: 51 * 0.45359237, metric: 23 } as const;

const CM = 0.01;
const IN = 0.0254;
/** Metres: a limit that was written in inches is met by as many inches. */
const NOISE = 1e-6;

/** The equation is published in inches and in centimetres; the two are not exact conversions of each other. */
export type NioshForm = "us" | "metric";

/** Multipliers of the revised NIOSH equation, lengths in metres; outside their range they are 0: no weight is right. */
export const horizontalMultiplier = (h: number, form: NioshForm = "metric"): number =>
  h > (form === "us" ? 25 * IN : 63 * CM) + NOISE ? 0 : Math.min(1, (form === "us" ? 10 * IN : 25 * CM) / h);

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

/** Height Tables 5 and 7 break at. */
const breakAt = (form: NioshForm): number => (form === "us" ? 30 * IN : 75 * CM) - NOISE;

/** Table 7; the break is at 30 in, or 75 cm. */
export function couplingMultiplier(coupling: Coupling, v: number, form: NioshForm = "metric"): number {
  if (coupling === "poor") return 0.9;
  return coupling === "fair" && v < breakAt(form) ? 0.95 : 1;
}

/**
 * Table 5: lifts a minute, then the multiplier for lifting of up to 1 h, 2 h and 8 h, each with the hands below 30 in
 * (75 cm) at the start of the lift and from there up.
 */
export const frequencyRows = [
  [0.2, 1, 1, 0.95, 0.95, 0.85, 0.85],
  [0.5, 0.97, 0.97, 0.92, 0.92, 0.81, 0.81],
  [1, 0.94, 0.94, 0.88, 0.88, 0.75, 0.75],
  [2, 0.91, 0.91, 0.84, 0.84, 0.65, 0.65],
  [3, 0.88, 0.88, 0.79, 0.79, 0.55, 0.55],
  [4, 0.84, 0.84, 0.72, 0.72, 0.45, 0.45],
  [5, 0.8, 0.8, 0.6, 0.6, 0.35, 0.35],
  [6, 0.75, 0.75, 0.5, 0.5, 0.27, 0.27],
  [7, 0.7, 0.7, 0.42, 0.42, 0.22, 0.22],
  [8, 0.6, 0.6, 0.35, 0.35, 0.18, 0.18],
  [9, 0.52, 0.52, 0.3, 0.3, 0, 0.15],
  [10, 0.45, 0.45, 0.26, 0.26, 0, 0.13],
  [11, 0.41, 0.41, 0, 0.23, 0, 0],
  [12, 0.37, 0.37, 0, 0.21, 0, 0],
  [13, 0, 0.34, 0, 0, 0, 0],
  [14, 0, 0.31, 0, 0, 0, 0],
  [15, 0, 0.28, 0, 0, 0, 0],
] as const;

/** Upper ends of the durations of Table 5, hours. */
export const liftingHours = [1, 2, 8] as const;

/**
 * Table 5, between its rows by linear interpolation (p. 7); up to a row of nought it is nought, the safe side. Below
 * one lift in five minutes counts as that; more than 15 a minute or 8 hours is nought. `v` is where the lift starts.
 */
export function frequencyMultiplier(perMinute: number, seconds: number, v: number, form: NioshForm = "metric"): number {
  const duration = liftingHours.findIndex((hours) => seconds <= hours * 3600 + NOISE);
  if (duration < 0) return 0;
  const column = 1 + 2 * duration + (v < breakAt(form) ? 0 : 1);
  const above = frequencyRows.findIndex(([lifts]) => perMinute <= lifts + NOISE);
  if (above < 0) return 0;
  const [high, low] = [frequencyRows[above], frequencyRows[Math.max(0, above - 1)]] as const;
  const [from, to] = [low?.[column] ?? 0, high?.[column] ?? 0];
  if (above === 0 || to === 0) return to;
  const [f0, f1] = [low?.[0] ?? 0, high?.[0] ?? 0];
  return from + ((to - from) * (Math.min(perMinute, f1) - f0)) / (f1 - f0);
}

const share = (is: string) => ({ kind: "factor", is, least: 0, most: 1 }) as const;

export const recommendedWeight = formula({
  id: "rigging.recommended-weight-limit",
  title: "Recommended weight limit",
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
