import { type CheckEntry, openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { alone } from "./repository.js";

// The tile of the starter: 133 W at power factor 0.95, 7.9 kg, 500 mm wide, 160 x 160 pixels.

interface Change {
  readonly tiles?: number;
  readonly feed?: string;
  readonly supply?: string;
  readonly depth?: string;
  readonly support?: string;
  readonly panel?: string;
  readonly cables?: readonly [string, string];
  readonly hangs?: readonly string[];
  readonly from?: string;
  readonly length?: string;
}

const document = ({
  tiles = 6,
  feed = "35 ft",
  supply = "120 V",
  depth = "8 bit",
  support = "flown",
  panel = "tile-500-p3.1",
  cables = ["cord-12-3", "power-jumper"],
  hangs = ["0.5 m", "2.9 m"],
  from = "0.2 m",
  length = "4 m",
}: Change): string => `---
build: mill-loft
title: Mill loft
status: for-build
practice: us
faces:
  banner: {panel: ${panel}, columns: ${tiles}, rows: 1, support: ${support}}
power:
  circuits:
    stage-4: {supply: ${supply}, breaker: 20 A, wiring: {conductor: 12 AWG, length: 70 ft}}
  runs:
    P1:
      from: stage-4
      feed: {part: ${cables[0]}, length: ${feed}, hangs: 2 m}
      jumper: {part: ${cables[1]}, length: 0.9 m}
      panels: banner A1..A${tiles}
data:
  processor: {part: processor-6}
  chains:
    D1: {port: 1, feed: {part: cat6-solid, length: 30 m, hangs: 2 m}, jumper: {part: data-jumper, length: 0.9 m}, panels: banner A1..A${tiles}}
picture: {rate: 60 Hz, depth: ${depth}}
rigging:
  bars:
    header:
      section: pipe-1.5-std
      length: ${length}
      carries: {face: banner, from: ${from}}
      hangs:
${hangs.map((at, index) => `        H${index + 1}: {at: ${at}, assembly: [beam-clamp, wire-rope-1-4, shackle-3-8], structure: 200 kg}`).join("\n")}
  structure-by: licensed engineer on file
---

# Mill loft
`;

const checksOf = (rule: string, change: Change = {}): readonly CheckEntry[] => {
  const only = rules.filter((each) => each.id === rule);
  const all = openRepository(alone({ path: "mill-loft.md", text: document(change) }), only, {
    today: "2027-01-01",
    every: true,
  })
    .all()
    .documents.flatMap(({ checks }) => checks);
  expect(all.filter((check) => check.rule !== rule).map(({ says }) => says)).toEqual([]);
  return all;
};

const first = (rule: string, change: Change = {}): CheckEntry =>
  checksOf(rule, change).find((check) => check.measured) as CheckEntry;
const measured = (rule: string, change: Change = {}): number => first(rule, change)?.measured?.value ?? Number.NaN;

/** What every hang carries in kg, by name, or with its hardware puts on the structure. */
const loads = (onStructure: boolean, change: Change): Readonly<Record<string, number>> =>
  Object.fromEntries(
    checksOf("rigging.point-load", change)
      .filter(({ says }) => says.includes("on the structure") === onStructure)
      .map(({ at, measured: load }) => [at.path.slice(at.path.lastIndexOf(".") + 1), load?.value ?? Number.NaN]),
  );
const reactions = (change: Change = {}): Readonly<Record<string, number>> => loads(false, change);
const total = (change: Change = {}): number => Object.values(reactions(change)).reduce((sum, each) => sum + each, 0);

const near = (got: number, hand: number, within: number): void =>
  expect(Math.abs(got - hand), `got ${got}, by hand ${hand}`).toBeLessThanOrEqual(within);

test("a longer feed raises the voltage drop by its own length", () => {
  // NEC Chapter 9 Table 8: 12 AWG stranded uncoated copper, 1.98 ohm/kft. One tile: 133 ÷ 0.95 ÷ 120 = 1.16667 A; six: 7 A.
  // Wiring and feed, 105 ft: 2 × 7 × 1.98 ÷ 1000 × 105 = 2.91060 V.
  // Jumpers of 2.95276 ft carry 5 + 4 + 3 + 2 + 1 = 15 tiles' current: 2 × 1.98 ÷ 1000 × 2.95276 × 15 × 1.16667 = 0.20463 V.
  // (2.91060 + 0.20463) ÷ 120 = 0.025960. Within half a unit of the last of five digits.
  near(measured("power.voltage-drop"), 0.02596, 5e-7);
  // 40 ft more: 2 × 7 × 1.98 ÷ 1000 × 40 = 1.10880 V, ÷ 120 = 0.00924 more: 0.0352, over 3 %.
  near(measured("power.voltage-drop", { feed: "75 ft" }), 0.0352, 5e-7);
  expect([first("power.voltage-drop").outcome, first("power.voltage-drop", { feed: "75 ft" }).outcome]).toEqual([
    "holds",
    "fails",
  ]);
});

test("one more tile raises the current of the circuit, a higher voltage lowers it", () => {
  // 6 × 133 ÷ 0.95 ÷ 120 = 7 A; 7 × 133 ÷ 0.95 ÷ 120 = 8.16667 A; 6 tiles at 240 V: half, 3.5 A.
  near(measured("power.circuit-load"), 7, 5e-6);
  near(measured("power.circuit-load", { tiles: 7 }), 8.16667, 5e-6);
  near(measured("power.circuit-load", { supply: "240 V" }), 3.5, 5e-6);
});

test("one more tile raises what the hangs carry together by its own mass and its jumpers'", () => {
  // 7.9 kg + 0.9 m × 0.25 kg/m + 0.9 m × 0.04 kg/m = 8.161 kg. The rest of the bar is as it was.
  near(total({ tiles: 7 }) - total(), 8.161, 1e-6);
});

test("the hangs together carry what hangs on the bar", () => {
  // Sum of vertical forces. Tiles 6 × 7.9 = 47.4; feeds 2 × 0.25 + 2 × 0.045 = 0.59; jumpers 5 × 0.9 × 0.29 = 1.305;
  // pipe NPS 1-1/2 standard 2.72 lb/ft (ASTM A53): 4 m ÷ 0.3048 × 2.72 × 0.45359237 = 16.191. Together 65.486 kg.
  near(total(), 65.486, 5e-4);
  // The structure bears the hardware of both hangs, too: 2 × (5 + 0.5 + 0.3) lb are 5.2617 kg. Together 70.7477 kg.
  near(measured("rigging.suspended-weight"), 70.7477, 5e-4);
});

test("the structure bears the hardware of a hang, too", () => {
  // Clamp 5 lb, rope 0.5 lb, shackle 0.3 lb: 5.8 lb are 2.63084 kg at every hang, whatever it carries.
  const [carried, borne] = [loads(false, {}), loads(true, {})];
  expect(Object.keys(borne)).toEqual(Object.keys(carried));
  for (const [name, load] of Object.entries(borne)) near(load - (carried[name] ?? Number.NaN), 2.63084, 5e-6);
});

test("a face off the middle loads the nearer hang more, by the lever", () => {
  // Moments about H1 at 0.5 m; H2 at 2.9 m is 2.4 m away. Tiles centred at 0.2 + 1.5 = 1.7 m, pipe at 2 m.
  // Feeds hang at the first tile, 0.2 + 0.25 = 0.45 m: 0.59 kg. Jumpers, half at each of their two tiles, are even about
  // the middle of the face: 1.305 kg at 1.7 m.
  // H2 = (47.4 × 1.2 + 1.305 × 1.2 + 16.191 × 1.5 − 0.59 × 0.05) ÷ 2.4 = (56.88 + 1.566 + 24.2865 − 0.0295) ÷ 2.4
  // = 34.4596 kg; H1 = 65.486 − 34.4596 = 31.026 kg.
  const { H1 = Number.NaN, H2 = Number.NaN } = reactions();
  near(H2, 34.4596, 5e-4);
  near(H1, 31.026, 1e-3);
  // 0.3 m to the right, everything but the pipe moves: H2 gains (47.4 + 1.895) × 0.3 ÷ 2.4 = 6.162 kg.
  near((reactions({ from: "0.5 m" }).H2 ?? Number.NaN) - H2, 6.162, 5e-4);
});

test("of three hangs the middle one carries more than its third", () => {
  // Two equal spans of l under a uniform load w: 3/8, 10/8, 3/8 of w × l (three-moment theorem; AISC beam diagrams, from memory).
  // Face and pipe both from end to end, hangs at 0, 1.5 and 3 m. Uniform: (47.4 + 3 ÷ 0.3048 × 2.72 × 0.45359237 = 12.143) = 59.543 kg,
  // and 6 × 0.261 = 1.566 of jumpers less half a jumper at each end tile: 61.109 × 5 ÷ 8 = 38.1931 kg.
  // The half jumper an end tile lacks, P = 0.1305 kg over e = 0.5 m of the outer end, l = 1.5 m: load term
  // P ÷ e × e² × (2 × l² − e²) ÷ (4 × l) = 0.261 × 0.25 × 4.25 ÷ 6 = 0.046219; M = 2 × 0.046219 ÷ (4 × l) = 0.015406;
  // middle reaction 2 × (P × 0.25 ÷ l + M ÷ l) = 0.0435 + 0.0205 = 0.0640 kg less.
  // Feeds, 0.59 kg at a = 0.25 m: M = a × (l² − a²) ÷ (4 × l²) × P = 0.25 × 2.1875 ÷ 9 × 0.59 = 0.035851;
  // P × a ÷ l + 2 × M ÷ l = 0.0983 + 0.0478 = 0.1461 kg. Together 38.1931 − 0.0640 + 0.1461 = 38.2752 of 61.438 kg.
  const three = reactions({ from: "0 m", length: "3 m", hangs: ["0 m", "1.5 m", "3 m"] });
  near(three.H2 ?? Number.NaN, 38.2752, 1e-3);
  expect((three.H2 ?? 0) / total({ from: "0 m", length: "3 m", hangs: ["0 m", "1.5 m", "3 m"] })).toBeGreaterThan(0.6);
});

test("one more tile raises the pixels of a chain; 10 bit lowers what the port drives", () => {
  // 160 × 160 = 25,600 a tile: 153,600 for six, 179,200 for seven. 512,000 × 24 ÷ 30 = 409,600.
  expect(measured("data.port-load")).toBe(153_600);
  expect(measured("data.port-load", { tiles: 7 })).toBe(179_200);
  expect(first("data.port-load", { depth: "10 bit" }).allowed).toMatchObject({ value: 409_600 });
});

test("a friction plug overhead fails; a locking one holds; on the floor nobody asks", () => {
  const plain = ["cord-12-3-c13", "jumper-c14-c13"] as const;
  const power = (change: Change): readonly string[] =>
    checksOf("connectors.locking-overhead", change)
      .filter(({ at }) => at.path.startsWith("power."))
      .map(({ outcome }) => outcome);
  // IEC 60320 C13 and C14 have no latch of their own.
  expect(new Set(power({ panel: "tile-500-p4.2", cables: plain }))).toContain("fails");
  expect(new Set(power({}))).toEqual(new Set(["holds"]));
  expect(power({ panel: "tile-500-p4.2", cables: plain, support: "stacked" })).toEqual([]);
});
