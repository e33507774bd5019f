import { formula } from "../formula/formula.js";
import { type Known, restingOn, tabled } from "../formula/value.js";
import type { SourceId } from "../sources/index.js";

/** Channel, fixed cable and cords of twisted-pair copper, in metres (ISO/IEC 11801, ANSI/TIA-568). */
export const CHANNEL = { all: 100, fixed: 90, cords: 10 } as const;

/** Longest work-area cord in metres whatever the budget leaves: 72 ft and 66 ft as printed. */
export const CORD_MOST = { tia: 22, iso: 20 } as const;

/**
 * Loss budget K in metres and extra loss D of cords. The two belong together: at 90 m fixed and 10 m of cords
 * the budget is 90 + (1 + D) × 10. Mixing K of one pair with D of the other gives wrong lengths.
 */
export interface CordBudget {
  readonly name: string;
  readonly budget: number;
  readonly extraLoss: number;
  readonly source: SourceId;
}

export const cordBudgets = {
  "24 AWG": { name: "24 AWG stranded", budget: 102, extraLoss: 0.2, source: "tia-568-b.1" },
  "26 AWG": { name: "26 AWG stranded", budget: 105, extraLoss: 0.5, source: "iec-11801-2002" },
} as const satisfies Readonly<Record<string, CordBudget>>;

/** Longest total of cords in metres behind a length of fixed cable. */
export const cordLength = formula({
  id: "signal.cord-length",
  title: "Longest cords behind fixed cable",
  symbol: "C",
  kind: "length",
  inputs: {
    K: { kind: "length", is: "loss budget as a length of fixed cable", above: 0 },
    H: { kind: "length", is: "fixed cable", least: 0 },
    D: { kind: "factor", is: "extra loss of the cords", least: 0 },
  },
  expression: "(K − H) ÷ (1 + D)",
  source: "tia-568-b.1",
  validity: "K = 102 m with D = 0.2, or K = 105 m with D = 0.5; fixed cable up to 90 m",
  example: { given: { K: 102, H: 80, D: 0.2 }, gives: 18.33, within: 0.005, from: "(102 − 80) ÷ 1.2" },
  compute: ({ K, H, D }) => (K - H) / (1 + D),
});

/** Fixed and stranded cable of a hop as a length of fixed cable, in metres: the loss that is spent of the budget. */
export const lossLength = formula({
  id: "signal.loss-length",
  title: "Cable length by loss",
  symbol: "B",
  kind: "length",
  inputs: {
    H: { kind: "length", is: "fixed cable", least: 0 },
    C: { kind: "length", is: "cords", least: 0 },
    D: { kind: "factor", is: "extra loss of the cords", least: 0 },
  },
  expression: "H + (1 + D) × C",
  source: "tia-568-b.1",
  validity: "twisted-pair copper",
  example: { given: { H: 90, C: 10, D: 0.2 }, gives: 102, within: 1e-9, from: "90 m + 1.2 × 10 m" },
  compute: ({ H, C, D }) => H + (1 + D) * C,
});

/** Longest run of stranded cord with no fixed cable before it: the whole budget is spent on the cord. */
export const cordAlone = formula({
  id: "signal.cord-alone",
  title: "Longest run of cord alone",
  symbol: "C",
  kind: "length",
  inputs: {
    K: { kind: "length", is: "loss budget as a length of fixed cable", above: 0 },
    D: { kind: "factor", is: "extra loss of the cord", least: 0 },
  },
  expression: "K ÷ (1 + D)",
  source: "arithmetic",
  also: ["tia-568-b.1", "iec-11801-2002"],
  validity:
    "K = 102 m with D = 0.2 for 24 AWG (ANSI/TIA/EIA-568-B.1), K = 105 m with D = 0.5 (ISO/IEC 11801); neither standard tabulates a run of cord alone",
  example: { given: { K: 105, D: 0.5 }, gives: 70, within: 1e-9, from: "90 m + 1.5 × 10 m = 105 m; 105 ÷ 1.5" },
  compute: ({ K, D }) => K / (1 + D),
});

/** A limit in metres, and whether passing it is only doubtful (outside the range the standard tabulates). */
export interface HopLimit {
  readonly limit: Known<"length">;
  readonly doubtful: boolean;
  readonly source: SourceId;
}

/**
 * How long one unbroken hop of twisted-pair copper may be. Solid: the whole channel. Stranded: the budget spent on
 * cords alone, 102 ÷ 1.2 = 85 m or 105 ÷ 1.5 = 70 m, which lies outside the tabulated range, so a warning only.
 */
export function copperHop(strands: "solid" | CordBudget): HopLimit {
  if (strands === "solid")
    return {
      limit: tabled(CHANNEL.all, "length", "iec-11801", "longest channel"),
      doubtful: false,
      source: "iec-11801",
    };
  const { budget, extraLoss, source, name } = strands;
  const alone = cordAlone.of({
    K: tabled(budget, "length", source, `loss budget with ${name} cords`),
    D: tabled(extraLoss, "factor", source, `extra loss of ${name} cords`),
  });
  return { limit: restingOn(alone, source) as Known<"length">, doubtful: true, source };
}
