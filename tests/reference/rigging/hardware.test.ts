import {
  bridlePull,
  bridleTension,
  bySize,
  carbonCable,
  clipChart,
  clipsNeeded,
  designFactor,
  legAngle,
  ratedLoad,
  shackles,
  slingLegLoad,
  stainlessCable,
  terminations,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

const LB = 0.45359237;
const AC = "FAA AC 43.13-1B Table 7-3, p. 7-28";

describe("tables", () => {
  const total = (rows: readonly { pounds: number }[]): number => rows.reduce((sum, each) => sum + each.pounds, 0);
  reference({
    name: "carbon cable, sum of the printed column",
    source: AC,
    basis: "arithmetic",
    printed: 1000 + 2000 + 2800 + 4200 + 5600 + 7000 + 8000 + 9800 + 12500 + 14400,
    got: () => total(carbonCable),
  });
  reference({
    name: "stainless cable, sum of the printed column",
    source: AC,
    basis: "arithmetic",
    printed: 920 + 1760 + 2400 + 3700 + 5000 + 6400 + 7800 + 9000 + 12000,
    got: () => total(stainlessCable),
  });
  reference({
    name: "shackles, sum in short tons",
    source: "maker tables; RR-C-271D",
    basis: "arithmetic",
    printed: 1 / 3 + 0.5 + 0.75 + 1 + 1.5 + 2 + 3.25 + 4.75 + 6.5 + 8.5,
    within: 1e-9,
    got: () => total(shackles) / 2000,
  });
  for (const [size, pounds] of [
    ["1/2", 20000],
    ["5/8", 32500],
    ["3/4", 47500],
  ] as const)
    reference({
      name: `${size} in shackle is ultimate ÷ 5`,
      source: "Seattle City Light material standard 6966.15, RR-C-271D",
      basis: "published",
      printed: pounds / 5,
      within: 1e-9,
      got: () => bySize(shackles, size)! / LB,
    });
  test("strength rises with size, shares stay between nothing and whole", () => {
    for (const table of [carbonCable, stainlessCable, shackles])
      notEmpty(table).forEach((row, i) => {
        if (i > 0) expect(row.pounds).toBeGreaterThan(table[i - 1]!.pounds);
      });
    for (const { share } of notEmpty(Object.values(terminations))) expect(share > 0 && share <= 1).toBe(true);
    notEmpty(clipChart).forEach((row, i) => {
      if (i > 0) expect(row.turnBack).toBeGreaterThanOrEqual(clipChart[i - 1]!.turnBack);
    });
  });
  test("stainless is never stronger than carbon; a size not listed is unknown", () => {
    for (const { size, pounds } of notEmpty(stainlessCable))
      expect(bySize(carbonCable, size)! / LB).toBeGreaterThan(pounds);
    expect(bySize(stainlessCable, "11/32")).toBeUndefined();
  });
  reference({
    name: "turn-backs of 5/16 and 3/8 in, torque 30 and 45",
    source: "clip makers' charts",
    basis: "published",
    printed: [5.25, 30, 6.5, 45],
    got: () => clipChart.filter((r) => r.size === "5/16" || r.size === "3/8").flatMap((r) => [r.turnBack, r.torque]),
  });
  reference({
    name: "1,100 lb on a 1/4 in shackle is too much, on 5/16 it is not",
    source: "maker tables; RR-C-271D",
    basis: "published",
    printed: [1000, 1500],
    within: 1e-9,
    got: () => ["1/4", "5/16"].map((size) => bySize(shackles, size)! / LB),
  });
});

describe("working loads of rope", () => {
  const rows: readonly [string, number, number, readonly number[]][] = [
    ["clips, 5:1", terminations.clips.share, 5, [320, 672, 1120, 1568, 2304]],
    ["sleeve 0.95, 5:1", terminations["oval-sleeve"].share, 5, [380, 798, 1330, 1862, 2736]],
    ["whole, 10:1", terminations["poured-socket"].share, 10, [200, 420, 700, 980, 1440]],
  ];
  for (const [name, η, D, printed] of rows)
    reference({
      name,
      source: `${AC}; TM 5-3810-305-10 Table 4`,
      basis: "arithmetic",
      printed,
      within: 1e-6,
      got: () =>
        ["1/8", "3/16", "1/4", "5/16", "3/8"].map(
          (size) => ratedLoad.compute({ B: bySize(carbonCable, size)!, η, D }) / LB,
        ),
    });
  const factor = (pounds: number): number =>
    designFactor.compute({ B: bySize(carbonCable, "3/16")!, η: 0.95, W: pounds * LB });
  reference({
    name: "3/16 cable, 350 lb",
    source: AC,
    basis: "arithmetic",
    printed: 11.4,
    within: 1e-9,
    got: () => factor(350),
  });
  reference({
    name: "3/16 cable, 500 lb misses 8 by 0.02",
    source: AC,
    basis: "arithmetic",
    printed: [7.98, 0],
    within: 1e-9,
    got: () => [factor(500), factor(500) >= 8 ? 1 : 0],
  });
});

describe("clips", () => {
  reference({
    name: "unknown forged clips on 1/4 in",
    source: "29 CFR 1918 App. II Table 1",
    basis: "published",
    printed: 3,
    got: () => clipsNeeded("1/4", { makersSheet: false, forged: true })!.count,
  });
  reference({
    name: "unknown other clips",
    source: "29 CFR 1918 App. II Table 1",
    basis: "published",
    printed: 4,
    got: () => clipsNeeded("1/4", { makersSheet: false, forged: false })!.count,
  });
  reference({
    name: "maker's sheet on record",
    source: "clip makers' charts",
    basis: "published",
    printed: 2,
    got: () => clipsNeeded("1/4", { makersSheet: true, forged: true })!.count,
  });
  reference({
    name: "1/2 in by the chart",
    source: "clip makers' charts; WorkSafeNB",
    basis: "published",
    printed: 3,
    got: () => clipsNeeded("1/2", { makersSheet: true, forged: true })!.count,
  });
});

describe("angles and bridles", () => {
  const chart: readonly [number, number][] = [
    [90, 1],
    [85, 1.004],
    [80, 1.015],
    [75, 1.035],
    [70, 1.064],
    [65, 1.104],
    [60, 1.155],
    [55, 1.221],
    [50, 1.305],
    [45, 1414 / 1000],
    [40, 1.555],
    [35, 1.742],
    [30, 2],
  ];
  for (const [α, printed] of chart)
    reference({
      name: `factor at ${α}° from horizontal`,
      source: "ashleysling.com chart",
      basis: "published",
      printed,
      within: 0.002,
      because: "the chart rounds some rows down",
      got: () => slingLegLoad.compute({ W: 1, n: 1, α }),
    });
  reference({
    name: "2,000 lb on two legs at 60° is not 2,000 a leg",
    source: "statics; a web example divides by the cosine",
    basis: "arithmetic",
    printed: 1154.7,
    within: 0.05,
    got: () => slingLegLoad.compute({ W: 2000, n: 2, α: 60 }),
  });
  const angle = (V: number, L: number): number => legAngle.compute({ V, H: Math.sqrt(L * L - V * V) });
  reference({
    name: "sling 120 in, 96 in high, 1,200 lb",
    source: "ashleysling.com",
    basis: "published",
    printed: 1500,
    within: 1e-6,
    got: () => slingLegLoad.compute({ W: 1200, n: 1, α: angle(96, 120) }),
  });
  reference({
    name: "sling 10 ft, height 5 ft; 16.25 in for 10 in",
    source: "cicb.com",
    basis: "published",
    printed: [2, 1.625],
    within: 1e-6,
    got: () => [
      slingLegLoad.compute({ W: 1, n: 1, α: angle(5, 10) }),
      slingLegLoad.compute({ W: 1, n: 1, α: angle(10, 16.25) }),
    ],
  });
  reference({
    name: "leg of rise 10, run 4, 400 lb",
    source: "D. Hall, lesson 6",
    basis: "published",
    printed: 430.8,
    within: 0.1,
    got: () => slingLegLoad.compute({ W: 400, n: 1, α: legAngle.compute({ V: 10, H: 4 }) }),
  });
  reference({
    name: "angles from vertical",
    source: "D. Hall, lesson 3",
    basis: "published",
    printed: [21.8, 26.6],
    within: 0.05,
    got: () => [90 - legAngle.compute({ V: 10, H: 4 }), 90 - legAngle.compute({ V: 6, H: 3 })],
  });
  const legs = { W: 500, V1: 4, H1: 3, V2: 3, H2: 6 };
  const other = { W: 500, V1: 3, H1: 6, V2: 4, H2: 3 };
  reference({
    name: "500 lb, unequal legs",
    source: "D. Hall, lesson 4 (inputs published)",
    basis: "arithmetic",
    printed: [454.5, 304.5, 272.7],
    within: 0.5,
    because: "the printed leg of 6.7 ft is rounded",
    got: () => [bridleTension.compute(legs), bridleTension.compute(other), bridlePull.compute(legs)],
  });
  test("the verticals of both legs carry the load", () => {
    const up = (l: typeof legs): number => (bridleTension.compute(l) * l.V1) / Math.hypot(l.V1, l.H1);
    expect(Math.abs(up(legs) + up(other) - 500)).toBeLessThan(1e-6);
  });
});
