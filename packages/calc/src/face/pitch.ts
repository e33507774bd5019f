import { formula } from "../formula/formula.js";
import { fromMillimetres, inMillimetres } from "./millimetres.js";

/** True pitch in metres; never the rounded pitch of a product name (500 mm ÷ 160 is 3.125 mm, not "3.1"). */
export const pixelPitch = formula({
  id: "face.pitch",
  title: "Pixel pitch",
  symbol: "p",
  kind: "length",
  inputs: {
    w: { kind: "length", is: "panel width", above: 0 },
    n: { kind: "pixels", is: "pixels of a panel across", least: 1 },
  },
  expression: "w ÷ n",
  source: "geometry",
  validity: "pixels spread evenly, edge to edge",
  example: { given: { w: 0.5, n: 160 }, gives: 0.003125, within: 5e-9, from: "500 mm ÷ 160 = 3.125 mm" },
  compute: ({ w, n }) => w / n,
  show: ({ w, n }, print) =>
    `${inMillimetres(w, print)} ÷ ${print(n.value, n.kind)}${fromMillimetres(w.value / n.value, print)}`,
});

/**
 * Whether a nominal pitch as written agrees with the true one: within 0.005 mm for three or two decimals,
 * within 0.1 mm for one decimal or none. Both in metres.
 */
export function pitchAgrees(truePitch: number, nominal: number, decimals: number): boolean {
  const allowed = decimals >= 2 ? 0.005e-3 : 0.1e-3;
  return Math.abs(truePitch - nominal) <= allowed + 1e-12;
}
