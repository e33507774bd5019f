import {
  continuousRating,
  isContinuous,
  loadCurrent,
  nextBreaker,
  overcurrentNeeded,
  receptacleAllowed,
  receptacleLoad,
  sharedCircuitShare,
  threePhaseCurrent,
} from "@plumbmark/calc";
import { describe } from "vitest";
import { reference } from "../check.js";

const needed = (continuous: number, rest = 0) => overcurrentNeeded.compute({ Ic: continuous, Ix: rest });
const rating = (breaker: number, share = 0.8) => continuousRating.compute({ In: breaker, share });
/** Engine-like comparison: float noise must not fail a load that is exactly at its limit. */
const inside = (load: number, limit: number) => load <= limit * (1 + 1e-9);

describe("continuous loads and overcurrent devices", () => {
  const txdot = "TxDOT Highway Illumination Manual, Overcurrent Protection (NEC 210.20)";
  reference({
    name: "1-E1: 18 A continuous",
    source: txdot,
    basis: "published",
    got: () => needed(18),
    printed: 22.5,
    within: 0.01,
  });
  reference({
    name: "the next standard size above 22.5 A is 25, not the 30 the manual picks",
    source: "NEC 240.6(A)",
    basis: "published",
    got: () => nextBreaker(22.5) ?? 0,
    printed: 25,
  });
  const course = "course text Feeders, Feeder Taps & Voltage Drop (NEC 2023)";
  reference({
    name: "1-E2: 100 A continuous + 40 A",
    source: course,
    basis: "published",
    got: () => needed(100, 40),
    printed: 165,
  });
  reference({
    name: "1-E2: next size above 165 A",
    source: course,
    basis: "published",
    got: () => nextBreaker(165) ?? 0,
    printed: 175,
  });
  reference({
    name: "1-E3: charger of 24, 32, 40, 48 A",
    source: "orbitaljump.com NEC 625; genba-dentaku.com EL-10",
    basis: "published",
    got: () => [24, 32, 40, 48].map((each) => needed(each)),
    printed: [30, 40, 50, 60],
  });
  reference({
    name: "1-E4: 33 A continuous",
    source: "NEC 210.20(A)",
    basis: "published",
    got: () => needed(33),
    printed: 41.25,
  });
  reference({
    name: "1-E4: next size above 41.25 A",
    source: "NEC 240.6(A)",
    basis: "published",
    got: () => nextBreaker(needed(33)) ?? 0,
    printed: 45,
  });
  const signs = "signweb.com Completing the Circuit, March 2006 (NEC 600.5)";
  reference({
    name: "1-E5: four signs of 4 A on 20 A",
    source: signs,
    basis: "published",
    got: () => inside(4 * 4, rating(20)),
    printed: true,
  });
  reference({
    name: "1-E5: a fifth sign",
    source: signs,
    basis: "published",
    got: () => inside(5 * 4, rating(20)),
    printed: false,
  });
  const sparky = "joshthesparky.com Continuous load explained; NEC 210.20(A)";
  reference({
    name: "1-E6: 16 A continuous needs exactly 20 A",
    source: sparky,
    basis: "published",
    got: () => nextBreaker(needed(16)) ?? 0,
    printed: 20,
  });
  reference({
    name: "1-E6: 16.01 A is past 20 A",
    source: sparky,
    basis: "arithmetic",
    got: () => inside(16.01, rating(20)),
    printed: false,
  });
  reference({
    name: "1-E7: 50 A circuit",
    source: "genba-dentaku.com EL-10",
    basis: "published",
    got: () => rating(50),
    printed: 40,
  });
  reference({
    name: "listed for 100 %",
    source: "NEC 210.20(A) Exception",
    basis: "published",
    got: () => rating(20, 1),
    printed: 20,
  });
  reference({
    name: "2.99 h is not continuous",
    source: "NEC Art. 100",
    basis: "published",
    got: () => isContinuous(2.99 * 3600),
    printed: false,
  });
  reference({
    name: "3 h is continuous",
    source: "NEC Art. 100",
    basis: "published",
    got: () => isContinuous(3 * 3600),
    printed: true,
  });
});

describe("80 % table", () => {
  const rows = [
    [15, 1440, 2496, 2880, 4323],
    [20, 1920, 3328, 3840, 5764],
    [30, 2880, 4992, 5760, 8646],
    [50, 4800, 8320, 9600, 14411],
  ] as const;
  for (const [breaker, ...watts] of rows) {
    const source = "W = 0.8 × A × V, 3840 VA at 20 A and 240 V also in print";
    const single = [120, 208, 240].map((V, index) => loadCurrent.compute({ S: watts[index] as number, V }));
    reference({
      name: `${breaker} A, single phase`,
      source,
      basis: "arithmetic",
      got: () => single,
      printed: [1, 1, 1].map(() => 0.8 * breaker),
    });
    reference({
      name: `${breaker} A, three phase`,
      source,
      basis: "arithmetic",
      got: () => threePhaseCurrent.compute({ S: watts[3], V: 208 }),
      printed: 0.8 * breaker,
      within: 0.5 / (Math.sqrt(3) * 208),
      because: "half a watt in the last printed digit",
    });
  }
});

describe("receptacles", () => {
  const loads = "NEC Table 210.21(B)(2)";
  for (const [circuit, receptacle, most] of [
    [15, 15, 12],
    [20, 15, 12],
    [20, 20, 16],
  ] as const)
    reference({
      name: `${receptacle} A receptacle on ${circuit} A`,
      source: loads,
      basis: "published",
      got: () => receptacleLoad(circuit, receptacle) ?? 0,
      printed: most,
    });
  reference({
    name: "30 A receptacle on 30 A",
    source: loads,
    basis: "memory",
    got: () => receptacleLoad(30, 30) ?? 0,
    printed: 24,
  });
  const ratings = "NEC Table 210.21(B)(3)";
  for (const [circuit, receptacle, allowed] of [
    [15, 15, true],
    [15, 20, false],
    [20, 15, true],
    [20, 20, true],
    [40, 50, true],
    [50, 40, false],
    [50, 50, true],
  ] as const)
    reference({
      name: `${receptacle} A among several on ${circuit} A`,
      source: ratings,
      basis: "published",
      got: () => receptacleAllowed(circuit, receptacle, false) ?? "no row",
      printed: allowed,
    });
  reference({
    name: "a single 15 A receptacle on its own 20 A circuit",
    source: "NEC 210.21(B)(1)",
    basis: "published",
    got: () => receptacleAllowed(20, 15, true) ?? "no row",
    printed: false,
  });
  reference({
    name: "13 A fastened in place on a mixed 20 A circuit",
    source: "EC&M Code Q&A, 6 Sep 2012 (NEC 210.23)",
    basis: "published",
    got: () => inside(13, 20 * sharedCircuitShare("fastened")),
    printed: false,
  });
  reference({
    name: "cord and plug on a shared 15 and 20 A circuit",
    source: "NEC 210.23(A)(1), 2020",
    basis: "published",
    got: () => [15, 20].map((each) => each * sharedCircuitShare("cord-and-plug")),
    printed: [12, 16],
  });
});
