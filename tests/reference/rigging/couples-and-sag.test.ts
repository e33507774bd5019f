import {
  type Beam,
  deepest,
  deflectionAt,
  hangBeam,
  loadMomentAbout,
  solveBeam,
  spanTerms,
  stretchAt,
  turnAt,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const two = (at: number): Beam => ({ length: 16, supports: [0, 8, 16], couples: [{ at, moment: 64 }] });
const all = (beam: Beam) => [...solveBeam(beam).reactions, solveBeam(beam).supportMoments[1] as number];

describe("a couple on two equal spans", () => {
  // Held at B and pinned at A, a couple M at a from A gives M ÷ 2 × (1 − 3a² ÷ L²) at B (handbook case of a propped
  // cantilever); the equal span beside it takes half of that off. The rest follows from balance.
  const handbook = "propped cantilever with a couple, M/2 × (1 − 3a²/L²), halved by an equal span";
  reference({
    name: "in the middle of the first span: −8.5, 9, −0.5, moment −4",
    source: handbook,
    basis: "arithmetic",
    got: () => all(two(4)),
    printed: [-8.5, 9, -0.5, -4],
    within: 1e-9,
  });
  reference({
    name: "a quarter into the first span: −9.625, 11.25, −1.625, moment −13",
    source: handbook,
    basis: "arithmetic",
    got: () => all(two(2)),
    printed: [-9.625, 11.25, -1.625, -13],
    within: 1e-9,
  });
  reference({
    name: "a quarter before the end of the second span: the same seen from behind, signs turned",
    source: handbook,
    basis: "arithmetic",
    got: () => all(two(14)),
    printed: [1.625, -11.25, 9.625, 13],
    within: 1e-9,
  });
  reference({
    name: "on a simple span the reactions are M ÷ L, and its load terms M ÷ L × (L² − 3a²) and M ÷ L × (3b² − L²)",
    source: "statics; handbook load terms of a couple",
    basis: "arithmetic",
    got: () => {
      const beam: Beam = { length: 8, supports: [0, 8], couples: [{ at: 2, moment: 64 }] };
      const { aboutLeft, aboutRight } = spanTerms(beam, 0, 8);
      return [...solveBeam(beam).reactions, aboutLeft, aboutRight, loadMomentAbout(beam, 5)];
    },
    printed: [-8, 8, 8 * (64 - 12), 8 * (108 - 64), 64],
    within: 1e-9,
  });
});

describe("sag of a simple span under a load off its middle", () => {
  // L = 10, load 1 at 7: b = 3; deepest at √((L² − b²) ÷ 3) = √(91 ÷ 3), where EI δ = b (L² − b²)^1.5 ÷ (9√3 L).
  const beam: Beam = { length: 10, supports: [0, 10], points: [{ at: 7, load: 1 }] };
  reference({
    name: "place and depth of the deepest point",
    source: "handbook case of a concentrated load: √((L² − b²)/3), Pb(L² − b²)^1.5/(9√3 LEI)",
    basis: "published",
    got: () => {
      const { at, value } = deepest(solveBeam(beam));
      return [at, value];
    },
    printed: [Math.sqrt(91 / 3), (3 * 91 ** 1.5) / (9 * Math.sqrt(3) * 10)],
    within: 1e-6,
    because: "closed form; the place is found by halving",
  });
  reference({
    name: "under the load Pa²b² ÷ 3L, slopes at the ends Pb(L² − b²) ÷ 6L and Pa(L² − a²) ÷ 6L",
    source: "handbook case of a concentrated load",
    basis: "published",
    got: () => {
      const solved = solveBeam(beam);
      return [-deflectionAt(solved, 7), -turnAt(stretchAt(solved, 0), 0), turnAt(stretchAt(solved, 10), 10)];
    },
    printed: [(49 * 9) / 30, (3 * 91) / 60, (7 * 51) / 60],
    within: 1e-9,
  });
  reference({
    name: "only a part is looked at: right of the deepest point the sag is greatest where the part begins",
    source: "the curve is convex between",
    basis: "arithmetic",
    got: () => deepest(solveBeam(beam), 8, 10).value,
    // At x from the far end, 2 m: Pa x' (L² − a² − x'²) ÷ 6L = 7 × 2 × (100 − 49 − 4) ÷ 60.
    printed: (7 * 2 * 47) / 60,
    within: 1e-9,
  });
});

describe("overhangs that carry nothing", () => {
  // Span 10 from 2 to 12, load 6 at 8: a = 6, b = 4. The tips rise by P a b x (l + a) ÷ 6l on the right, 3 m out, and by
  // P a b x (l + b) ÷ 6l on the left, 2 m out: 6 × 24 × 3 × 16 ÷ 60 = 115.2 and 6 × 24 × 2 × 14 ÷ 60 = 67.2.
  reference({
    name: "both tips rise in a straight line",
    source: "AISC Table 3-23, simple beam overhanging one support, load between the supports",
    basis: "memory",
    got: () => {
      const solved = solveBeam({ length: 15, supports: [2, 12], points: [{ at: 8, load: 6 }] });
      return [deflectionAt(solved, 15), deflectionAt(solved, 0), deflectionAt(solved, 1)];
    },
    printed: [115.2, 67.2, 33.6],
    within: 1e-9,
  });
});

describe("hangs", () => {
  test("a bar whose load lies exactly over its end hang stands", () => {
    const hung = hangBeam({ length: 6, supports: [1, 5], points: [{ at: 5, load: 10 }] });
    expect(hung.stable && hung.reactions.map((each) => Math.round(each * 1e9) / 1e9 + 0)).toEqual([0, 10]);
  });
  test("just beyond it it does not", () => {
    expect(hangBeam({ length: 6, supports: [1, 5], points: [{ at: 5.001, load: 10 }] }).stable).toBe(false);
    expect(hangBeam({ length: 6, supports: [1, 5], points: [{ at: 0.999, load: 10 }] }).stable).toBe(false);
  });
  test("two hangs are enough, one is not", () => {
    const beam: Beam = { length: 6, supports: [1, 5], points: [{ at: 3, load: 10 }] };
    expect(hangBeam(beam).stable).toBe(true);
    expect(hangBeam(beam, [0]).stable).toBe(false);
  });
});

describe("what is no beam is refused", () => {
  const sound: Beam = { length: 4, supports: [0, 4] };
  const refused: readonly (readonly [string, Beam])[] = [
    ["no length", { ...sound, length: 0, supports: [0, 0] }],
    ["an endless length", { ...sound, length: Number.POSITIVE_INFINITY }],
    ["a support beyond the end", { ...sound, supports: [0, 4.001] }],
    ["a support before the beginning", { ...sound, supports: [-0.001, 4] }],
    ["supports that do not rise", { ...sound, supports: [2, 2] }],
    ["a load that ends before it begins", { ...sound, uniform: [{ from: 3, to: 2, perMetre: 1 }] }],
    ["a couple without a number", { ...sound, couples: [{ at: 1, moment: Number.NaN }] }],
    ["one support", { ...sound, supports: [2] }],
  ];
  test.each(refused)("%s", (_, beam) => expect(() => solveBeam(beam)).toThrow(RangeError));
  test("a load that begins and ends at one place is none, and no slip", () =>
    expect(
      solveBeam({ ...sound, uniform: [{ from: 2, to: 2, perMetre: 5 }], points: [{ at: 2, load: 2 }] }).reactions,
    ).toEqual([1, 1]));
});
