import { formula } from "../../formula/formula.js";
import { consistent } from "../consistent.js";
import { GRAVITY } from "../gravity.js";

/** How far the weight stands off the wall. */
export const fixingLever = formula({
  id: "rigging.fixing-lever",
  title: "Distance of the weight from the wall",
  symbol: "e",
  kind: "length",
  inputs: {
    d: { kind: "length", is: "depth of the panels", above: 0 },
    o: { kind: "length", is: "stand-off of their backs from the wall", least: 0 },
  },
  expression: "d ÷ 2 + o",
  source: "statics",
  validity: "the weight in the middle of the panel's depth",
  example: { given: { d: 0.08, o: 0.03 }, gives: 0.07, within: 1e-12, from: "by hand: half of 80 mm and 30 mm" },
  compute: ({ d, o }) => d / 2 + o,
});

/** Pull on the worst fixing of the top row: the weight turns the face about the lowest row or edge that bears. */
export const fixingTension = formula({
  id: "rigging.fixing-tension",
  title: "Pull on a fixing of the top row",
  symbol: "T",
  kind: "force",
  inputs: {
    m: { kind: "mass", is: "mass of the face and its frame", least: 0 },
    e: { kind: "length", is: "distance of the weight from the wall", least: 0 },
    z: { kind: "length", is: "lever arm from the lowest row, or the edge that bears, to the top row", above: 0 },
    n: { kind: "count", is: "fixings of the top row that take it, two at most", least: 1, most: 2 },
  },
  expression: "m × g × e ÷ (z × n)",
  source: "statics",
  validity: "a stiff rail may leave the row to its worst two fixings; g = 9.80665 m/s²",
  example: {
    given: { m: 60, e: 0.07, z: 0.45, n: 2 },
    gives: 45.76,
    within: 0.01,
    from: "60 kg, 70 mm off the wall, rows 450 mm apart: 91.53 N on the row, 45.76 N on each of its worst two (moments)",
  },
  compute: ({ m, e, z, n }) => (m * GRAVITY * e) / (z * n),
  show: ({ m, e, z, n }, print) => {
    const { g, length } = consistent(print);
    return `${print(m.value, "mass")}${g} × ${length(e)} ÷ (${length(z)} × ${n.value})`;
  },
});

/** Shear on the worst fixing: a stiff rail may leave all of it to two. */
export const fixingShear = formula({
  id: "rigging.fixing-shear",
  title: "Shear on a fixing",
  symbol: "V",
  kind: "force",
  inputs: {
    m: { kind: "mass", is: "mass of the face and its frame", least: 0 },
    n: { kind: "count", is: "fixings that take it, two at most", least: 1, most: 2 },
  },
  expression: "m × g ÷ n",
  source: "statics",
  validity: "a stiff rail may leave the weight to its worst two fixings; g = 9.80665 m/s²",
  example: {
    given: { m: 60, n: 2 },
    gives: 294.2,
    within: 0.01,
    from: "60 kg on the worst two fixings: 294.20 N each (forces)",
  },
  compute: ({ m, n }) => (m * GRAVITY) / n,
  show: ({ m, n }, print) => `${print(m.value, "mass")}${consistent(print).g} ÷ ${n.value}`,
});

/**
 * Pull and shear together, added as they are. The sum of 1 lies inside the curves of the design methods, which let more
 * when a method is followed: 1.2 (ACI 318-19, 17.8), powers of 5/3 or 1.5.
 */
export const fixingShare = formula({
  id: "rigging.fixing-share",
  title: "Pull and shear of a fixing against what it may carry",
  symbol: "u",
  kind: "ratio",
  inputs: {
    T: { kind: "force", is: "pull", least: 0 },
    Ta: { kind: "force", is: "allowable pull of one fixing in this ground", above: 0 },
    V: { kind: "force", is: "shear", least: 0 },
    Va: { kind: "force", is: "allowable shear of one fixing in this ground", above: 0 },
  },
  expression: "T ÷ Ta + V ÷ Va",
  source: "aci-318-17.8",
  validity:
    "allowables stated for the ground and, with a stand-off, with its lever arm; 1 is the most, inside every published curve",
  example: {
    given: { T: 0.422, Ta: 1, V: 0.149, Va: 1 },
    gives: 0.571,
    within: 5e-4,
    from: "ACI 318-19 17.8 worked in an anchoring guide: 0.422 + 0.149 = 0.571",
  },
  compute: ({ T, Ta, V, Va }) => T / Ta + V / Va,
});
