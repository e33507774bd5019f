import {
  annexGDrop,
  annexGLimit,
  circularMils,
  dropByK,
  dropByMillivolts,
  dropShare,
  equalTapsDrop,
  farEndDrop,
  given,
  type Known,
  printer,
  runDrops,
  segmentCurrents,
  segmentDrop,
  sharedLineDrop,
  type Value,
} from "@plumbmark/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const FOOT = 0.3048;
/** Ω/kft and ft, as the examples are printed. */
const drop = (amperes: number, feet: number, perKilofoot: number) =>
  segmentDrop.compute({ I: amperes, r: perKilofoot / 1000 / FOOT, L: feet * FOOT });
const share = (dv: number, V: number) => dropShare.compute({ dv, V }) * 100;
const byK = (amperes: number, feet: number, awg: string, threePhase = false) =>
  dropByK(amperes, feet, circularMils(awg) ?? Number.NaN, threePhase);
const known = (value: Value) => (value as Known).value;

describe("voltage drop, single segment", () => {
  const lpage = "electrician2.com, weltrain05 lpage135";
  reference({
    name: "4-E1: 24 V, 4 A, 100 ft, 16 AWG",
    source: lpage,
    basis: "published",
    got: () => drop(4, 100, 4.99),
    printed: 4,
    within: 0.05,
  });
  reference({
    name: "4-E1: the same in per cent",
    source: lpage,
    basis: "published",
    got: () => share(drop(4, 100, 4.99), 24),
    printed: 16.7,
    within: 0.1,
    because: "they divide the rounded 4.0 V",
  });
  const license = "tradelicenseprep.com";
  reference({
    name: "4-E2: 20 A, 100 ft, 12 AWG by K",
    source: license,
    basis: "published",
    got: () => byK(20, 100, "12"),
    printed: 7.9,
    within: 0.05,
  });
  reference({
    name: "4-E2: fails 3 % of 120 V",
    source: license,
    basis: "published",
    got: () => share(byK(20, 100, "12"), 120),
    printed: 6.6,
    within: 0.05,
  });
  reference({
    name: "4-E3: the same with 8 AWG",
    source: license,
    basis: "published",
    got: () => byK(20, 100, "8"),
    printed: 3.1,
    within: 0.05,
  });
  reference({
    name: "4-E3: holds 3 % of 120 V",
    source: license,
    basis: "published",
    got: () => share(byK(20, 100, "8"), 120) <= 3,
    printed: true,
  });
  reference({
    name: "4-E4: 44 A, 160 ft, 6 AWG",
    source: "sparkytoolbox.net",
    basis: "published",
    got: () => [drop(44, 160, 0.491), share(drop(44, 160, 0.491), 240)],
    printed: [6.9, 2.9],
    within: 0.05,
  });
  const course = "course text Feeders, Feeder Taps & Voltage Drop (NEC 2023)";
  reference({
    name: "4-E5: three phase, 100 A, 200 ft, 1 AWG; per cent of 480 and 208 V",
    source: course,
    basis: "published",
    got: () => {
      const v = byK(100, 200, "1", true);
      return [v, share(v, 480), share(v, 208)];
    },
    printed: [5.3, 1.1, 2.6],
    within: 0.05,
  });
  const data = "K method, NEC Chapter 9 Table 8; public test data, author not recorded";
  reference({
    name: "4-E6: 100 A, 100 ft, 1/0",
    source: data,
    basis: "published",
    got: () => byK(100, 100, "1/0"),
    printed: 2.443,
    within: 0.001,
  });
  reference({
    name: "4-E7: the same, three phase",
    source: data,
    basis: "published",
    got: () => byK(100, 100, "1/0", true),
    printed: 2.116,
    within: 0.001,
  });
  reference({
    name: "4-E8: 100 A, 150 ft, 3/0",
    source: data,
    basis: "published",
    got: () => byK(100, 150, "3/0"),
    printed: 2.306,
    within: 0.001,
  });
  reference({
    name: "4-E9: the same, three phase",
    source: data,
    basis: "published",
    got: () => byK(100, 150, "3/0", true),
    printed: 1.997,
    within: 0.001,
  });
  reference({
    name: "4-E10: 16 A, 150 ft, 12 AWG solid",
    source: data,
    basis: "published",
    got: () => drop(16, 150, 1.93),
    printed: 9.264,
  });
  reference({
    name: "4-E10: stranded is another answer",
    source: "NEC Chapter 9 Table 8",
    basis: "arithmetic",
    got: () => drop(16, 150, 1.98),
    printed: 9.504,
  });
  reference({
    name: "4-E11: 24 A, 500 ft, 2/0",
    source: "wireresult.com",
    basis: "published",
    got: () => drop(24, 500, 0.0967),
    printed: 2.32,
    within: 0.005,
  });
  reference({
    name: "4-D4: 1.04 A, 200 ft, loop 0.001308 Ω/ft",
    source: "TxDOT Highway Illumination Manual (inputs)",
    basis: "arithmetic",
    got: () => drop(1.04, 200, 0.654),
    printed: 0.272,
    within: 0.001,
  });
  reference({
    name: "4-D5: 8 % of 480 and 240 V",
    source: "TxDOT Highway Illumination Manual",
    basis: "published",
    got: () => [share(38.4, 480), share(19.2, 240)],
    printed: [8, 8],
  });
});

const amperes = (value: number) => given(value, "current");
const segment = (perMetre: number, metres: number, tap: number) => ({
  resistance: given(perMetre, "resistance-per-length"),
  length: given(metres, "length"),
  tap: amperes(tap),
});

describe("voltage drop, distributed loads", () => {
  const mehta = "V. K. Mehta, Principles of Power System, Ex. 13.1, p. 313";
  const branch = runDrops([segment(1e-5, 500, 100), segment(1e-5, 500, 150), segment(1e-5, 600, 250)]);
  // The book's tree: C carries A–C, then D and E one way (B hangs on E).
  const tree = runDrops([
    segment(1e-5, 500, 100),
    segment(1e-5, 500, 150),
    segment(1e-5, 600, 200),
    segment(1e-5, 400, 50),
  ]);
  reference({
    name: "4-D1: currents 500, 400, 250, 50 A",
    source: mehta,
    basis: "published",
    got: () => segmentCurrents([100, 150, 200, 50].map(amperes)).map(known),
    printed: [500, 400, 250, 50],
  });
  reference({
    name: "4-D1: voltages at C, D, E, B",
    source: mehta,
    basis: "published",
    got: () => tree.map((each) => 300 - known(each)),
    printed: [295, 291, 288, 287.6],
    within: 0.05,
  });
  reference({
    name: "4-D1: B taken at E leaves E the same",
    source: mehta,
    basis: "published",
    got: () => 300 - known(branch[2] as Value),
    printed: 288,
    within: 0.05,
  });
  reference({
    name: "4-D1: segment currents of 70, 120, 220 A, as some digital copies carry, do not give the printed voltages",
    source: mehta,
    basis: "published",
    got: () =>
      300 - known(runDrops([segment(1e-5, 500, 100), segment(1e-5, 500, 50), segment(1e-5, 600, 70)])[2] as Value) <
      288.05,
    printed: false,
  });
  reference({
    name: "4-D2: 500 V, 0.02 Ω/km, 100 A at B, 200 A at C",
    source: "edurev.in, Distribution Systems question",
    basis: "published",
    got: () => runDrops([segment(2e-5, 2000, 100), segment(2e-5, 2000, 200)]).map((each) => 500 - known(each)),
    printed: [476, 460],
    within: 1e-9,
  });
  const lengths = [40, 60, 50, 100].map((metres, index) => ({ metres, tap: [30, 40, 100, 50][index] as number }));
  reference({
    name: "4-D3: 1.164 cm² loses the whole 10 V",
    source: "Mehta Ex. 13.2, p. 314",
    basis: "published",
    got: () =>
      known(runDrops(lengths.map(({ metres, tap }) => segment(1.78e-8 / 1.164e-4, metres, tap))).at(-1) as Value),
    printed: 10,
    within: 10 * (0.0005 / 1.164),
    because: "half a unit in the last digit of 1.164 cm²",
  });
  for (const [taps, printed] of [
    [5, 15],
    [10, 55],
  ] as const)
    reference({
      name: `4-D6: ${taps} equal loads`,
      source: "r s I N(N + 1) ÷ 2",
      basis: "arithmetic",
      got: () => equalTapsDrop(1, 1, 1, taps),
      printed,
    });
  test("4-D6: the segment sum meets the closed form", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        (taps, current, spacing) => {
          const r = 0.006;
          const sum = known(runDrops(Array.from({ length: taps }, () => segment(r, spacing, current))).at(-1) as Value);
          expect(Math.abs(sum / equalTapsDrop(2 * r, spacing, current, taps) - 1)).toBeLessThan(1e-9);
        },
      ),
    );
  });
  test("a longer feed never lowers the drop, nor does one more panel", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        number(0, 100),
        number(0, 50),
        fc.array(number(0, 3), { minLength: 1, maxLength: 12 }),
        number(0, 3),
        (feed, more, taps, extra) => {
          const run = (length: number, all: readonly number[]) =>
            known(runDrops(all.map((tap, index) => segment(0.006, index === 0 ? length : 1, tap))).at(-1) as Value);
          expect(run(feed + more, taps)).toBeGreaterThanOrEqual(run(feed, taps));
          expect(run(feed, [...taps, extra]) + 1e-9).toBeGreaterThanOrEqual(run(feed, taps));
        },
      ),
    );
  });
  test("one missing length leaves the far end missing and says which", () => {
    const gap = { path: "power.runs.P1.feed.length", what: "feed length" };
    const [first] = runDrops([{ ...segment(0.006, 1, 2), length: { known: false, kind: "length", gaps: [gap] } }]);
    expect(first).toMatchObject({ known: false, gaps: [gap] });
    expect(farEndDrop.of({ dv: [first as Value] })).toMatchObject({ known: false });
  });
});

describe("IEC and BS", () => {
  reference({
    name: "9-E1: 18 mV/A/m, 16 A, 18 m",
    source: "izapp.app C&G 2391 lesson (BS 7671 App. 4)",
    basis: "published",
    got: () => dropByMillivolts(18, 16, 18),
    printed: 5.18,
    within: 0.005,
  });
  const uk = "voltdropcalc.com UK page";
  const u = (b: number) => annexGDrop.compute({ b, L: 30, A: 6, I: 32, pf: 1, x: 0 });
  reference({
    name: "9-E2: 6 mm², 32 A, 30 m, and its share of 230 V",
    source: uk,
    basis: "published",
    got: () => [u(2), share(u(2), 230)],
    printed: [7.2, 3.13],
    within: 0.005,
  });
  reference({
    name: "three phase of Annex G is per phase: half of it, against 230 V",
    source: "IEC 60364-5-52:2009 Annex G",
    basis: "published",
    got: () => u(1),
    printed: 3.6,
    within: 1e-9,
  });
  const table = "IEC 60364-5-52:2009 Table G.52.1";
  reference({
    name: "limits, lighting and other, public and private",
    source: table,
    basis: "published",
    got: () => [
      annexGLimit("public", "lighting"),
      annexGLimit("public", "other"),
      annexGLimit("private", "lighting"),
      annexGLimit("private", "other"),
    ],
    printed: [0.03, 0.05, 0.06, 0.08],
  });
  reference({
    name: "other, 100, 150, 200 and 300 m",
    source: table,
    basis: "arithmetic",
    got: () => [100, 150, 200, 300].map((metres) => annexGLimit("public", "other", metres) * 100),
    printed: [5, 5.25, 5.5, 5.5],
  });
  reference({
    name: "3 and 5 % of 230 V",
    source: "BS 7671:2018+A2 App. 4 sec. 6.4",
    basis: "published",
    got: () => [230 * annexGLimit("public", "lighting"), 230 * annexGLimit("public", "other")],
    printed: [6.9, 11.5],
  });
});

describe("the shown working can be redone on a pocket calculator", () => {
  for (const [system, printed] of [
    ["us", "2 × 16 A × 1.98 Ω/kft × 150 ft ÷ 1,000"],
    ["metric", "2 × 16 A × 6.496 Ω/km × 45.72 m ÷ 1,000"],
  ] as const)
    test(`in ${system} units`, () => {
      const value = segmentDrop.of({
        I: amperes(16),
        r: given(1.98 / 1000 / FOOT, "resistance-per-length"),
        L: given(150 * FOOT, "length"),
      });
      const shown = value.known && value.origin.from === "step" ? value.origin.step.show(printer(system)) : "";
      expect(shown).toBe(printed);
      const [two, I, r, L, thousand] = [...shown.matchAll(/[\d.,]+/gu)].map(([number]) =>
        Number(number.replaceAll(",", "")),
      );
      expect(((two as number) * (I as number) * (r as number) * (L as number)) / (thousand as number)).toBeCloseTo(
        9.504,
        2,
      );
    });
});

describe("a line that loads on several legs share", () => {
  const k = (K: number, cmil: number) => K / cmil / FOOT;
  reference({
    name: "4-E5: three equal loads between lines that make 100 A a line, 480 V, 200 ft, 1 AWG",
    source: "course text Feeders, Feeder Taps & Voltage Drop (NEC 2023)",
    basis: "published",
    got: () =>
      sharedLineDrop.compute({ I: 100 / Math.sqrt(3), J: 200 / Math.sqrt(3), K: 0, r: k(12.9, 83690), L: 200 * FOOT }),
    printed: 5.3,
    within: 0.05,
  });
  reference({
    name: "4-E4: one load alone is a line of two wires",
    source: "sparkytoolbox.net, 240 V, 44 A, 160 ft of 6 AWG",
    basis: "published",
    got: () => sharedLineDrop.compute({ I: 44, J: 0, K: 0, r: 0.491 / 1000 / FOOT, L: 160 * FOOT }),
    printed: 6.9,
    within: 0.05,
  });

  /** Kirchhoff by phasors: what the two wires A and B lose along V_AB, loads of unity power factor. */
  const byPhasors = (AB: number, BC: number, CA: number, A: number, B: number): number => {
    const turn = (amperes: number, degrees: number) => ({
      x: amperes * Math.cos((degrees * Math.PI) / 180),
      y: amperes * Math.sin((degrees * Math.PI) / 180),
    });
    const [ab, bc, ca] = [turn(AB, 0), turn(BC, -120), turn(CA, 120)];
    const [a, b] = [turn(A, -30), turn(B, -150)];
    const wire = { A: ab.x - ca.x + a.x, B: bc.x - ab.x + b.x };
    return wire.A - wire.B;
  };
  test("agrees with phasors for any loads on the two lines and between lines", () => {
    const amperes = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(amperes, amperes, amperes, amperes, amperes, (AB, BC, CA, A, B) => {
        const ours = sharedLineDrop.compute({ I: AB, J: BC + CA, K: A + B, r: 1, L: 1 });
        expect(ours).toBeCloseTo(byPhasors(AB, BC, CA, A, B), 6);
      }),
    );
  });
});
