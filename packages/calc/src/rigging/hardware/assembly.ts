import { formula } from "../../formula/formula.js";
import type { SourceId } from "../../sources/index.js";

export const ratedLoad = formula({
  id: "rigging.rope-working-load",
  title: "Working load of a terminated rope",
  symbol: "WLL",
  kind: "mass",
  inputs: {
    B: { kind: "mass", is: "breaking strength", above: 0 },
    η: { kind: "factor", is: "efficiency of the termination", above: 0, most: 1 },
    D: { kind: "factor", is: "design factor", least: 1 },
  },
  expression: "B × η ÷ D",
  source: "statics",
  validity: "breaking strength of the rope as certified by its maker",
  example: {
    given: { B: 7000 * 0.45359237, η: 0.8, D: 5 },
    gives: 1120 * 0.45359237,
    within: 1e-9,
    from: "1/4 in cable, AC 43.13-1B Table 7-3, clips 0.80, 5:1: 1,120 lb (arithmetic)",
  },
  compute: ({ B, η, D }) => (B * η) / D,
});

export const designFactor = formula({
  id: "rigging.design-factor",
  title: "Design factor",
  symbol: "D",
  kind: "factor",
  inputs: {
    B: { kind: "mass", is: "breaking strength", above: 0 },
    η: { kind: "factor", is: "efficiency of the termination", above: 0, most: 1 },
    W: { kind: "mass", is: "load", above: 0 },
  },
  expression: "B × η ÷ W",
  source: "statics",
  validity: "static load",
  example: {
    given: { B: 4200, η: 0.95, W: 500 },
    gives: 7.98,
    within: 1e-9,
    from: "3/16 in cable 4,200 lb, sleeve 0.95, 500 lb (arithmetic)",
  },
  compute: ({ B, η, W }) => (B * η) / W,
});

/** Published choices of design factor; `wllShare` is the share of the maker's WLL that may be used. */
export const designFactorOptions: Readonly<
  Record<
    string,
    { readonly factor?: number; readonly wllShare: number; readonly source: SourceId; readonly says: string }
  >
> = {
  static: { factor: 5, wllShare: 1, source: "wac-296-24-29401", says: "static, nobody under it" },
  "half-wll": { wllShare: 0.5, source: "dguv-215-313-2.1", says: "static over people: half the maker's WLL" },
  "house-8": { factor: 8, wllShare: 1, source: "house", says: "house rule" },
  "house-10": { factor: 10, wllShare: 1, source: "house", says: "house rule" },
};
