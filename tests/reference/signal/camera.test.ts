import { beats, exposureOf, refreshesExposed } from "@plumbmark/calc";
import { describe } from "vitest";
import { reference } from "../check.js";

describe("a camera before a panel", () => {
  reference({
    name: "180° and 90° at 25 Hz, s",
    source: "exposure = angle ÷ 360° ÷ rate: 1/50 and 1/100 s",
    basis: "arithmetic",
    got: () => [180, 90].map((a) => exposureOf.compute({ a, r: 25 })),
    printed: [1 / 50, 1 / 100],
    within: 1e-12,
  });
  reference({
    name: "whole refreshes of 1920, 3840 and 7680 Hz in 1/50, 1/60 and 1/1000 s",
    source: "refresh × exposure, whole ones",
    basis: "arithmetic",
    got: () =>
      [1920, 3840, 7680].flatMap((f) => [1 / 50, 1 / 60, 1 / 1000].map((t) => refreshesExposed.compute({ f, t }))),
    printed: [38, 32, 1, 76, 64, 3, 153, 128, 7],
  });
  reference({
    name: "60 and 25, 50 and 25, 59.94 and 60, 3840 and 60, 3840 and 50 Hz beat",
    source: "one a whole multiple of the other, or not",
    basis: "practice",
    got: () =>
      [
        [60, 25],
        [50, 25],
        [60_000 / 1001, 60],
        [3840, 60],
        [3840, 50],
      ].map(([one, other]) => Number(beats(one as number, other as number))),
    printed: [1, 0, 1, 0, 1],
  });
});
