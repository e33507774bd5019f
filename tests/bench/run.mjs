// Cost of an inspection as the face grows: ratios measured in one run, never a limit that a test waits for.
import { readdirSync, readFileSync } from "node:fs";
import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";

const parts = readdirSync(`${starterRepository}/parts`).map((name) => ({
  path: `parts/${name}`,
  text: readFileSync(`${starterRepository}/parts/${name}`, "utf8"),
}));
const letters = (row) =>
  row < 26 ? String.fromCharCode(65 + row) : letters(Math.floor(row / 26) - 1) + letters(row % 26);

const runsOf = (rows, columns, per, line) =>
  Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns / per }, (_, part) =>
      line(row, part, `wall ${letters(row)}${part * per + 1}..${letters(row)}${part * per + per}`),
    ),
  ).flat();

/** A wall: runs of 10 panels and chains of `chain` panels along the rows, so many circuits a row. */
function wall({ rows, columns, support = "wall, height-above: 1 m", circuits = 1, chain = 50, rigging = [] }) {
  const lines = [
    "---",
    "build: wall",
    "title: Wall",
    "status: draft",
    "faces:",
    `  wall: {panel: tile-500-p3.1, columns: ${columns}, rows: ${rows}, support: ${support}}`,
    "power:",
    "  circuits:",
    ...Array.from({ length: Math.round(rows * circuits) }, (_, at) => `    C${at}: {supply: 208 V, breaker: 100 A}`),
    "  runs:",
    ...runsOf(rows, columns, 10, (row, part, panels) => {
      const circuit = Math.floor(row * circuits) + (part % Math.max(1, circuits));
      return `    R${row}-${part}: {from: C${circuit}, feed: {part: cord-12-3, length: 20 m, hangs: 2 m}, jumper: {part: power-jumper, length: 0.9 m}, panels: "${panels}"}`;
    }),
    "data:",
    "  chains:",
    ...runsOf(rows, columns, chain, (row, part, panels) => {
      const port = row * (columns / chain) + part + 1;
      return `    D${row}-${part}: {port: ${port}, feed: {part: cat6-solid, length: 20 m, hangs: 2 m}, jumper: {part: data-jumper, length: 0.9 m}, panels: "${panels}"}`;
    }),
    ...rigging,
  ];
  return `${lines.join("\n")}\n---\n\n# Wall\n`;
}

/** One bar over the whole width with a hang every two columns. */
const barOver = (columns) => [
  "rigging:",
  "  bars:",
  "    top:",
  "      section: pipe-1.5-std",
  `      length: ${columns * 0.5 + 0.2} m`,
  "      carries: {face: wall, from: 0.1 m}",
  "      hangs:",
  ...Array.from({ length: columns / 2 }, (_, at) => `        H${at}: {at: ${at + 0.6} m, structure: 500 kg}`),
];

/** The quickest of a few inspections, milliseconds. */
function cost(text) {
  const files = { parts, documents: [{ path: "wall.md", text }] };
  const once = () => {
    const start = performance.now();
    openRepository(files, rules, { today: "2027-01-01" }).all();
    return performance.now() - start;
  };
  return Math.min(...Array.from({ length: 3 }, once));
}

const flown = (rows, columns) => wall({ rows, columns, support: "flown, trim: 5 m", rigging: barOver(columns) });
const SIZES = [
  ["100 panels on a wall", wall({ rows: 2, columns: 50 }), 100],
  ["1,000 panels on a wall", wall({ rows: 10, columns: 100 }), 1000],
  ["10,000 panels on a wall", wall({ rows: 100, columns: 100 }), 10_000],
  ["100 panels flown", flown(2, 50), 100],
  ["1,000 panels flown", flown(10, 100), 1000],
  ["6,000 panels, 40 ports, 60 circuits", wall({ rows: 20, columns: 300, circuits: 3, chain: 150 }), 6000],
];
// Nothing has grown worse than in proportion while the last column stays about 1 or below; the first lines warm up.
cost(wall({ rows: 5, columns: 100 }));
const costs = SIZES.map(([, text]) => cost(text));
for (const [index, [name, , panels]] of SIZES.entries()) {
  const times = costs[index] / costs[0];
  console.log(
    `${name.padEnd(38)}${costs[index].toFixed(0).padStart(7)} ms ${times.toFixed(1).padStart(7)} times the first, ${(times / (panels / 100)).toFixed(2)} of in proportion`,
  );
}

console.log(`one document of 10,000 panels: ${(costs[2] / costs[0]).toFixed(0)} times one of 100 (asked 120)`);

await import("./keystroke.mjs");
await import("./starter.mjs");
await import("./plugins.mjs");
await import("./scale.mjs");
