import {
  caughtLoad,
  caughtTaut,
  fixingLever,
  fixingShare,
  fixingShear,
  fixingTension,
  GRAVITY,
  leastCoefficients,
  ratedLoad,
  slingColours,
  slingModeFactor,
  slingModeFactors,
  spanLimits,
  unknownSling,
} from "@plumbmark/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

describe("a load that is caught", () => {
  /** Peak over load for a slack of so many times the rope's own stretch under the load. */
  const peak = (times: number): number => caughtLoad.compute({ W: 1, EA: GRAVITY, L: 1, s: times });
  reference({
    name: "slack 0, 1, 4, 12, 25 and 50 times the stretch",
    source: "energy balance: 1 + √(1 + 2s/δ)",
    basis: "arithmetic",
    printed: [2, 2.732, 4, 6, 8.141, 11.05],
    within: 5e-4,
    because: "printed to three places",
    got: () => [0, 1, 4, 12, 25, 50].map(peak),
  });
  test("without slack it is twice the load, whatever the rope", () => {
    expect(caughtTaut.compute({ W: 37 })).toBe(74);
    expect(caughtLoad.compute({ W: 37, EA: 1e6, L: 2, s: 0 })).toBeCloseTo(74, 9);
  });
  test("what the load gives up on its way is what the rope has stored", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 2000, noNaN: true }),
        fc.double({ min: 1e4, max: 1e7, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (W, EA, L, s) => {
          const force = caughtLoad.compute({ W, EA, L, s }) * GRAVITY;
          const stretch = (force * L) / EA;
          const [given, stored] = [W * GRAVITY * (s + stretch), (force * stretch) / 2];
          expect(Math.abs(given - stored)).toBeLessThanOrEqual(1e-9 * given);
        },
      ),
    );
  });
  test("an inch of slack in a short steel rope is more than a design factor of 5 holds", () =>
    expect(peak(25)).toBeGreaterThan(5));
});

describe("wall fixings", () => {
  const HAND = "moments about the lowest row, and forces, by hand";
  const lever = fixingLever.compute({ d: 0.08, o: 0.03 });
  const row = (n: number): number => fixingTension.compute({ m: 60, e: lever, z: 0.45, n });
  reference({
    name: "60 kg, 70 mm off the wall, rows 450 mm apart: pull on the row, and on each of its worst two",
    source: HAND,
    basis: "arithmetic",
    printed: [91.53, 45.76],
    within: 0.01,
    because: "printed to a hundredth of a newton",
    got: () => [row(1), row(2)],
  });
  reference({
    name: "the same: shear on each of the worst two",
    source: HAND,
    basis: "arithmetic",
    printed: 294.2,
    within: 0.01,
    because: "printed to a hundredth of a newton",
    got: () => fixingShear.compute({ m: 60, n: 2 }),
  });
  reference({
    name: "0.422 + 0.149 and 0.237 + 0.042",
    source: "ACI 318-19, 17.8, as anchoring guides work it",
    basis: "published",
    printed: [0.571, 0.279],
    within: 5e-4,
    because: "printed to three places",
    got: () => [
      fixingShare.compute({ T: 0.422, Ta: 1, V: 0.149, Va: 1 }),
      fixingShare.compute({ T: 0.237, Ta: 1, V: 0.042, Va: 1 }),
    ],
  });
  test("0.6 + 0.6 is over 1, though both curves of the design methods let it", () => {
    expect(fixingShare.compute({ T: 0.6, Ta: 1, V: 0.6, Va: 1 })).toBeCloseTo(1.2, 9);
    expect(2 * 0.6 ** (5 / 3)).toBeLessThan(1);
    expect(2 * 0.6 ** 1.5).toBeLessThan(1);
  });
  test("what a sum of 1 lets, every published curve lets", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (t) => {
        const v = 1 - t;
        expect(t ** (5 / 3) + v ** (5 / 3)).toBeLessThanOrEqual(1 + 1e-12);
        expect(t ** 1.5 + v ** 1.5).toBeLessThanOrEqual(1 + 1e-12);
        expect(t + v).toBeLessThanOrEqual(1.2);
      }),
    );
  });
});

describe("modes of slings", () => {
  const share = (...[mode, material, practice]: Parameters<typeof slingModeFactor>): number =>
    slingModeFactor(mode, material, practice).share;
  reference({
    name: "wire rope choked, American",
    source: "choker hitch charts (angle of choke 120° and more)",
    basis: "published",
    printed: 0.75,
    got: () => share("choke", "wire-rope", "us"),
  });
  reference({
    name: "wire rope choked, European: an endless sling of 0.750 t chokes 1.20 t on two parts",
    source: "EN 13414-1, Table 4, 8 mm",
    basis: "published",
    printed: 1.2,
    got: () => 2 * 0.75 * share("choke", "wire-rope", "iec"),
  });
  reference({
    name: "chain choked in Europe, and the least published elsewhere",
    source: "EN 818-4 as a chain sling manual prints it (p. 21); AS 3775 as a lifting guide prints it",
    basis: "published",
    printed: [0.8, 0.75],
    got: () => [share("choke", "chain", "iec"), share("choke", "chain", "us")],
  });
  reference({
    name: "a 2 t round sling choked and in a basket, legs upright",
    source: "EN 1492-2 / LEEA",
    basis: "published",
    printed: [1.6, 4],
    within: 1e-9,
    got: () => (["choke", "basket"] as const).map((mode) => slingColours.green * share(mode, "textile", "iec")),
  });
  test("nobody gains by not saying what a sling is made of", () => {
    for (const practice of ["us", "iec"] as const)
      for (const material of notEmpty(Object.keys(slingModeFactors[practice]) as ("chain" | "textile" | "wire-rope")[]))
        for (const mode of ["choke", "basket"] as const)
          expect(unknownSling[mode].share).toBeLessThanOrEqual(share(mode, material, practice));
  });
  test("a straight sling counts as it is marked", () => expect(share("straight", undefined, "us")).toBe(1));
});

describe("a working load against the breaking strength", () => {
  const pounds = (B: number, η: number, D: number): number => ratedLoad.compute({ B, η, D });
  reference({
    name: "7,000 lb with clips at 5:1",
    source: "AC 43.13-1B Table 7-3; TM 5-3810-305-10 Table 4",
    basis: "published",
    printed: 1120,
    within: 1e-9,
    got: () => pounds(7000, 0.8, leastCoefficients["wire-rope"].us),
  });
  reference({
    name: "wire rope 5, chain 4, textile 7, metal parts 4",
    source: "2006/42/EC, Annex I, 4.1.2.5",
    basis: "published",
    printed: [5, 4, 7, 4],
    got: () => (["wire-rope", "chain", "textile", "hardware"] as const).map((kind) => leastCoefficients[kind].iec),
  });
  test("a rope of 900 kg that breaks at 300 kg is wrong at every factor", () => {
    for (const { us, iec } of notEmpty(Object.values(leastCoefficients)))
      for (const D of [us, iec, 1]) expect(900).toBeGreaterThan(pounds(300, 1, D));
  });
});

describe("a truss maker's load table", () => {
  // Governed by bending: what is let falls with the square of the span.
  const rows = [8, 10].map((span) => ({ span, uniform: 1000 / span ** 2, centre: 500 / span }));
  test("between two spans the longer one's load counts, never a straight line between them", () => {
    const moment = spanLimits(rows, 9)!.moment;
    const [straight, right] = [(1000 / 64 + 1000 / 100) / 2, 1000 / 81];
    expect(straight).toBeGreaterThan(right);
    expect((moment * 8) / 81).toBeLessThan(right);
    expect((moment * 8) / 81).toBeCloseTo(10, 9);
  });
  test("shorter than the first span: the first row's load, and no more", () =>
    expect((spanLimits(rows, 4)!.moment * 8) / 16).toBeCloseTo(1000 / 64, 9));
  test("longer than the last: for the maker to say", () => expect(spanLimits(rows, 10.01)).toBeUndefined());
  test("a row's own uniform load on its own span is let, and so is its centre load", () => {
    for (const { span, uniform, centre } of rows) {
      const { moment, shear } = spanLimits(rows, span)!;
      expect((uniform * span ** 2) / 8).toBeLessThanOrEqual(moment * (1 + 1e-12));
      expect((centre * span) / 4).toBeLessThanOrEqual(moment * (1 + 1e-12));
      expect((uniform * span) / 2).toBeLessThanOrEqual(shear);
    }
  });
  test("the lesser moment counts where sag governs one of them", () => {
    // 5wl⁴/384 = Pl³/48 gives P = 5/8 wl, whose moment is the greater.
    const { moment } = spanLimits([{ span: 10, uniform: 8, centre: 50 }], 10)!;
    expect(moment).toBe(100);
  });
});
