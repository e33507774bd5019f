import { formula } from "../formula/formula.js";
import { type Known, tabled } from "../formula/value.js";

/** Which electrical practice applies. */
export type Practice = "us" | "iec";

/** A load of three hours or more is continuous (NEC Art. 100). `seconds` in s. */
export const isContinuous = (seconds: number): boolean => seconds >= 3 * 3600;

/** Share of a breaker's rating a continuous load may use: 80 % in `us` practice (1 ÷ 1.25), all of it in `iec`. */
export const continuousShare = (practice: Practice): Known =>
  practice === "us"
    ? tabled(0.8, "ratio", "nec-210.20a", "continuous share of the breaker's rating")
    : tabled(1, "ratio", "iec-60364-4-43", "continuous share of the breaker's rating");

/** What a circuit may carry for three hours or more. */
export const continuousRating = formula({
  id: "power.continuous-rating",
  title: "Continuous rating of a circuit",
  symbol: "Ic",
  kind: "current",
  inputs: {
    In: { kind: "current", is: "breaker rating", above: 0 },
    share: { kind: "ratio", is: "continuous share", above: 0, most: 1 },
  },
  expression: "In × share",
  // The share carries its own source, so that an IEC build never cites the NEC.
  source: "arithmetic",
  validity: "overcurrent devices not listed for 100 %; with a share of 1 for those that are and in IEC practice",
  example: {
    given: { In: 50, share: 0.8 },
    gives: 40,
    within: 1e-9,
    from: "NEC 625.41 worked on a 50 A circuit (genba-dentaku.com EL-10)",
  },
  compute: ({ In, share }) => In * share,
});

/** Least rating of an overcurrent device for a continuous and a non-continuous load. */
export const overcurrentNeeded = formula({
  id: "power.overcurrent-needed",
  title: "Least overcurrent rating",
  symbol: "In",
  kind: "current",
  inputs: {
    Ic: { kind: "current", is: "continuous load", least: 0 },
    Ix: { kind: "current", is: "non-continuous load", least: 0 },
  },
  expression: "1.25 × Ic + Ix",
  source: "nec-210.20a",
  also: ["nec-215.3", "nec-210.19a"],
  validity: "branch circuits and feeders of us practice, device not listed for 100 %",
  example: {
    given: { Ic: 100, Ix: 40 },
    gives: 165,
    within: 0.5,
    from: "course text Feeders, Feeder Taps & Voltage Drop (NEC 2023)",
  },
  compute: ({ Ic, Ix }) => 1.25 * Ic + Ix,
});
