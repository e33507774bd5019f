import { deflectionValue, given, type Known, momentValue, solveBeam } from "@plumbmark/calc";
import { describe } from "vitest";
import { reference } from "../check.js";

// 10 kg/m over 2 m on a 48.3 × 4.0 mm tube; g = 9.80665 m/s², E 210,000 MPa, I 13.8 cm⁴.
const solved = solveBeam({ length: 2, supports: [0, 2], uniform: [{ from: 0, to: 2, perMetre: 10 }] });
const [E, I]: readonly [Known, Known] = [given(210_000, "stress"), given(13.8e-8, "second-moment")];

describe("bending of a bar as values", () => {
  reference({
    name: "wl²/8 in newton metres",
    source: "AISC Steel Construction Manual, Table 3-23 case 1",
    basis: "published",
    printed: [(10 * 9.80665 * 2 ** 2) / 8],
    within: 1e-9,
    got: () => [momentValue(solved, []).value],
  });
  reference({
    name: "5wl⁴/384EI in metres",
    source: "AISC Steel Construction Manual, Table 3-23 case 1",
    basis: "published",
    printed: [(5 * 10 * 9.80665 * 2 ** 4) / (384 * 210_000e6 * 13.8e-8)],
    within: 1e-12,
    got: () => [deflectionValue(solved, [0, 2], E, I, []).value],
  });
});
