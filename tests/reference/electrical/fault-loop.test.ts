import { faultLoopMost, given, type Known, RING, socketAllows } from "@plumbmark/calc";
import { describe } from "vitest";
import { reference } from "../check.js";

describe("greatest earth-fault loop impedance for 0.4 s", () => {
  for (const [rating, ...printed] of [
    [6, 7.28, 3.64, 1.82],
    [10, 4.37, 2.19, 1.09],
    [16, 2.73, 1.37, 0.68],
    [20, 2.19, 1.09, 0.55],
    [32, 1.37, 0.68, 0.34],
  ] as const)
    reference({
      name: `${rating} A, curves B, C and D at 230 V, Ω`,
      source: "BS 7671 Table 41.3 (sparkyhub.co.uk, Max Zs tables)",
      basis: "published",
      got: () =>
        (["B", "C", "D"] as const).map(
          (curve) => (faultLoopMost(given(230, "voltage"), given(rating, "current"), curve) as Known).value,
        ),
      printed,
      within: 0.005 + 1e-9,
      because: "half a unit of the second digit after the point",
    });
});

describe("sockets of BS 1363", () => {
  reference({
    name: "a ring: breaker, conductor, current-carrying capacity of the cable",
    source: "BS 7671 433.1.204 (diynot.com wiki, 433.1.5)",
    basis: "published",
    got: () => [RING.breaker, RING.conductor, RING.capacity],
    printed: [32, 2.5, 20],
  });
  reference({
    name: "a radial circuit in 4 mm²",
    source: "BS 7671:2008 Appendix 15, figure of radial final circuits (20 A and 30 or 32 A)",
    basis: "published",
    got: () => socketAllows("radial"),
    printed: 32,
  });
});
