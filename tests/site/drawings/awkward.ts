import { type Build, openRepository } from "@plumbmark/core";
import type { DrawingSubject } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { TODAY } from "../../documents/repository.js";
import { files } from "./repository.js";

// Builds that are hard to draw: very wide, very high, of one panel, with more cables than can be named, turned, of many
// kinds, with values that nobody wrote; and such as stand at the edge of what a drawing says or leaves out.

const rowName = (row: number): string => String.fromCharCode(65 + row);
const many = <T>(count: number, make: (index: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, index) => make(index));
const indented = (lines: readonly string[], by: number): string =>
  lines.map((line) => `${" ".repeat(by)}${line}\n`).join("");

interface Front {
  readonly practice?: "us" | "iec";
  readonly faces: readonly string[];
  readonly circuits?: readonly string[];
  readonly runs?: readonly string[];
  readonly chains?: readonly string[];
  readonly bars?: readonly string[];
  readonly more?: string;
}

function written(
  build: string,
  {
    practice = "iec",
    faces,
    circuits = [
      "c1: {supply: 230 V, breaker: 16 A, outlet: iec-60309-16-3, wiring: {conductor: 2.5 mm2, length: 20 m}}",
    ],
    runs = [],
    chains = [],
    bars = [],
    more = "",
  }: Front,
): string {
  return [
    `---\nbuild: ${build}\ntitle: Build ${build}\nstatus: draft\npractice: ${practice}\n`,
    `faces:\n${indented(faces, 2)}`,
    runs.length > 0 ? `power:\n  circuits:\n${indented(circuits, 4)}  runs:\n${indented(runs, 4)}` : "",
    chains.length > 0 ? `data:\n  processor: {part: processor-6, place: rack}\n  chains:\n${indented(chains, 4)}` : "",
    bars.length > 0 ? `rigging:\n  over-people: true\n  bars:\n${indented(bars, 4)}` : "",
    more,
    `---\n# Build ${build}\n`,
  ].join("");
}

const FEED = "feed: {part: cord-2.5-3g, length: 20 m}, jumper: {part: power-jumper-2.5, length: 0.9 m}";
const LINE = "feed: {part: cat6-solid, length: 30 m}, jumper: {part: data-jumper, length: 0.9 m}";
const run = (name: string, panels: string, from = "c1"): string =>
  `${name}: {from: ${from}, ${FEED}, panels: "${panels}"}`;
const chain = (name: string, port: number, panels: string, back?: number): string =>
  `${name}: {port: ${port}, ${LINE}, panels: "${panels}"${back === undefined ? "" : `, back-up-port: ${back}, return: {part: cat6-solid, length: 25 m}`}}`;
const wall = (name: string, columns: number, rows: number, more = ""): string =>
  `${name}: {panel: tile-500-p3.1, columns: ${columns}, rows: ${rows}, support: wall, height-above: 1 m${more}}`;

/** One run a row of two panels, on a face that is so many rows high. */
const rowsOfTwo = (build: string, rows: number, columns = 2): string =>
  written(build, {
    faces: [wall("f", columns, rows)],
    runs: many(rows, (row) => run(`P${row + 1}`, `f ${rowName(row)}1..${rowName(row)}2`)),
    chains: many(rows, (row) => chain(`D${row + 1}`, row + 1, `f ${rowName(row)}1..${rowName(row)}2`)),
  });

const texts: Readonly<Record<string, string>> = {
  single: written("single", {
    faces: [wall("f", 1, 1)],
    runs: [run("P1", "f A1")],
    chains: [chain("D1", 1, "f A1", 2)],
  }),
  // Loops go in at one side and out at the other, from both.
  loops: written("loops", {
    faces: [wall("f", 6, 4, ", omit: [B3]")],
    runs: [
      run("P1", "f A1..A6"),
      run("P2", "f B6..B4, B2..B1"),
      run("P3", "f C1..C3, D3..D1"),
      run("P4", "f D6..D4, C4..C6"),
    ],
    chains: [
      chain("D1", 1, "f A1..A6", 5),
      chain("D2", 2, "f C6..C1", 6),
      chain("D3", 3, "f D1..D6, B6..B4", 7),
      chain("D4", 4, "f B2"),
    ],
  }),
  // Columns: cables go in from above and from below.
  columns: written("columns", {
    faces: [wall("f", 6, 3)],
    runs: many(3, (i) => run(`P${i + 1}`, `f A${2 * i + 1}..C${2 * i + 1}, C${2 * i + 2}..A${2 * i + 2}`)),
    chains: [chain("D1", 1, "f C2..A2, A3..C3", 3), chain("D2", 2, "f C5..A5", 4)],
  }),
  ribbon: written("ribbon", {
    faces: [
      wall(
        "a-ribbon-all-along-the-balcony-front-of-the-whole-house-from-end-to-end-with-both-returns-beside-the-boxes",
        40,
        1,
      ),
    ],
    runs: many(5, (i) =>
      run(
        `P${i + 1}`,
        `a-ribbon-all-along-the-balcony-front-of-the-whole-house-from-end-to-end-with-both-returns-beside-the-boxes A${8 * i + 2}..A${8 * i + 8}`,
      ),
    ),
    chains: many(4, (i) =>
      chain(
        `D${i + 1}`,
        i + 1,
        `a-ribbon-all-along-the-balcony-front-of-the-whole-house-from-end-to-end-with-both-returns-beside-the-boxes A${10 * i + 2}..A${10 * i + 9}`,
      ),
    ),
  }),
  "rows-8": rowsOfTwo("rows-8", 8),
  "rows-9": rowsOfTwo("rows-9", 9),
  "rows-24": rowsOfTwo("rows-24", 24),
  "rows-25": rowsOfTwo("rows-25", 25, 3),
  // Panels of four kinds, turned by a quarter and by a half.
  quarter: written("quarter", {
    faces: [
      `f: {panel: strip, columns: 6, rows: 3, support: wall, height-above: 1 m, rotated: 90, other-panels: {strip-b: "A2..A3", strip-d: "B4", strip-e: "C1..C2"}}`,
    ],
    runs: [run("P1", "f A1..A6"), run("P2", "f B6..B1, C1..C3")],
    chains: [chain("D1", 1, "f C1..C6, B6..B1", 2)],
  }),
  half: written("half", {
    faces: [
      `f: {panel: strip, columns: 3, rows: 3, support: wall, height-above: 1 m, rotated: 180, other-panels: {strip-b: "A2"}}`,
    ],
    runs: [run("P1", "f A1..A3, B3..B1")],
  }),
  // Two circuits, one with an outlet of its own for each run, a run of two panels, of three, of many; legs and a voltage.
  circuits: written("circuits", {
    faces: [wall("f", 8, 3)],
    circuits: [
      "c1: {supply: 230 V, breaker: 16 A, residual: 30 mA, outlet: iec-60309-16-3, outlets: 3, wiring: {conductor: 2.5 mm2, length: 20 m}}",
      "c2: {supply: {three-phase: 400 V}, breaker: 16 A, residual: 30 mA, outlet: iec-60309-16-5, wiring: {length: 20 m}}",
    ],
    runs: [
      run("P1", "f A1"),
      run("P2", "f A2..A3"),
      run("P3", "f A4..A6"),
      run("P4", "f B1..B4"),
      run("P5", "f B5..B8, C8..C1").replace("{from: c1", "{from: c2, legs: AB"),
    ],
    chains: [chain("D1", 1, "f A1..A8"), chain("D2", 2, "f B1..B8", 3)],
  }),
  // A bar with hangs so near to one another that there is hardly room for what they carry.
  near: written("near", {
    practice: "us",
    faces: [
      "h: {panel: tile-500-p3.1, columns: 8, rows: 2, support: flown, trim: 12 ft, omit: [B8]}",
      "g: {panel: tile-500-p3.1, columns: 1, rows: 1, support: flown, trim: 3 ft}",
      "s: {panel: tile-500-p3.1, columns: 4, rows: 3, support: flown, trim: 40 ft}",
    ],
    bars: [
      "b1:",
      "  section: pipe-1.5-std",
      "  length: 16 ft",
      "  carries: {face: h, from: 4 in}",
      "  hangs:",
      ...[1, 2.25, 3.5, 6, 9, 14, 15.25].map(
        (at, i) => `    H${i + 1}: {at: ${at} ft, assembly: [beam-clamp, wire-rope-1-4], structure: 500 lb}`,
      ),
      "b2:",
      "  section: pipe-1.5-std",
      "  length: 3 ft",
      "  carries: {face: g, from: 1 ft}",
      "  hangs:",
      ...[0.5, 2.5].map(
        (at, i) => `    G${i + 1}: {at: ${at} ft, assembly: [beam-clamp, wire-rope-1-4], structure: 500 lb}`,
      ),
      "b3:",
      "  section: pipe-1.5-std",
      "  length: 8 ft",
      "  carries: {face: s, from: 0 ft}",
      "  hangs:",
      `    S1: {at: 1 ft, assembly: [pipe-collar], bridle: {left: {rise: 3 ft, run: 5 ft, structure: 500 lb, assembly: [beam-clamp, wire-rope-1-4]}, right: {rise: 3 ft, run: 1.5 ft, structure: 500 lb, assembly: [beam-clamp, wire-rope-1-4]}}}`,
      `    S2: {at: 7 ft, assembly: [pipe-collar], bridle: {left: {rise: 2 ft, run: 1 ft, structure: 500 lb, assembly: [beam-clamp, wire-rope-1-4]}, right: {rise: 4 ft, run: 4 ft, structure: 500 lb, assembly: [beam-clamp, wire-rope-1-4]}}}`,
    ],
    more: "audience: {nearest: 80 ft, farthest: 90 ft, eye-height: 45 in}\n",
  }),
  // Faces over one another on the raster and beyond its edges, each beyond one alone; places that are half written.
  raster: written("raster", {
    faces: [wall("a", 4, 2), wall("b", 4, 2), wall("c", 1, 1), wall("d", 1, 4), wall("e", 2, 1)],
    more: `picture:\n  raster: 1280 x 720\n  rate: 60 Hz\n  depth: 8 bit\n  at: {a: "0,0", b: "480,160", c: "1200,100", d: "200,400"}\naudience: {nearest: 3 m, farthest: 20 m}\n`,
  }),
};

const STRIPS = `strip-d: {kind: panel, size: 500 mm x 250 mm, pixels: 100 x 50, connector-at: {power-in: 250 mm x 125 mm, power-out: 250 mm x 130 mm, data-in: 250 mm x 120 mm, data-out: 20 mm x 20 mm}}
strip-e: {kind: panel, size: 500 mm x 250 mm, pixels: 100 x 50, connector-at: {power-in: 20 mm x 230 mm, power-out: 480 mm x 230 mm}}
`;

const repository = openRepository(
  {
    ...files,
    parts: [...files.parts, { path: "parts/more-strips.yaml", text: STRIPS }],
    documents: Object.entries(texts).map(([name, text]) => ({ path: `builds/${name}.md`, text })),
  },
  rules,
  { today: TODAY },
);

const known = new Map<string, DrawingSubject & { readonly build: Build }>();

export const AWKWARD: readonly string[] = Object.keys(texts).map((name) => `builds/${name}.md`);

/** One of these builds, not judged. */
export function awkward(path: string): DrawingSubject {
  const found = known.get(path) ?? repository.model(path);
  known.set(path, found);
  return found;
}

/** What its author got wrong, in words: these are to be read without any mistake. */
export const mistakesOf = (path: string): readonly unknown[] => repository.model(path).mistakes;
