import {
  assignCircuits,
  bestStations,
  buyTogether,
  type CircuitRoom,
  cableOrders,
  cellsOf,
  distance,
  divide,
  type GridCell,
  pairs,
  peakOf,
  roomFor,
  shapes,
  takeLengths,
  worthAsking,
} from "@plumbmark/draft";
import fc from "fast-check";
import highs from "highs";
import { describe, expect, inject, test } from "vitest";

// The package is CommonJS and its types speak of a module of ECMAScript.
const solver = await (highs as unknown as typeof highs.default)();

/** Every order of a list, by brute force. */
function ordersOf<T>(items: readonly T[]): readonly (readonly T[])[] {
  if (items.length < 2) return [items];
  return items.flatMap((first, index) =>
    ordersOf([...items.slice(0, index), ...items.slice(index + 1)]).map((rest) => [first, ...rest]),
  );
}

const stepsOf = (cells: readonly GridCell[], pitch: { across: number; down: number }): readonly number[] =>
  cells.slice(1).map((cell, index) => distance(cells[index] as GridCell, cell, pitch));

describe("cable order", () => {
  // An open serpentine of r × c panels has r × c − 1 steps: r(c − 1) across and r − 1 down along rows (arithmetic).
  test.each([
    [6, 1, 5, 0],
    [4, 2, 6, 1],
    [3, 3, 6, 2],
  ])("%i × %i panels along rows: %i steps across and %i down", (columns, rows, across, down) => {
    const orders = cableOrders(cellsOf(columns, rows), { across: 1, down: 3 });
    const along = orders.find(({ form }) => form?.along === "rows");
    expect(along?.total).toBeCloseTo(across + 3 * down, 9);
    expect(along?.cells).toHaveLength(columns * rows);
  });

  test("2 × 4 panels along columns have four steps down and three across", () => {
    const orders = cableOrders(cellsOf(4, 2), { across: 1, down: 3 });
    expect(orders.find(({ form }) => form?.along === "columns")?.total).toBeCloseTo(4 * 3 + 3, 9);
  });

  test("a face that is one row is asked for once from each end", () => {
    expect(cableOrders(cellsOf(5, 1), { across: 1, down: 1 })).toHaveLength(2);
  });

  test("no order of up to seven cells has a shorter longest step than the first, nor a shorter cable at that step", () => {
    const faces = fc
      .record({
        columns: fc.integer({ min: 1, max: 4 }),
        rows: fc.integer({ min: 1, max: 3 }),
        gone: fc.uniqueArray(fc.integer({ min: 0, max: 11 }), { maxLength: 8 }),
        across: fc.constantFrom(1, 0.5, 2),
      })
      .map(({ columns, rows, gone, across }) => ({
        cells: cellsOf(columns, rows).filter(({ row, column }) => !gone.includes(row * columns + column)),
        pitch: { across, down: 1 },
      }))
      .filter(({ cells }) => cells.length > 1 && cells.length <= 7);
    fc.assert(
      fc.property(faces, ({ cells, pitch }) => {
        const best = cableOrders(cells, pitch)[0];
        const all = ordersOf(cells).map((order) => Math.max(...stepsOf(order, pitch)));
        expect(best?.longest).toBeCloseTo(Math.min(...all), 9);
        expect(new Set(best?.cells).size).toBe(cells.length);
      }),
      { numRuns: 60 },
    );
  });
});

const rooms = fc.record({
  rating: fc.integer({ min: 5, max: 40 }),
  carried: fc.integer({ min: 0, max: 10 }),
  perPanel: fc.integer({ min: 1, max: 6 }),
  outlets: fc.integer({ min: 1, max: 2 }),
  mostInRun: fc.integer({ min: 1, max: 8 }),
});

const circuitsOf = (given: readonly Omit<CircuitRoom, "name">[]): readonly CircuitRoom[] =>
  given.map((each, index) => ({ name: `c${index}`, ...each }));

describe("circuits", () => {
  /** Every way to put panels on circuits. */
  function* spreads(circuits: readonly CircuitRoom[], panels: number): Generator<readonly number[]> {
    const [first, ...rest] = circuits;
    if (!first) {
      if (panels === 0) yield [];
      return;
    }
    for (let here = 0; here <= Math.min(panels, first.outlets * first.mostInRun); here += 1)
      if (first.carried + here * first.perPanel <= first.rating || here === 0)
        for (const others of spreads(rest, panels - here)) yield [here, ...others];
  }

  test("as few circuits as can be, then the fullest as empty as can be: the same as every way tried", () => {
    fc.assert(
      fc.property(fc.array(rooms, { minLength: 1, maxLength: 3 }), fc.integer({ min: 1, max: 8 }), (given, panels) => {
        const circuits = circuitsOf(given);
        const found = assignCircuits(circuits, panels).assignment;
        const all = [...spreads(circuits, panels)].map((taken) => {
          const used = circuits.map((each, index) => ({ ...each, taken: taken[index] as number }));
          const on = used.filter((each) => each.taken > 0);
          return {
            count: on.length,
            fullest: Math.max(...on.map((c) => (c.carried + c.taken * c.perPanel) / c.rating)),
          };
        });
        const fewest = Math.min(...all.map(({ count }) => count));
        const best = Math.min(...all.filter(({ count }) => count === fewest).map(({ fullest }) => fullest));
        if (all.length === 0) expect(found).toBeUndefined();
        else {
          expect(found?.circuits).toHaveLength(fewest);
          expect(found?.fullest).toBeCloseTo(best, 9);
        }
      }),
      { numRuns: 300 },
    );
  });

  test("the number of circuits agrees with a mixed-integer solver for up to twelve", () => {
    fc.assert(
      fc.property(
        fc.array(rooms, { minLength: 2, maxLength: 12 }),
        fc.integer({ min: 1, max: 40 }),
        (given, panels) => {
          const circuits = circuitsOf(given);
          const names = circuits.map(({ name }) => name);
          const problem = `Minimize
 obj: ${names.map((name) => `u_${name}`).join(" + ")}
Subject To
 all: ${names.map((name) => `n_${name}`).join(" + ")} = ${panels}
${circuits
  .map(
    (c) => ` load_${c.name}: ${c.perPanel} n_${c.name} - ${Math.max(0, c.rating - c.carried)} u_${c.name} <= 0
 runs_${c.name}: n_${c.name} - ${c.outlets * c.mostInRun} u_${c.name} <= 0`,
  )
  .join("\n")}
Bounds
${names.map((name) => ` 0 <= n_${name} <= 40`).join("\n")}
General
 ${names.map((name) => `n_${name}`).join(" ")}
Binary
 ${names.map((name) => `u_${name}`).join(" ")}
End`;
          const solved = solver.solve(problem);
          const found = assignCircuits(circuits, panels).assignment;
          if (solved.Status === "Optimal") expect(found?.circuits.length).toBe(Math.round(solved.ObjectiveValue));
          else expect(found).toBeUndefined();
        },
      ),
      // A programme is dear: a quick run asks of a few spreads, other ones with every seed.
      { numRuns: inject("effort").deep ? 600 : 15 },
    );
  });

  test("two circuits are used where runs are to lie between one another", () => {
    const room = { rating: 100, carried: 0, perPanel: 1, outlets: 1, mostInRun: 50 };
    const found = assignCircuits(circuitsOf([room, room, room]), 10, 2).assignment;
    expect(found?.circuits.map(({ panels }) => panels)).toEqual([5, 5]);
  });

  test("the legs of a supply carry alike where nothing else decides", () => {
    const room = { rating: 10, carried: 0, perPanel: 1, outlets: 1, mostInRun: 6 };
    const circuits: readonly CircuitRoom[] = [
      { name: "a1", leg: "A", ...room },
      { name: "a2", leg: "A", ...room },
      { name: "b1", leg: "B", ...room },
      { name: "c1", leg: "C", ...room },
    ];
    const names = assignCircuits(circuits, 18).assignment?.circuits.map(({ name }) => name);
    expect(new Set(names?.map((name) => name[0]))).toEqual(new Set(["a", "b", "c"]));
  });

  test("of the ways that are alike the one whose legs are most alike is taken, as trying all of them shows", () => {
    const legged = fc.record({
      rating: fc.constantFrom(8, 10),
      carried: fc.constantFrom(0, 2),
      perPanel: fc.constant(1),
      outlets: fc.constant(1),
      mostInRun: fc.integer({ min: 2, max: 8 }),
      leg: fc.constantFrom("A", "B", "C", undefined),
    });
    let several = 0;
    fc.assert(
      fc.property(
        fc.array(legged, { minLength: 2, maxLength: 5 }),
        fc.integer({ min: 2, max: 16 }),
        (given, panels) => {
          const circuits: readonly CircuitRoom[] = given.map(({ leg, ...room }, index) => ({
            name: `c${index}`,
            ...room,
            ...(leg === undefined ? {} : { leg }),
          }));
          const found = assignCircuits(circuits, panels).assignment;
          const legs = [...new Set(circuits.flatMap(({ leg }) => leg ?? []))];
          const apart = (taken: readonly number[]): number => {
            const on = legs.map((leg) =>
              circuits.reduce((sum, each, at) => sum + (each.leg === leg ? (taken[at] ?? 0) : 0), 0),
            );
            return on.length < 2 ? 0 : Math.max(...on) - Math.min(...on);
          };
          const all = [...spreads(circuits, panels)].map((taken) => ({
            count: taken.filter((each) => each > 0).length,
            fullest: Math.max(
              ...circuits.map((c, at) => (taken[at] ? (c.carried + (taken[at] as number) * c.perPanel) / c.rating : 0)),
            ),
            apart: apart(taken),
          }));
          const fewest = all.filter(({ count }) => count === Math.min(...all.map((each) => each.count)));
          const least = Math.min(...fewest.map(({ fullest }) => fullest));
          const alike = fewest.filter(({ fullest }) => fullest < least + 1e-9);
          if (alike.length > 1) several += 1;
          if (!found) {
            expect(all).toEqual([]);
            return;
          }
          const own = circuits.map(({ name }) => found.circuits.find((each) => each.name === name)?.panels ?? 0);
          expect(own.reduce((sum, each) => sum + each, 0)).toBe(panels);
          expect(apart(own)).toBe(Math.min(...alike.map((each) => each.apart)));
        },
      ),
      { numRuns: 300 },
    );
    expect(several).toBeGreaterThan(50);
  });

  test("more room never takes more circuits", () => {
    fc.assert(
      fc.property(
        fc.array(rooms, { minLength: 1, maxLength: 6 }),
        rooms,
        fc.integer({ min: 1, max: 20 }),
        (given, more, n) => {
          const before = assignCircuits(circuitsOf(given), n).assignment;
          const after = assignCircuits(circuitsOf([...given, more]), n).assignment;
          if (before) expect(after?.circuits.length).toBeLessThanOrEqual(before.circuits.length);
        },
      ),
    );
  });

  test("a circuit that is full has no room", () => {
    expect(roomFor({ name: "c", rating: 15, carried: 15, perPanel: 1.1, outlets: 2, mostInRun: 10 })).toBe(0);
  });
});

describe("pieces of a run", () => {
  test("the fewest pieces, even to one item, and every item once and in order", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer(), { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 1, max: 20 }),
        (items, most) => {
          const pieces = divide(items, most);
          const sizes = pieces.map(({ length }) => length);
          expect(pieces.flat()).toEqual(items);
          expect(pieces).toHaveLength(Math.ceil(items.length / most));
          expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});

describe("lengths from the shelf", () => {
  /** Most needs served and then least length, by a linear program of the assignment (its vertices are whole). */
  function best(needs: readonly number[], lengths: readonly number[]): { served: number; length: number } {
    const able = needs.flatMap((need, n) => lengths.flatMap((length, l) => (length >= need ? [{ n, l, length }] : [])));
    if (able.length === 0) return { served: 0, length: 0 };
    const name = ({ n, l }: { n: number; l: number }): string => `x_${n}_${l}`;
    const problem = `Maximize
 obj: ${able.map((each) => `${1000 - each.length} ${name(each)}`).join(" + ")}
Subject To
${needs
  .flatMap((_, n) => {
    const own = able.filter((each) => each.n === n);
    return own.length > 0 ? [` need_${n}: ${own.map(name).join(" + ")} <= 1`] : [];
  })
  .join("\n")}
${lengths
  .flatMap((_, l) => {
    const own = able.filter((each) => each.l === l);
    return own.length > 0 ? [` cable_${l}: ${own.map(name).join(" + ")} <= 1`] : [];
  })
  .join("\n")}
Bounds
${able.map((each) => ` 0 <= ${name(each)} <= 1`).join("\n")}
End`;
    const { ObjectiveValue: value } = solver.solve(problem) as { ObjectiveValue: number };
    const served = Math.round(Math.ceil(value / 1000 - 1e-9));
    return { served, length: served * 1000 - value };
  }

  test("as many needs are served, and of as little cable, as a linear program finds", () => {
    const needs = fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 7 });
    const lengths = fc.array(fc.integer({ min: 1, max: 12 }), { maxLength: 7 });
    fc.assert(
      fc.property(needs, lengths, (asked, there) => {
        const owned = new Map<number, number>();
        for (const length of there) owned.set(length, (owned.get(length) ?? 0) + 1);
        const { taken, short } = takeLengths(asked, owned);
        const used = taken.filter((each) => each !== undefined);
        const expected = best(asked, there);
        expect(used.length).toBe(expected.served);
        expect(used.reduce((sum, each) => sum + each, 0)).toBeCloseTo(expected.length, 6);
        expect(used.length + short.length).toBe(asked.length);
      }),
      { numRuns: 150 },
    );
  });

  test("what is short is the shortest", () => {
    expect(takeLengths([1, 3], new Map([[3, 1]])).short).toEqual([{ need: 1, index: 0 }]);
  });
});

describe("several wishes, one purchase", () => {
  const needs = fc
    .dictionary(fc.constantFrom("panel", "bar", "cord"), fc.integer({ min: 1, max: 9 }))
    .map((each) => new Map(Object.entries(each)));
  const days = fc
    .tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 5 }))
    .map(([from, more]) => ({ from, to: from + more }));

  test("what has to be there is the fullest day, as found by looking at every day", () => {
    fc.assert(
      fc.property(fc.array(fc.record({ days, needs }), { maxLength: 6 }), (standing) => {
        const peak = peakOf(standing);
        for (const item of ["panel", "bar", "cord"]) {
          const byDay = Array.from({ length: 20 }, (_, day) =>
            standing
              .filter((each) => each.days.from <= day && day <= each.days.to)
              .reduce((sum, each) => sum + (each.needs.get(item) ?? 0), 0),
          );
          expect(peak.get(item) ?? 0).toBe(Math.max(...byDay));
        }
      }),
    );
  });

  test("no choice of options costs less than the one taken", () => {
    const wish = fc.record({ days, options: fc.array(needs, { minLength: 1, maxLength: 3 }) });
    const pack = { least: 2, step: 2 };
    const cost = (buy: ReadonlyMap<string, number>): readonly number[] => [
      buy.get("panel") ?? 0,
      [...buy.values()].reduce((sum, each) => sum + each, 0),
    ];
    fc.assert(
      fc.property(fc.array(wish, { minLength: 1, maxLength: 3 }), needs, (given, owned) => {
        const wishes = given.map((each, index) => ({ name: `w${index}`, ...each }));
        const found = buyTogether(wishes, owned, () => pack, cost);
        const [a, b = [new Map()], c = [new Map()]] = given.map(({ options }) => options);
        const whole: (readonly number[])[] = [];
        for (const first of a as readonly ReadonlyMap<string, number>[])
          for (const second of b)
            for (const third of c) {
              const standing = [first, second, third].map((each, index) => ({
                needs: each,
                days: given[index]?.days ?? { from: 0, to: 0 },
              }));
              const buy = new Map<string, number>();
              for (const [item, count] of peakOf(standing)) {
                const short = count - (owned.get(item) ?? 0);
                if (short > 0) buy.set(item, Math.ceil(short / 2) * 2);
              }
              whole.push(cost(buy));
            }
        const least = whole.sort((x, y) => (x[0] ?? 0) - (y[0] ?? 0) || (x[1] ?? 0) - (y[1] ?? 0))[0];
        expect(found && cost(found.best.buy)).toEqual(least);
        expect(found?.looked).toBe(found?.all);
      }),
    );
  });
});

describe("sets of hangs", () => {
  test("every set that stands on both sides of the load, fewest hangs first", () => {
    const { sets, wholeUpTo } = worthAsking([0, 1, 2, 3], [0, 3], [0, 3], 4);
    expect(wholeUpTo).toBeGreaterThanOrEqual(4);
    // By hand: of the sets of 0, 1, 2 and 3 those on both sides of 1.5.
    const expected = ["03", "12", "02", "13", "012", "013", "023", "123", "0123"];
    expect([...sets].map((set) => set.join("")).sort()).toEqual(expected.sort());
    expect(sets.map(({ length }) => length)).toEqual([2, 2, 2, 2, 3, 3, 3, 3, 4]);
  });

  test("a place beyond the bar's ends is not offered", () => {
    expect(worthAsking([0, 1, 5], [0, 2], [0, 1], 3).sets).toEqual([[0, 1]]);
  });

  // A uniform beam on two supports is bent least with 0.207 of its length beyond each (Young and Budynas, Roark's
  // Formulas, from memory: equal moments over the supports and between them).
  test("two hangs are best a fifth of the length from the ends", () => {
    const [first, second] = bestStations(2, 0, 1) as [number, number];
    expect(first).toBeCloseTo(0.2071, 4);
    expect(second).toBeCloseTo(0.7929, 4);
    const moments = [(first * first) / 2, (second - first) ** 2 / 8 - (first * first) / 2] as const;
    expect(moments[0]).toBeCloseTo(moments[1], 12);
  });

  test("of many places those next to the best stations are offered, and that it is not all", () => {
    const places = Array.from({ length: 40 }, (_, at) => at / 4);
    const { sets, wholeUpTo } = worthAsking(places, [0, 10], [0, 10], 8);
    // 40 places give 780 pairs and 9,880 triples.
    expect(wholeUpTo).toBe(2);
    const four = sets.find(({ length }) => length === 4) ?? [];
    const off = four.map((index, at) => Math.abs((places[index] as number) - (bestStations(4, 0, 10)[at] as number)));
    expect(off).toHaveLength(4);
    expect(Math.max(...off)).toBeLessThanOrEqual(0.125 + 1e-9);
  });
});

describe("shapes", () => {
  test("sixteen square panels of half a metre, at most 2 m wide and 1 m high", () => {
    const found = shapes(
      { width: 0.5, height: 0.5 },
      { width: { how: "at most", length: 2 }, height: { how: "at most", length: 1 } },
      16,
    );
    expect(found).toHaveLength(8);
    expect(found[0]).toEqual({ columns: 4, rows: 2 });
  });

  test("more panels never make fewer shapes or pairs", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), (count) => {
        const fewer = shapes({ width: 1, height: 1 }, {}, count);
        const more = shapes({ width: 1, height: 1 }, {}, count + 1);
        expect(more.length).toBeGreaterThanOrEqual(fewer.length);
        expect(pairs(more, count + 1).length).toBeGreaterThanOrEqual(pairs(fewer, count).length);
      }),
    );
  });
});
