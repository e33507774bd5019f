// Cost of an inspection as the face grows: ratios measured in one run, never a limit that a test waits for.
import { readdirSync, readFileSync } from "node:fs";
import { inspect } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";

const parts = readdirSync(`${starterRepository}/parts`).map((name) => ({
  path: `parts/${name}`,
  text: readFileSync(`${starterRepository}/parts/${name}`, "utf8"),
}));
const letters = (row) =>
  row < 26 ? String.fromCharCode(65 + row) : letters(Math.floor(row / 26) - 1) + letters(row % 26);
const COLUMNS = 100;

/** A wall of `rows` rows of 100 panels: runs of 10 panels on circuits of their own, chains of 50 panels. */
function wall(rows) {
  const lines = [
    "---",
    "build: wall",
    "title: Wall",
    "status: draft",
    "faces:",
    `  wall: {panel: tile-500-p2.9, columns: ${COLUMNS}, rows: ${rows}, support: wall, height-above: 1 m}`,
    "power:",
    "  circuits:",
  ];
  for (let row = 0; row < rows; row += 1) lines.push(`    C${row}: {supply: 208 V, breaker: 100 A}`);
  lines.push("  runs:");
  for (let row = 0; row < rows; row += 1)
    for (let part = 0; part < 10; part += 1)
      lines.push(
        `    R${row}-${part}: {from: C${row}, panels: "wall ${letters(row)}${part * 10 + 1}..${letters(row)}${part * 10 + 10}"}`,
      );
  lines.push("data:", "  chains:");
  for (let row = 0; row < rows; row += 1)
    for (let half = 0; half < 2; half += 1)
      lines.push(
        `    D${row}-${half}: {port: ${row * 2 + half + 1}, panels: "wall ${letters(row)}${half * 50 + 1}..${letters(row)}${half * 50 + 50}"}`,
      );
  return `${lines.join("\n")}\n---\n\n# Wall\n`;
}

function cost(rows) {
  const files = { parts, documents: [{ path: "wall.md", text: wall(rows) }] };
  const times = Array.from({ length: 3 }, () => {
    const start = performance.now();
    inspect(files, rules, { today: "2027-01-01" });
    return performance.now() - start;
  });
  return Math.min(...times);
}

cost(5);
const sizes = [15, 30, 60];
const costs = sizes.map(cost);
for (const [index, rows] of sizes.entries())
  console.log(
    `${rows * COLUMNS} panels: ${costs[index].toFixed(0)} ms${index > 0 ? `, ${(costs[index] / costs[index - 1]).toFixed(2)} times the half` : ""}`,
  );

await import("./plugins.mjs");
