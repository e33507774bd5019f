import { fromMillimetres, inMillimetres } from "../face/millimetres.js";
import { formula } from "../formula/formula.js";

const pitch = { kind: "length", is: "pixel pitch", above: 0 } as const;

/** Distance beyond which pixels of this pitch run together for a sharp eye: the farthest at which each can be told. */
export const acuityDistance = formula({
  id: "viewing.acuity-distance",
  title: "Distance at which a pixel subtends one arc-minute",
  symbol: "d",
  kind: "length",
  inputs: { p: pitch },
  expression: "p ÷ tan(1′)",
  source: "acuity-20-20",
  validity: "20/20 sight, good contrast, looking straight on",
  example: { given: { p: 0.00390625 }, gives: 13.429, within: 0.0005, from: "3437.75 × 3.90625 mm = 13.429 m" },
  compute: ({ p }) => p / Math.tan(Math.PI / 180 / 60),
  show: ({ p }, print) => `${inMillimetres(p, print)} × 3437.75${fromMillimetres(p.value * 3437.75, print)}`,
});

/** Metres for each millimetre of pitch by the trade's rule of thumb (common practice, no source). */
export const METRES_PER_MM = 1;

/** Least viewing distance by the trade's rule of thumb: so many metres for every millimetre of pitch. */
export const practiceDistance = formula({
  id: "viewing.practice-distance",
  title: "Least viewing distance by practice",
  symbol: "d",
  kind: "length",
  inputs: { p: pitch, k: { kind: "factor", is: "metres for each millimetre of pitch", above: 0 } },
  expression: "p × k × 1000",
  source: "practice",
  validity: "a rule of thumb, 1 m for each millimetre",
  example: { given: { p: 0.002976, k: 1 }, gives: 2.976, within: 1e-9, from: "1 m per mm, common practice, no source" },
  compute: ({ p, k }) => p * 1000 * k,
  show: ({ p, k }, print) =>
    `${inMillimetres(p, print)} × ${print(k.value, k.kind)} × 1000${fromMillimetres(p.value * 1000 * k.value, print)}`,
});
