// What a run found, as text.
import { PARTS } from "./files.mjs";

/** Each folder of the computation and of the drawings, each group of rules, and the schedules. */
const folderOf = (path) => {
  const folders = path.split("/").slice(0, -1);
  return folders.slice(0, path.startsWith("rules/") ? 2 : 4).join("/");
};

const percent = (share) => `${(100 * share).toFixed(1)} %`;

/**
 * Where the share of all lies, by a sample: Wilson's interval at 95 % (E. B. Wilson, J. Am. Stat. Assoc. 22, 1927;
 * NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1).
 */
export function wilson(caught, count) {
  const z = 1.96;
  const middle = caught + (z * z) / 2;
  const half = z * Math.sqrt((caught * (count - caught)) / count + (z * z) / 4);
  return [(middle - half) / (count + z * z), (middle + half) / (count + z * z)];
}

const line = (folder, list) => {
  const caught = list.filter(({ by }) => by !== undefined).length;
  const counts = `${String(caught).padStart(5)} of ${String(list.length).padStart(5)}`;
  return `${percent(caught / list.length).padStart(8)}  ${counts}  ${folder}`;
};

/** A part, with what a sample of it tells of the whole. */
function partLine(part, list) {
  const within = wilson(list.filter(({ by }) => by !== undefined).length, list.length).map(percent);
  return `${line(part, list)}, 95 %: ${within.join(" to ")}`;
}

/** Shares of calc, rules, schedules and drawings. */
const parts = (results) =>
  PARTS.flatMap((part) => {
    const list = results.filter(({ path }) => path.startsWith(`${part}/`));
    return list.length === 0 ? [] : [partLine(part, list)];
  });

const short = (text) => text.replace(/\s+/gu, " ").slice(0, 70);

/** Share caught in each folder and in each part. */
export function shares(results) {
  const folders = Map.groupBy ? Map.groupBy(results, ({ path }) => folderOf(path)) : grouped(results);
  const rows = [...folders].sort(([a], [b]) => (a < b ? -1 : 1)).map(([folder, list]) => line(folder, list));
  return [...rows, "", ...parts(results)].join("\n");
}

const grouped = (results) => {
  const folders = new Map();
  for (const each of results) folders.set(folderOf(each.path), [...(folders.get(folderOf(each.path)) ?? []), each]);
  return folders;
};

/** Every change that no test noticed, with its place. */
export const survivors = (results) =>
  results
    .filter(({ by }) => by === undefined)
    .map(({ path, line: row, column, was, put }) => `${path}:${row}:${column}: ${short(was)}  →  ${short(put)}`)
    .join("\n");

/** A line of that list without line and column. */
export const withoutPlace = (line) => line.replace(/:\d+:\d+: /u, ": ");

/** Changes that make no difference, counted apart by their reason. */
export function withReasons(apart, reasons) {
  const counts = new Map();
  for (const mutant of apart) counts.set(reasons.get(mutant), (counts.get(reasons.get(mutant)) ?? 0) + 1);
  const rows = [...counts].sort(([, a], [, b]) => b - a).map(([why, count]) => `${String(count).padStart(5)}  ${why}`);
  return rows.length === 0
    ? ""
    : `\nListed as making no difference (${apart.length}, not tried):\n${rows.join("\n")}\n`;
}
