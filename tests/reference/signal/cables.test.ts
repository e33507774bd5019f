import {
  CHANNEL,
  CORD_MOST,
  coaxLength,
  copperHop,
  cordAlone,
  cordBudgets,
  cordLength,
  hdmiCopper,
  lossLength,
  RG6_LENGTHS,
} from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const fine = cordBudgets["24 AWG"];
const finer = cordBudgets["26 AWG"];
const cords = (H: number, { budget, extraLoss }: { budget: number; extraLoss: number }) =>
  cordLength.compute({ K: budget, H, D: extraLoss });

describe("cords behind fixed cable", () => {
  for (const [H, C] of [
    [90, 10],
    [85, 14.17],
    [80, 18.33],
    [75, 22.5],
    [70, 26.67],
  ] as const)
    reference({
      name: `24 AWG behind ${H} m`,
      source: "TIA-568-B.1: (102 − H) ÷ 1.2",
      basis: "arithmetic",
      got: () => cords(H, fine),
      printed: C,
      within: 0.005,
      because: "two decimals",
    });
  for (const [C, H] of [
    [12, 87],
    [20, 75],
    [30, 60],
  ] as const)
    reference({
      name: `26 AWG: ${C} m of cords leave ${H} m`,
      source: "rule of thumb on ISO/IEC 11801-2…-5: each metre of cord costs 1.5 m",
      basis: "published",
      got: () => cords(H, finer),
      printed: C,
      within: 0.01,
    });
  for (const pair of [fine, finer])
    reference({
      name: `budget of ${pair.name} at 90 m and 10 m`,
      source: "ISO/IEC 11801: 90 m and 10 m; 20 % or 50 % more loss",
      basis: "arithmetic",
      got: () => lossLength.compute({ H: CHANNEL.fixed, C: CHANNEL.cords, D: pair.extraLoss }),
      printed: pair.budget,
    });
  reference({
    name: "all cord, 24 and 26 AWG",
    source: "102 ÷ 1.2 and 105 ÷ 1.5",
    basis: "arithmetic",
    got: () => [copperHop(fine).limit.value, copperHop(finer).limit.value],
    printed: [85, 70],
  });
});

describe("traps of cable lengths", () => {
  test("fixed cable and cords are not swapped: more fixed cable leaves less cord, one for 1 ÷ (1 + D)", () => {
    expect(cords(80, fine) - cords(81, fine)).toBeCloseTo(1 / 1.2, 9);
  });
  test("the budget of one pair with the loss of the other would allow 12.5 m where 10 m is the limit", () => {
    expect(cordLength.compute({ K: finer.budget, H: 90, D: fine.extraLoss })).toBeCloseTo(12.5, 9);
    for (const pair of [fine, finer]) expect(cords(90, pair)).toBeLessThanOrEqual(CHANNEL.cords + 1e-9);
  });
  reference({
    name: "all cord where cords may lose half as much again",
    source: "ISO/IEC 11801:2002 (up to 50 % more); rule of thumb H + 1.5 C ≤ 105 m with no fixed cable",
    basis: "arithmetic",
    got: () => cordAlone.compute({ K: 105, D: 0.5 }),
    printed: 70,
  });
  test("an all-cord run lies outside what the standard tabulates and only warns", () => {
    expect(copperHop(fine).doubtful && copperHop(finer).doubtful).toBe(true);
    expect(copperHop("solid").doubtful).toBe(false);
  });
});

reference({
  name: "longest channel",
  source: "ISO/IEC 11801, ANSI/TIA-568: 100 m (328 ft)",
  basis: "published",
  got: () => copperHop("solid").limit.value / 0.3048,
  printed: 328,
  within: 0.5,
  because: "printed to a whole foot",
});

describe("coax", () => {
  reference({
    name: "HD on RG-6-class coax",
    source: "S. Lampen, 12G-SDI (I): 370 ft, 113 m",
    basis: "published",
    got: () => RG6_LENGTHS["hd-sdi"],
    printed: 370 * 0.3048,
    within: 0.5,
    because: "printed to a whole metre",
  });
  reference({
    name: "double rate, length ÷ √2",
    source: "S. Lampen, 12G-SDI (I): 113 m and 78 m; loss grows with √f",
    basis: "published",
    got: () => RG6_LENGTHS["3g-sdi"],
    printed: 113 / Math.SQRT2,
    within: 0.05 * 79.9,
    because: "the square-root law holds to about 5 %",
  });
  reference({
    name: "20 dB at 5.41 dB per 100 ft",
    source: "ANSI/SMPTE 292M-1996; S. Lampen: 370 ft",
    basis: "published",
    got: () => coaxLength.compute({ A: 20, a: 5.41 / 0.3048 }) / 0.3048,
    printed: 370,
    within: 0.5,
    because: "printed to a whole foot",
  });
});

describe("lengths that no formula gives", () => {
  reference({
    name: "work-area cord in feet",
    source: "TIA-568-B 72 ft, ISO/IEC 11801:2002 66 ft",
    basis: "published",
    got: () => [CORD_MOST.tia / 0.3048, CORD_MOST.iso / 0.3048],
    printed: [72, 66],
    within: 0.5,
    because: "printed to a whole foot",
  });
  reference({
    name: "passive HDMI at 74.25, 148.5 and 594 MHz",
    source: "common practice",
    basis: "practice",
    got: () => [74.25e6, 148.5e6, 594e6].map((clock) => hdmiCopper(clock)?.value ?? 0),
    printed: [15, 10, 5],
  });
  test("above 600 MHz nothing is known of passive copper", () => expect(hdmiCopper(742.5e6)).toBeUndefined());
});
