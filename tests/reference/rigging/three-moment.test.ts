import {
  anyBalance,
  type Beam,
  deflectionAt,
  hangBeam,
  heaviestCase,
  loadMomentAbout,
  lostHang,
  momentAt,
  reactionWorking,
  solveBeam,
  threeMomentEquations,
  totalLoad,
} from "@plumbmark/calc";
import fc from "fast-check";
import { all, create, type FactoryFunctionMap } from "mathjs";
import { Matrix, solve } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";

const math = create(all as FactoryFunctionMap);

/**
 * The other way to the same answer: the theorem of three moments with the free moment diagrams integrated by
 * Simpson's rule over fine parts, solved by mathjs. It shares nothing with the stiffness method.
 */
function byThreeMoments(
  spans: readonly number[],
  uniform: readonly number[],
  points: readonly { span: number; share: number; load: number }[],
): number[] {
  const free = (i: number, x: number): number => {
    const l = spans[i]!;
    const spread = (uniform[i]! * x * (l - x)) / 2;
    return points
      .filter((p) => p.span === i)
      .reduce((sum, p) => {
        const a = p.share * l;
        return sum + (x <= a ? (p.load * (l - a) * x) / l : (p.load * a * (l - x)) / l);
      }, spread);
  };
  const term = (i: number, fromLeft: boolean): number => {
    const l = spans[i]!;
    const cuts = [
      0,
      ...points
        .filter((p) => p.span === i)
        .map((p) => p.share * l)
        .sort((a, b) => a - b),
      l,
    ];
    let sum = 0;
    for (let k = 0; k + 1 < cuts.length; k += 1) {
      const [a, b] = [cuts[k]!, cuts[k + 1]!];
      const f = (x: number): number => free(i, x) * (fromLeft ? x : l - x);
      const h = (b - a) / 4;
      sum += (h / 3) * (f(a) + 4 * f(a + h) + 2 * f(a + 2 * h) + 4 * f(a + 3 * h) + f(b));
    }
    return (6 * sum) / l;
  };
  const inner = spans.length - 1;
  const rows = Array.from({ length: inner }, (_, r) =>
    Array.from({ length: inner }, (_, c) =>
      r === c ? 2 * (spans[r]! + spans[r + 1]!) : c === r + 1 ? spans[r + 1]! : c === r - 1 ? spans[r]! : 0,
    ),
  );
  const right = Array.from({ length: inner }, (_, r) => -term(r, true) - term(r + 1, false));
  const solved = inner === 0 ? [] : (math.lusolve(rows, right) as unknown as number[][]).map((row) => row[0]!);
  return [0, ...solved, 0];
}

const cases = fc.integer({ min: 2, max: 6 }).chain((count) =>
  fc.record({
    spans: fc.array(fc.double({ min: 0.5, max: 6, noNaN: true }), { minLength: count, maxLength: count }),
    uniform: fc.array(fc.double({ min: 0, max: 50, noNaN: true }), { minLength: count, maxLength: count }),
    points: fc.array(
      fc.record({
        span: fc.integer({ min: 0, max: count - 1 }),
        share: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        load: fc.double({ min: 0, max: 200, noNaN: true }),
      }),
      { maxLength: 5 },
    ),
  }),
);

type Case = { spans: number[]; uniform: number[]; points: { span: number; share: number; load: number }[] };

function beamOf({ spans, uniform, points }: Case): Beam {
  const supports = [0];
  for (const l of spans) supports.push(supports.at(-1)! + l);
  return {
    length: supports.at(-1)!,
    supports,
    uniform: uniform.map((perMetre, i) => ({ from: supports[i]!, to: supports[i + 1]!, perMetre })),
    points: points.map(({ span, share, load }) => ({ at: supports[span]! + share * spans[span]!, load })),
  };
}

const near = (a: number, b: number, scale: number): void =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-6 * Math.max(1, scale));

describe("stiffness against three moments", () => {
  test("support moments agree on random beams", () =>
    fc.assert(
      fc.property(cases, (each) => {
        const beam = beamOf(each);
        const other = byThreeMoments(each.spans, each.uniform, each.points);
        const scale = totalLoad(beam) * beam.length;
        notEmpty(solveBeam(beam).supportMoments).forEach((moment, i) => {
          near(moment, other[i]!, scale);
        });
      }),
    ));
  test("the shown equations come out even", () =>
    fc.assert(
      fc.property(cases, (each) => {
        const beam = beamOf(each);
        for (const { remains } of notEmpty(threeMomentEquations(solveBeam(beam))!))
          near(remains, 0, totalLoad(beam) * beam.length ** 2);
      }),
    ));
});

describe("equilibrium", () => {
  test("reactions carry the load and turn nothing; supports stay put; the ends are free", () =>
    fc.assert(
      fc.property(cases, (each) => {
        const beam = beamOf(each);
        const solved = solveBeam(beam);
        near(
          solved.reactions.reduce((a, b) => a + b, 0),
          totalLoad(beam),
          totalLoad(beam),
        );
        const turning = solved.reactions.reduce((sum, r, i) => sum + r * beam.supports[i]!, 0);
        near(turning, loadMomentAbout(beam, 0), totalLoad(beam) * beam.length);
        for (const place of notEmpty(beam.supports))
          near(deflectionAt(solved, place), 0, totalLoad(beam) * beam.length ** 3);
        const last = solved.stretches.at(-1)!;
        near(momentAt(last, last.to), 0, totalLoad(beam) * beam.length);
      }),
    ));
  test("twice the load, twice the reactions", () =>
    fc.assert(
      fc.property(cases, (each) => {
        const twice = {
          ...each,
          uniform: each.uniform.map((w) => 2 * w),
          points: each.points.map((p) => ({ ...p, load: 2 * p.load })),
        };
        const [one, two] = [solveBeam(beamOf(each)), solveBeam(beamOf(twice))];
        notEmpty(one.reactions).forEach((r, i) => {
          near(2 * r, two.reactions[i]!, totalLoad(beamOf(twice)));
        });
      }),
    ));
  test("a hang never pushes, a bar that hangs is in balance, and every balance covers the level one", () =>
    fc.assert(
      fc.property(cases, (each) => {
        const beam = beamOf(each);
        const hung = hangBeam(beam);
        expect(hung.stable).toBe(true);
        if (!hung.stable) return;
        for (const r of hung.reactions) expect(r).toBeGreaterThanOrEqual(-1e-6 * Math.max(1, totalLoad(beam)));
        near(
          hung.reactions.reduce((a, b) => a + b, 0),
          totalLoad(beam),
          totalLoad(beam),
        );
        const balances = anyBalance(beam);
        if (!balances.still) return;
        for (const [i, level] of notEmpty(hung.reactions.entries()))
          expect(
            heaviestCase(balances.cases, i).reactions[i]! + 1e-6 * Math.max(1, totalLoad(beam)),
          ).toBeGreaterThanOrEqual(level);
      }),
    ));
  test("one end hang lost with the load beyond the others tips", () => {
    const beam: Beam = { length: 10, supports: [0, 8, 10], points: [{ at: 2, load: 100 }] };
    expect([0, 1, 2].map((lost) => lostHang(beam, lost).tips)).toEqual([true, false, false]);
  });
  test("broken input is refused", () => {
    expect(() => solveBeam({ length: 4, supports: [2] })).toThrow(RangeError);
    expect(() => solveBeam({ length: 4, supports: [0, 5] })).toThrow(RangeError);
    expect(() => solveBeam({ length: 4, supports: [3, 1] })).toThrow(RangeError);
    expect(() => solveBeam({ length: 4, supports: [0, 4], points: [{ at: 1, load: Number.NaN }] })).toThrow(RangeError);
  });
});

test("ml-matrix and mathjs solve alike", () =>
  fc.assert(
    fc.property(fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 12, maxLength: 12 }), (numbers) => {
      // A dominant diagonal keeps the system away from singular.
      const a = [0, 1, 2].map((r) => [0, 1, 2].map((c) => numbers[r * 3 + c]! + (r === c ? 40 : 0)));
      const b = numbers.slice(9);
      const ours = solve(new Matrix(a), Matrix.columnVector(b)).to1DArray();
      notEmpty(math.lusolve(a, b) as unknown as number[][]).forEach((row, i) => {
        near(ours[i]!, row[0]!, 1);
      });
    }),
  ));

describe("the shown working can be redone", () => {
  // Units, thousands commas and words are dropped; both sides of every equals sign are worked out. The last line gives
  // the result, which is printed behind it.
  const worked = (line: string, result: number): [number, number] => {
    const plain = (line.replace(/^R = /u, "") + (/^R = |^[^=]*$/u.test(line) ? ` = ${result}` : ""))
      .replace(/^[a-z ]*\d*: /u, "")
      .replace(/hang \d+ |all that hangs/gu, "")
      .replace(/lb·ft²|lb·ft|kg·m²|kg·m|lb|kg|ft|\bm\b|,/gu, "")
      .replace(/−/gu, "-")
      .replace(/×/gu, "*")
      .replace(/÷/gu, "/");
    const [left, right] = plain.split("=") as [string, string];
    return [math.evaluate(left) as number, math.evaluate(right) as number];
  };
  for (const us of [true, false])
    test(us ? "pounds and feet" : "kilograms and metres", () => {
      const solved = solveBeam({
        length: 10,
        supports: [1, 4, 9],
        uniform: [{ from: 0.5, to: 8, perMetre: 12 }],
        points: [
          { at: 3, load: 30 },
          { at: 9.5, load: 8 },
        ],
      });
      for (const index of [0, 1, 2])
        for (const line of reactionWorking(solved, index, us).split("; ")) {
          const [left, right] = worked(line, solved.reactions[index]! / (us ? 0.45359237 : 1));
          expect(Math.abs(left / right - 1), line).toBeLessThan(1e-3);
        }
    });

  test("of three hangs the line ends in the reaction, so that what is printed behind it is what it gives", () => {
    const solved = solveBeam({ length: 8, supports: [0, 4, 8], uniform: [{ from: 0, to: 8, perMetre: 1 }] });
    expect(reactionWorking(solved, 1, false).split("; ").at(-1)).toMatch(/^R = /u);
  });

  test("two hangs: every load with its arm from the other hang", () => {
    // D. Hall, lesson 9: 20 ft span, 100 lb at 17.5 ft and 200 lb at 5 ft from the right hang: left 137.5, right 162.5 lb.
    const [lb, ft] = [0.45359237, 0.3048];
    const solved = solveBeam({
      length: 20 * ft,
      supports: [0, 20 * ft],
      points: [
        { at: 2.5 * ft, load: 100 * lb },
        { at: 15 * ft, load: 200 * lb },
      ],
    });
    expect(reactionWorking(solved, 0, true)).toBe("(100 lb × 17.5 ft + 200 lb × 5 ft) ÷ 20 ft");
    expect(reactionWorking(solved, 1, true)).toBe("(100 lb × 2.5 ft + 200 lb × 15 ft) ÷ 20 ft");
    expect(worked(reactionWorking(solved, 0, true), 137.5)).toEqual([137.5, 137.5]);
  });
});

// Pieces of a hair's breadth once cost the solver all its digits: loads written in feet and in metres fall that close.
for (const gap of [1e-2, 1e-3, 1e-4, 2e-5, 1e-6])
  test(`two loads ${gap} m apart weigh as much as they do on paper`, () => {
    const at = [5, 5 + gap, 15 - gap, 15];
    const solved = solveBeam({
      length: 20,
      supports: [0, 10, 20],
      points: at.map((place) => ({ at: place, load: 50 })),
    });
    const term = (a: number): number => (50 * a * (100 - a * a)) / 10;
    const middle = (-2 * (term(5) + term(5 + gap))) / 40;
    expect(Math.abs(solved.supportMoments[1]! - middle)).toBeLessThan(1e-3);
    expect(Math.abs(solved.reactions.reduce((a, b) => a + b, 0) - 200)).toBeLessThan(1e-9);
  });
