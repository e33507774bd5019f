import { formula } from "../formula/formula.js";

/** Power of something flat by its size. */
export const powerBySize = formula({
  id: "power.by-size",
  title: "Power by size",
  symbol: "P",
  kind: "power",
  inputs: {
    P1: { kind: "power", is: "power of a square metre", least: 0 },
    w: { kind: "length", is: "width", least: 0 },
    h: { kind: "length", is: "height", least: 0 },
  },
  expression: "P1 × w × h ÷ 1 m²",
  source: "arithmetic",
  validity: "anything whose power is spread over its face",
  example: {
    given: { P1: 1361, w: 2, h: 0.5 },
    gives: 1361,
    within: 1e-9,
    from: "sunlight above the air, 1,361 W/m² (NASA), on 1 m²",
  },
  compute: ({ P1, w, h }) => P1 * w * h,
  // In metres everywhere: the power is that of a square metre.
  show: ({ P1, w, h }, print) =>
    `${print(P1.value, "power")} × ${print(w.value, "factor")} m × ${print(h.value, "factor")} m`,
});
