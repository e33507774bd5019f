import { formula } from "../formula/formula.js";

/** Standing leakage allowed as a share of a residual device's rating: IEC 60364-5-53 531.3.2. */
export const LEAKAGE_SHARE = 0.3;

/** UL 943 Class A, A: must not trip below the first, must trip at the second. */
export const CLASS_A = { holds: 0.004, trips: 0.006 } as const;

/** Greatest trip rating of a residual device for additional protection of people, A: BS 7671 415.1.1. */
export const RESIDUAL_MOST = 0.03;

/** Greatest leakage of cord-connected Class I equipment on a domestic plug, A (IEC/EN 60950-1 5.1). */
export const CORD_LEAKAGE = 0.0035;

/** What a Class A device does at a standing leakage in A. */
export const classA = (amperes: number): "holds" | "may trip" | "trips" =>
  amperes >= CLASS_A.trips ? "trips" : amperes >= CLASS_A.holds ? "may trip" : "holds";

/** Trip time of a Class A device, s: (20 ÷ I)^1.43 with I in mA from 6 to 264 (UL 943); undefined outside. */
export const classATime = (milliamperes: number): number | undefined =>
  milliamperes >= 6 && milliamperes <= 264 ? (20 / milliamperes) ** 1.43 : undefined;

/** Below half its rating a residual device does not trip; from its rating on it does. Amperes. */
export const residualDevice = (amperes: number, rating: number): "holds" | "may trip" | "trips" =>
  amperes >= rating ? "trips" : amperes >= rating / 2 ? "may trip" : "holds";

/** Standing leakage that a residual device may carry. */
export const leakageAllowed = formula({
  id: "power.leakage-allowed",
  title: "Standing leakage allowed",
  symbol: "Ia",
  kind: "current",
  inputs: {
    Id: { kind: "current", is: "rating of the residual device", above: 0 },
    share: { kind: "ratio", is: "share of the rating", above: 0, most: 1 },
  },
  expression: "Id × share",
  source: "iec-60364-5-53",
  validity: "residual devices of IEC practice; a Class A device of us practice holds below 4 mA",
  example: {
    given: { Id: 0.03, share: 0.3 },
    gives: 0.009,
    within: 1e-12,
    from: "30 mA → 9.0 mA, IEC 60364-5-53 531.3.2",
  },
  compute: ({ Id, share }) => Id * share,
});
