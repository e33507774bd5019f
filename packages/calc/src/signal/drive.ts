import { formula } from "../formula/formula.js";

/** Share of the panel's luminance the target needs. */
export const driveLevel = formula({
  id: "viewing.drive-level",
  title: "Drive level for a target luminance",
  symbol: "s",
  kind: "ratio",
  inputs: {
    t: { kind: "luminance", is: "target luminance", above: 0 },
    L: { kind: "luminance", is: "highest luminance of the panel", above: 0 },
  },
  expression: "t ÷ L",
  source: "arithmetic",
  validity: "luminance in proportion to the drive; above 1 the panel cannot reach the target",
  example: { given: { t: 400, L: 750 }, gives: 0.5333, within: 0.00005, from: "400 of 750 cd/m²" },
  compute: ({ t, L }) => t / L,
});

/** Grey steps left when the panel is dimmed within the steps of its bit depth. */
export const greySteps = formula({
  id: "viewing.grey-steps",
  title: "Grey steps left",
  symbol: "g",
  kind: "count",
  inputs: {
    s: { kind: "ratio", is: "drive level", above: 0, most: 1 },
    b: { kind: "colour-depth", is: "bits of a colour component", least: 1, most: 32 },
  },
  expression: "floor(s × 2^b)",
  source: "arithmetic",
  validity: "dimmed by scaling the picture; a panel that dims by current keeps all its steps",
  example: { given: { s: 0.5, b: 8 }, gives: 128, within: 0, from: "half of 256" },
  compute: ({ s, b }) => Math.floor(s * 2 ** b * (1 + 1e-12)),
  show: ({ s, b }, print) => `floor(${print(s.value, "ratio")} × 2^${b.value})`,
});
