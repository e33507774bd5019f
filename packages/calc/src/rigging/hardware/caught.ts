import { formula } from "../../formula/formula.js";
import { consistent } from "../consistent.js";
import { GRAVITY } from "../gravity.js";

/** A load let go into a rope that is already taut: twice its weight, whatever the rope. */
export const caughtTaut = formula({
  id: "rigging.caught-taut",
  title: "Force on a second suspension without slack when it catches the load",
  symbol: "F",
  kind: "mass",
  inputs: { W: { kind: "mass", is: "load that is caught", least: 0 } },
  expression: "2 × W",
  source: "caught-energy",
  validity: "an elastic rope that is straight and carries nothing before; no slack at all",
  example: { given: { W: 80 }, gives: 160, within: 1e-9, from: "no fall: 1 + √1 = 2 times the load (energy balance)" },
  compute: ({ W }) => 2 * W,
});

/**
 * The work of the load on its way, W × (s + x), is what the rope has stored at the end of it, k × x² ÷ 2. So k × x, the
 * force at the end, is W × (1 + √(1 + 2 × k × s ÷ W)), with k = EA ÷ L.
 */
export const caughtLoad = formula({
  id: "rigging.caught-load",
  title: "Force on a second suspension when it catches the load",
  symbol: "F",
  kind: "mass",
  inputs: {
    W: { kind: "mass", is: "load that is caught", above: 0 },
    EA: { kind: "force", is: "stiffness of the rope, the force that would stretch it to twice its length", above: 0 },
    L: { kind: "length", is: "length of the rope", above: 0 },
    s: { kind: "length", is: "slack the load falls through", least: 0 },
  },
  expression: "W × (1 + √(1 + 2 × EA ÷ L × s ÷ (W × g)))",
  source: "caught-energy",
  also: ["dguv-215-313-2.3"],
  validity: "an elastic rope, a free fall through the slack, nothing lost on the way; the safe side",
  example: {
    // δ = W ÷ k is 1 mm, the slack is 25 mm.
    given: { W: 100, EA: 100 * GRAVITY * 1000, L: 1, s: 0.025 },
    gives: 814.1428,
    within: 5e-5,
    from: "slack of 25 times the stretch: 1 + √51 = 8.141428 times the load (energy balance)",
  },
  compute: ({ W, EA, L, s }) => W * (1 + Math.sqrt(1 + (2 * EA * s) / (L * W * GRAVITY))),
  show: ({ W, EA, L, s }, print) => {
    const { g, length } = consistent(print);
    const w = print(W.value, "mass");
    const kilo = /kN/u.test(print(EA.value, "force")) ? " × 1,000" : "";
    return `${w} × (1 + √(1 + 2 × ${print(EA.value, "force")}${kilo} ÷ ${length(L)} × ${length(s)} ÷ (${w}${g})))`;
  },
});
