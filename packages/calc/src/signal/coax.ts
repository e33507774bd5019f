import { formula } from "../formula/formula.js";

/** Loss in dB at half the clock an SDI receiver is designed for (SMPTE ST 292-1; 40 dB for ST 2081-1, ST 2082-1). */
export const SDI_LOSS = { hd: 20, uhd: 40 } as const;

/** Published lengths in metres of RG-6-class digital video coax by the 20 dB rule. */
export const RG6_LENGTHS = { "hd-sdi": 113, "3g-sdi": 78 } as const;

/** Length in metres at which a coax has lost what the receiver allows; a warning, since errors rise just before it. */
export const coaxLength = formula({
  id: "signal.coax-length",
  title: "Longest coax by loss",
  symbol: "L",
  kind: "length",
  inputs: {
    A: { kind: "loss", is: "loss the receiver allows at half the clock", above: 0 },
    a: { kind: "loss", is: "loss of 100 m of the coax at half the clock", above: 0 },
  },
  expression: "A ÷ a × 100 m",
  source: "smpte-st-292",
  validity: "the cable's loss is taken at half the clock; connectors and patches are left out",
  // 5.41 dB per 100 ft is printed to two decimals: half a unit of it is 0.1 m of the length.
  example: {
    given: { A: 20, a: 5.41 / 0.3048 },
    gives: 112.776,
    within: 0.11,
    from: "370 ft of RG-6-class coax at HD",
  },
  compute: ({ A, a }) => (A / a) * 100,
  show: ({ A, a }, print) => `${print(A.value, "loss")} ÷ ${print(a.value, "loss")} × 100 m`,
});
