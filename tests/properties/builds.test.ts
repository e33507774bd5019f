import { openRepository, workedValues } from "@plumbmark/core";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { alone } from "../rules/repository.js";
import { notEmpty } from "../run/not-empty.js";

/** A banner of so many columns and rows on one circuit and one port; cables along the rows, or in a serpentine. */
interface Banner {
  readonly columns: number;
  readonly rows: number;
  readonly serpentine?: boolean;
  /** Metres of the power feed. */
  readonly feed?: number;
  readonly rate?: number;
  /** Panels left out at the end of the last row. */
  readonly without?: number;
}

const letter = (row: number): string => String.fromCharCode(65 + row);

/** Every panel by name in cable order. */
function order({ columns, rows, serpentine = false, without = 0 }: Banner): readonly string[] {
  const cells = Array.from({ length: rows }, (_, row) => {
    const places = Array.from({ length: row === rows - 1 ? columns - without : columns }, (_, k) => k + 1);
    return (serpentine && row % 2 === 1 ? places.reverse() : places).map((column) => `${letter(row)}${column}`);
  });
  return cells.flat();
}

const left = ({ columns, rows, without = 0 }: Banner): string =>
  Array.from({ length: without }, (_, k) => `${letter(rows - 1)}${columns - k}`).join(", ");

const document = (banner: Banner): string => `---
build: banner
title: Banner
status: draft
practice: us
faces:
  banner: {panel: tile-500-p3.1, columns: ${banner.columns}, rows: ${banner.rows}, support: flown${left(banner) && `, omit: [${left(banner)}]`}}
power:
  circuits:
    C: {supply: 208 V, breaker: 20 A, wiring: {conductor: 12 AWG, length: 20 m}}
  runs:
    P: {from: C, feed: {part: cord-12-3, length: ${banner.feed ?? 10} m}, jumper: {part: power-jumper, length: 1.5 m}, panels: "banner ${order(banner).join(", ")}"}
data:
  processor: {part: processor-6}
  chains:
    D: {port: 1, feed: {part: cat6-solid, length: 30 m}, jumper: {part: data-jumper, length: 1.5 m}, panels: "banner ${order(banner).join(", ")}"}
picture: {rate: ${banner.rate ?? 60} Hz, depth: 8 bit}
rigging:
  bars:
    bar:
      section: pipe-1.5-std
      length: ${banner.columns * 0.5 + 0.4} m
      carries: {face: banner, from: 0.2 m}
      hangs:
        H1: {at: 0.3 m, assembly: [beam-clamp, wire-rope-1-4, shackle-3-8], structure: 200 kg}
        H2: {at: ${banner.columns * 0.5} m, assembly: [beam-clamp, wire-rope-1-4, shackle-3-8], structure: 200 kg}
---

# Banner
`;

const figures = (banner: Banner): ReadonlyMap<string, number> =>
  new Map(
    [
      ...workedValues(
        openRepository(alone({ path: "banner.md", text: document(banner) }), [], { today: "2027-01-01" }).model(
          "banner.md",
        ),
      ),
    ].flatMap(([path, { value }]) => (value === undefined ? [] : [[path, value] as const])),
  );

const figure = (banner: Banner, path: string): number => figures(banner).get(path) ?? Number.NaN;

const columns = fc.integer({ min: 2, max: 6 });
const rows = fc.integer({ min: 1, max: 3 });
/** Whole inspections take their time: few of them, but each of a build of its own. */
const SOME = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 20) };

/** Everything that is loaded by a panel: mass, watts, amperes, pixels, cables. */
const LOADS = [
  "faces.banner.panel-count",
  "faces.banner.mass",
  "faces.banner.pixels",
  "faces.banner.heat",
  "power.circuits.C.current",
  "power.circuits.C.inrush",
  "power.circuits.C.leakage",
  "power.runs.P.voltage-drop",
  "data.chains.D.pixels",
  "data.processor.pixels",
  "rigging.bars.bar.load",
  "totals.mass",
  "totals.cables",
];

describe("builds of any size", () => {
  test("every load that is compared below is there", () => {
    const found = figures({ columns: 4, rows: 2 });
    for (const path of LOADS) expect(found.get(path), path).toBeGreaterThan(0);
  });

  test("a longer feed never lowers the voltage drop", () => {
    fc.assert(
      fc.property(
        columns,
        rows,
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 40 }),
        (c, r, feed, more) => {
          const drop = (length: number) => figure({ columns: c, rows: r, feed: length }, "power.runs.P.voltage-drop");
          expect(drop(feed + more)).toBeGreaterThan(drop(feed));
        },
      ),
      SOME,
    );
  });

  test("taking a panel out never raises a load", () => {
    fc.assert(
      fc.property(columns, rows, (c, r) => {
        const [whole, less] = [figures({ columns: c, rows: r }), figures({ columns: c, rows: r, without: 1 })];
        for (const path of LOADS) expect(less.get(path), path).toBeLessThan(whole.get(path) as number);
        for (const hang of ["H1", "H2"]) {
          const path = `rigging.bars.bar.hangs.${hang}.reaction`;
          // The last panel hangs between the two: its middle is 50 mm inside the second.
          expect(less.get(path), path).toBeLessThan(whole.get(path) as number);
        }
      }),
      SOME,
    );
  });

  test("reactions sum to the load, and their moments balance it", () => {
    fc.assert(
      fc.property(columns, rows, fc.integer({ min: 0, max: 1 }), (c, r, without) => {
        const found = figures({ columns: c, rows: r, without });
        const at = (path: string) => found.get(`rigging.bars.bar.${path}`) as number;
        expect(at("hangs.H1.reaction") + at("hangs.H2.reaction")).toBeCloseTo(at("load"), 5);
        if (without > 0) return;
        // The face is in the middle of 0.2 m and its own far edge, the bar in the middle of itself; cables apart.
        const [first, second] = [0.3, c * 0.5];
        const bare =
          at("self-mass") * ((c * 0.5 + 0.4) / 2) + (found.get("faces.banner.mass") as number) * (0.2 + (c * 0.5) / 2);
        const weighed = at("self-mass") + (found.get("faces.banner.mass") as number);
        const turning = at("hangs.H1.reaction") * first + at("hangs.H2.reaction") * second;
        // What is left is the cables: they hang somewhere between the ends of the bar.
        const cables = at("load") - weighed;
        expect(turning - bare).toBeGreaterThanOrEqual(-1e-6);
        expect(turning - bare).toBeLessThanOrEqual(cables * (c * 0.5 + 0.4) + 1e-6);
      }),
      SOME,
    );
  });

  test("the order of the cables changes no total", () => {
    fc.assert(
      fc.property(columns, rows, (c, r) => {
        const [plain, snake] = [false, true].map((serpentine) => figures({ columns: c, rows: r, serpentine }));
        for (const path of notEmpty(LOADS.filter((each) => each !== "power.runs.P.voltage-drop")))
          expect(snake?.get(path), path).toBeCloseTo(plain?.get(path) as number, 6);
        expect(snake?.get("data.chains.D.share")).toBeCloseTo(plain?.get("data.chains.D.share") as number, 9);
      }),
      SOME,
    );
  });

  test("twice the frame rate halves what a port drives", () => {
    fc.assert(
      // The maker's figure is for 60 Hz: below that nothing is claimed.
      fc.property(columns, rows, fc.constantFrom(60, 72, 100, 120), (c, r, rate) => {
        const capacity = (hertz: number) => figure({ columns: c, rows: r, rate: hertz }, "data.chains.D.capacity");
        // Both are whole pixels, cut off.
        const apart = capacity(rate) - 2 * capacity(2 * rate);
        expect([0, 1]).toContain(apart);
      }),
      SOME,
    );
  });
});
